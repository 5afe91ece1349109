import { useMemo, type ReactNode } from 'react'
import { profileChart } from '../../core/chart/index.ts'
import type { ProbeProfile } from '../../core/gauge/index.ts'
import type { Quantity } from '../../core/worksheet/index.ts'
import '../gauge/moved.css'
import { Chart } from '../charts/Chart.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { Figure } from '../parts/Figure.tsx'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { words } from '../words/en.ts'

const shown = ({ value, unit }: Quantity): ReactNode => <Figure value={value} unit={unit} />

/** A figure whose unit stands in the head of its column. */
const inHead = ({ value, unit }: Quantity): ReactNode => <Figure value={value} unit={unit} unitInHead />

/** What the probe says: mass large, the rest below it, the strata, why the volumes differ, and every line. */
export function ProbeResult({ profile }: { readonly profile: ProbeProfile | undefined }): ReactNode {
  const t = words.probe
  const chart = useMemo(() => profile && profileChart(profile), [profile])
  if (!profile) return <p className="quiet">{t.notYet}</p>
  const { uncertainties, massLimit, entrainedWater } = profile
  return (
    <>
      <div className="moved" aria-live="polite">
        <div className="moved-large"><span className="moved-title">{t.head.mass}</span><strong>{shown(profile.massFromTable)}</strong></div>
        <p className="quiet probe-limit">{t.plusMinus(uncertainties.massFromTable.value, 'kg')}. {t.massLimit(massLimit.limit.value, 'kg', massLimit.within, massLimit.note)}</p>
        <dl className="moved-rest probe-facts">
          <Fact name={t.head.level} says={<>{shown(profile.level)} <span className="quiet">± {uncertainties.level.value}</span></>} />
          <Fact name={t.head.water} says={profile.waterLevel === null ? <span className="quiet">{t.head.noWater}</span> : <>{shown(profile.waterLevel)}{uncertainties.waterLevel && <span className="quiet"> ± {uncertainties.waterLevel.value}</span>}</>} />
          {profile.productDensity && <Fact name={t.head.density} says={shown(profile.productDensity)} />}
          {profile.productTemperature && <Fact name={t.head.temperature} says={shown(profile.productTemperature)} />}
          <Fact name={t.head.headMass} says={shown(profile.massFromHead)} />
          <Fact name={t.head.volume} says={shown(profile.volumeFromTable)} />
          <Fact name={t.head.volumeOfMass} says={shown(profile.volumeFromMass)} />
          {entrainedWater && <Fact name={t.head.entrained} says={<>{shown(entrainedWater.share)} <span className="quiet">± {entrainedWater.uncertainty.value}</span></>} />}
        </dl>
        {entrainedWater && <p className="quiet probe-limit">{entrainedWater.says}</p>}
      </div>
      <DenseTable<ProbeProfile['strata'][number]>
        label={t.strata.label} rows={profile.strata.toReversed()} rowKey={({ from }) => from.value} empty=""
        columns={[
          { key: 'from', head: t.strata.from, align: 'end', cell: ({ from }) => inHead(from) }, { key: 'to', head: t.strata.to, align: 'end', cell: ({ to }) => inHead(to) },
          { key: 'density', head: t.strata.density, align: 'end', cell: ({ density, water }) => <>{inHead(density)}{water && ` ${t.strata.water}`}</> },
          { key: 'temperature', head: t.strata.temperature, align: 'end', cell: ({ temperature }) => inHead(temperature) },
          { key: 'mass', head: t.strata.mass, align: 'end', cell: ({ mass }) => inHead(mass) },
        ]}
      />
      {chart && <Chart option={chart} label={t.chart} height={210} />}
      {profile.exceptions.length > 0 && <><h2>{words.transfer.exceptions}</h2><ul className="checks-exceptions">{profile.exceptions.map(({ message }) => <li key={message}>{message}</li>)}</ul></>}
      <details className="probe-why">
        <summary>{t.difference}: <Figure value={profile.volumeDifference.value} unit={profile.volumeDifference.unit} signed /></summary>
        <ul>{profile.differenceExplained.map(({ cause, says }) => <li key={cause}>{says}</li>)}</ul>
      </details>
      <WorksheetTable columns={[{ title: words.probe.title, lines: profile.worksheet }]} />
    </>
  )
}

function Fact({ name, says }: { readonly name: string; readonly says: ReactNode }): ReactNode {
  return <div><dt>{name}</dt><dd>{says}</dd></div>
}
