import { useMemo, useState, type ReactNode } from 'react'
import type { Product } from '../../core/quantity/index.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { words } from '../words/en.ts'
import { FactList } from './FactList.tsx'
import { LimitPanel } from './LimitPanel.tsx'
import { factorFacts, productFacts } from './product-facts.ts'
import { ProductPanel } from './ProductPanel.tsx'

/** One product: which standard, table and edition produce its factors, how it is booked, and what it may lose. */
export function ProductDetail({ product }: { readonly product: Product }): ReactNode {
  const { now, again } = useTerminal()
  const [sheet, setSheet] = useState<'product' | 'limit'>()
  const limit = now.limits.find((one) => one.product === product.code)
  const factors = useMemo(() => factorFacts(product), [product])
  const close = (): void => setSheet(undefined)
  const entered = (): void => { close(); again() }
  return (
    <section aria-label={product.code}>
      <header className="yard-head">
        <h2>{product.code} {product.name}</h2>
        <Button does="set-limit" onClick={() => setSheet('limit')}>{words.yard.setLimit}</Button>
        <Button does="set-product" onClick={() => setSheet('product')}>{words.yard.edit}</Button>
      </header>
      <FactList facts={productFacts(product, limit, now.tanks)} />
      <h3>{words.yard.product.factorTitle}</h3>
      <div className="product-factors"><FactList facts={factors} /></div>
      {product.curve && <CurvePoints curve={product.curve} />}
      <ProductPanel product={product} open={sheet === 'product'} onClose={close} onEntered={entered} />
      <LimitPanel product={product} limit={limit} open={sheet === 'limit'} onClose={close} onEntered={entered} />
    </section>
  )
}

function CurvePoints({ curve: { points } }: { readonly curve: NonNullable<Product['curve']> }): ReactNode {
  const t = words.density.curve
  const of = points.some((point) => 'vcf' in point) ? 'vcf' : 'density'
  return (
    <>
      <h3>{words.yard.product.curveTitle}</h3>
      <div className="yard-rows" tabIndex={0} role="region" aria-label={words.yard.product.curveTitle}>
        <table className="dense">
          <thead><tr><th scope="col">{t.temperature}</th><th scope="col">{t.values[of]}</th></tr></thead>
          <tbody>{points.map((point) => <tr key={point.temperature}><td>{point.temperature}</td><td>{'vcf' in point ? point.vcf : point.density}</td></tr>)}</tbody>
        </table>
      </div>
    </>
  )
}
