import type { ReactNode } from 'react'
import { Decimal, lengthFromMillimetres, millimetres, parseLength, printLength, printedUnits } from '../../core/units/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { words } from '../words/en.ts'
import { crownShare } from '../gauge/picture-levels.ts'
import { addressOf } from './route.ts'
import { useAlarms, type Alarm } from './use-alarms.ts'
import type { TerminalNow } from './TerminalContext.tsx'
import { TankGlyph } from './TankGlyph.tsx'

/** Every tank with its last gauge; choosing one opens work on it. */
export function YardStrip({ now, chosen }: { readonly now: TerminalNow; readonly chosen: string }): ReactNode {
  const alarms = useAlarms(now.head.hash)
  return (
    <nav className="yard" aria-label={words.app.yardStrip}>
      {now.tanks.length === 0 && <p className="yard-empty">{words.app.emptyYard}</p>}
      {now.tanks.map((tank) => <TankLink key={tank.code} tank={tank} gauge={now.lastGauges.find((gauge) => gauge.tank === tank.code)} alarms={alarms.filter((alarm) => alarm.tank === tank.code)} here={tank.code === chosen} />)}
    </nav>
  )
}

type LastGauge = TerminalNow['lastGauges'][number]

function TankLink({ tank, gauge, alarms, here }: { readonly tank: Tank; readonly gauge: LastGauge | undefined; readonly alarms: readonly Alarm[]; readonly here: boolean }): ReactNode {
  const level = gauge ? levelOf(gauge.levelMm, tank) : words.app.notGauged
  const temperature = printedUnits(gauge?.temperature ?? '')
  return (
    <a href={addressOf('transfer', [], { tank: tank.code })} className="yard-tank" aria-current={here ? 'true' : undefined}>
      <TankGlyph shape={tank.shape ?? 'upright-cylinder'} roof={tank.roof.kind} insulated={tank.insulated} liquid={gauge ? shareOf(gauge.levelMm, tank) : 0} water={gauge ? shareOf(gauge.waterMm, tank) : 0} />
      <span className="yard-code">{tank.code}<span className="read-aloud"> {tank.name}</span></span>
      {alarms.length > 0 && <span className="yard-alarm" title={alarms.map(({ message }) => message).join('\n')}>!<span className="read-aloud"> {words.ledger.alarms.inStrip(alarms.length)}</span></span>}
      <span className="yard-level">{level}</span>
      <span className="yard-temperature">{temperature}</span>
    </a>
  )
}

/** A level in the unit in which the tank's table is written. */
function levelOf(mm: string, tank: Tank): string {
  return printLength(lengthFromMillimetres(new Decimal(mm), tank.capacityTable.levelUnit))
}

/** A level as a share of the reference gauge height, of a round tank as a share of its inside; for the picture only. */
function shareOf(mm: string, tank: Tank): number {
  const height = parseLength(tank.referenceGaugeHeight, 'referenceGaugeHeight')
  return height.ok ? new Decimal(mm).div(millimetres(height.value)).toNumber() / crownShare(tank) : 0
}
