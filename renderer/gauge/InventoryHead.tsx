import type { ReactNode } from 'react'
import type { Worksheet } from '../../core/quantity/index.ts'
import { Figure } from '../parts/Figure.tsx'
import { words } from '../words/en.ts'
import './moved.css'

/** What is in the tank, large. */
export function InventoryHead({ worksheet }: { readonly worksheet: Worksheet | undefined }): ReactNode {
  const t = words.transfer.moved
  const quantity = worksheet?.quantity
  return (
    <div className="moved" aria-live="polite">
      <div className="moved-large"><span className="moved-title">{words.gauge.inTank}, {t.nsv.toLowerCase()}</span>
        <strong>{quantity ? <Figure value={quantity.nsv.value} unit={quantity.nsv.unit} /> : <span className="moved-none">–</span>}</strong>
      </div>
      {quantity && (
        <dl className="moved-rest">
          {([['gsv', quantity.gsv], ['water', quantity.fw], ['mass', quantity.mass], ['weight', quantity.weight]] as const).map(([name, figure]) => <div key={name}><dt>{t[name]}</dt><dd><Figure value={figure.value} unit={figure.unit} /></dd></div>)}
        </dl>
      )}
    </div>
  )
}
