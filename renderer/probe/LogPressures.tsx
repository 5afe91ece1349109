import type { ReactNode } from 'react'
import type { ComputedLevels } from '../../core/gauge/index.ts'
import { wording } from '../../core/refusal/index.ts'
import { addressOf } from '../app/route.ts'
import { Findings } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'
import type { FilledFor } from './filled-for.ts'

interface LogPressuresProps {
  readonly levels: ComputedLevels
  readonly tank: string
  /** Whether heights and settings of the tank's probe are known. */
  readonly isKnown: boolean
  readonly isFor: FilledFor | undefined
}

/** What became of the lines of a log that have a probe's pressures but no level. */
export function LogPressures({ levels: { log, computed, findings }, tank, isKnown, isFor }: LogPressuresProps): ReactNode {
  const t = words.probe.log
  const waits = !isKnown && log.lines.some((line) => line.tank === tank && line.level === undefined && line.modules !== undefined)
  return (
    <>
      {waits && <p role="status">{t.noSetup(tank)} <a href={addressOf('gauge', ['probe'], { tank, ...isFor })}>{t.toSetup}</a></p>}
      {computed.length > 0 && <p className="quiet">{t.computed(computed.length, tank)}</p>}
      {findings.length > 0 && (
        <details>
          <summary>{t.without(findings.length)}</summary>
          <Findings findings={findings.map((finding) => ({ path: finding.path, message: wording(finding) }))} />
        </details>
      )}
    </>
  )
}
