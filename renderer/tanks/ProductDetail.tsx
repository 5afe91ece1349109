import { useState, type ReactNode } from 'react'
import type { Product } from '../../core/quantity/index.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { words } from '../words/en.ts'
import { productFacts } from './facts.ts'
import { FactList } from './FactList.tsx'
import { LimitPanel } from './LimitPanel.tsx'
import { ProductPanel } from './ProductPanel.tsx'

/** One product: how it is corrected and booked, and what it may lose. */
export function ProductDetail({ product }: { readonly product: Product }): ReactNode {
  const { now, again } = useTerminal()
  const [sheet, setSheet] = useState<'product' | 'limit'>()
  const limit = now.limits.find((one) => one.product === product.code)
  const close = (): void => setSheet(undefined)
  const entered = (): void => { close(); again() }
  return (
    <section aria-label={product.code}>
      <header className="yard-head">
        <h2>{product.code} {product.name}</h2>
        <Button onClick={() => setSheet('limit')}>{words.yard.setLimit}</Button>
        <Button onClick={() => setSheet('product')}>{words.yard.edit}</Button>
      </header>
      <FactList facts={productFacts(product, limit, now.tanks)} />
      <ProductPanel product={product} open={sheet === 'product'} onClose={close} onEntered={entered} />
      <LimitPanel product={product} limit={limit} open={sheet === 'limit'} onClose={close} onEntered={entered} />
    </section>
  )
}
