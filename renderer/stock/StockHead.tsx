import type { ReactNode } from 'react'
import type { StockMovement } from '../../core/ledger/index.ts'
import type { StockResult } from '../../core/transfer/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import type { Quantity } from '../../core/worksheet/index.ts'
import '../gauge/moved.css'
import { Figure } from '../parts/Figure.tsx'
import { words } from '../words/en.ts'

/** A movement as far as its figures go: computed on the sheet, or as it stands in the ledger. */
type Figures = Pick<StockResult, 'kind' | 'difference' | 'unbooked'> & {
  readonly legs: readonly Pick<StockResult['legs'][number], 'place' | 'code' | 'product' | 'nsv' | 'water'>[]
  readonly lines?: StockResult['lines'] | undefined
}

/** What a movement is for, large; what it books leg by leg; and its difference in words. */
export function StockHead({ kind, movement, wrong = false }: { readonly kind: StockResult['kind']; readonly movement: Figures | StockMovement | undefined; readonly wrong?: boolean }): ReactNode {
  const t = words.stock
  const main = movement && mainFigure(movement)
  const mass = movement?.lines?.find(({ symbol }) => symbol === 'DIFFMASS')
  return (
    <div className="moved" aria-live="polite">
      <div className="moved-large"><span className="moved-title">{t.head[kind]}</span>
        <strong>{main ? <Figure value={main.value} unit={main.unit} signed={kind === 'line-fill'} /> : <span className="moved-none">–</span>}</strong>
      </div>
      {movement ? (
        <>
          <dl className="stock-legs">
            {movement.legs.map(({ code, product, nsv }, i) => <div key={`${code} ${i}`}><dt>{kind === 'regrade' ? codeOf(product) : code} {t.booked}</dt><dd><Figure value={nsv.value} unit={nsv.unit} signed /></dd></div>)}
            {movement.unbooked && <div><dt>{t.unbookedFigure}</dt><dd><Figure value={movement.unbooked.value} unit={movement.unbooked.unit} signed /></dd></div>}
            {movement.legs.length > 1 && <div className="stock-difference"><dt>{t.difference}</dt><dd><Figure value={movement.difference.value} unit={movement.difference.unit} signed />{mass && <span className="quiet"> {t.inMass} <Figure value={mass.value} unit={mass.unit} signed /></span>}</dd></div>}
          </dl>
          <p className="stock-explained">{explained(movement)}</p>
        </>
      ) : <p className="quiet moved-hint">{wrong ? t.notWhileWrong : kind === 'line-fill' ? t.notYetLine : t.notYet}</p>}
    </div>
  )
}

/** A product by its code alone, as on the sheet, or by its version, as in the ledger. */
function codeOf(product: string | { readonly code: string }): string {
  return typeof product === 'string' ? product : product.code
}

function mainFigure({ kind, legs }: Figures | StockMovement): Quantity | undefined {
  const tanks = legs.filter(({ place }) => place === 'tank')
  const water = tanks[0]?.water
  if (kind === 'water-draw-off') return water && { ...water, value: water.value.replace(/^-/, '') }
  return (tanks.at(-1) ?? legs[0])?.nsv
}

/** What the difference means. */
function explained({ kind, difference, unbooked, legs }: Figures | StockMovement): string {
  const t = words.stock.explained
  const figure = ({ value, unit }: Quantity): string => `${value.replace(/^-/, '')} ${printedUnit(unit)}`
  const none = /^-?0(?:\.0+)?$/
  if (kind === 'regrade') return t.regrade
  if (kind === 'line-fill') return t.line
  if (kind === 'water-draw-off') return unbooked === undefined || none.test(unbooked.value) ? t.drawnAll : t.drawn(figure(unbooked))
  const said = none.test(difference.value) ? t.none : difference.value.startsWith('-') ? t.lost(figure(difference)) : t.gained(figure(difference))
  return kind === 'blend' && legs.length > 2 ? `${said} ${t.blend}` : said
}
