import { useState, type ReactNode } from 'react'
import type { Product } from '../../core/quantity/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { printedUnit, printedUnits } from '../../core/units/index.ts'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { limitInWords } from './facts.ts'
import { InstrumentList } from './InstrumentList.tsx'
import { ProductDetail } from './ProductDetail.tsx'
import { ProductPanel } from './ProductPanel.tsx'
import { TankDetail } from './TankDetail.tsx'
import { TankPanel } from './TankPanel.tsx'
import { TerminalPanel } from './TerminalPanel.tsx'
import './yard.css'

type Sheet = 'tank' | 'product' | 'terminal'

/** Tanks and products on record, and the one that is looked at. */
export function YardPage({ route }: { readonly route: Route }): ReactNode {
  const t = words.yard
  const { now, again } = useTerminal()
  const [sheet, setSheet] = useState<Sheet>()
  const [kind, code] = route.rest
  const tank = kind === 'tank' ? now.tanks.find((one) => one.code === code) : undefined
  const product = kind === 'product' ? now.products.find((one) => one.code === code) : undefined
  const close = (): void => setSheet(undefined)
  const entered = (): void => { close(); again() }
  return (
    <Page title={t.title} actions={
      <>
        <Button does="set-terminal" onClick={() => setSheet('terminal')}>{t.terminal}</Button>
        <Button does="set-product" onClick={() => setSheet('product')}>{t.newProduct}</Button>
        <Button does="set-tank" disabled={now.products.length === 0} onClick={() => setSheet('tank')}>{t.newTank}</Button>
      </>
    }>
      <div className="yard-page">
        <div className="yard-lists">
          <TankList tanks={now.tanks} selected={tank?.code ?? ''} />
          <ProductList products={now.products} selected={product?.code ?? ''} />
          <InstrumentList />
        </div>
        <div className="yard-detail">
          {tank && <TankDetail key={tank.code + tank.capacityTable.certificate} tank={tank} />}
          {product && <ProductDetail key={product.code} product={product} />}
          {!tank && !product && <p className="quiet">{code === undefined ? t.choose : t.unknown(code)}</p>}
        </div>
      </div>
      <TankPanel tank={undefined} open={sheet === 'tank'} onClose={close} onEntered={entered} />
      <ProductPanel product={undefined} open={sheet === 'product'} onClose={close} onEntered={entered} />
      <TerminalPanel open={sheet === 'terminal'} onClose={close} onEntered={entered} />
    </Page>
  )
}

function TankList({ tanks, selected }: { readonly tanks: readonly Tank[]; readonly selected: string }): ReactNode {
  const t = words.yard
  return (
    <>
      <h2>{t.tanks}</h2>
      <DenseTable<Tank>
        label={t.tanks} rows={tanks} rowKey={(tank) => tank.code} empty={t.noTanks} selected={selected} onChoose={(tank) => goTo(addressOf('yard', ['tank', tank.code]))}
        columns={[
          { key: 'code', head: t.columns.code, cell: (tank) => tank.code },
          { key: 'name', head: t.columns.name, cell: (tank) => tank.name, wrap: true },
          { key: 'product', head: t.columns.product, cell: (tank) => tank.product },
          { key: 'roof', head: t.columns.roof, cell: (tank) => t.roofs[tank.roof.kind] },
        ]}
      />
    </>
  )
}

function ProductList({ products, selected }: { readonly products: readonly Product[]; readonly selected: string }): ReactNode {
  const t = words.yard
  const { now } = useTerminal()
  return (
    <>
      <h2 className="yard-second">{t.products}</h2>
      <DenseTable<Product>
        label={t.products} rows={products} rowKey={(product) => product.code} empty={t.noProducts} selected={selected} onChoose={(product) => goTo(addressOf('yard', ['product', product.code]))}
        columns={[
          { key: 'code', head: t.columns.code, cell: (product) => product.code },
          { key: 'name', head: t.columns.name, cell: (product) => product.name, wrap: true },
          { key: 'base', head: t.columns.base, cell: (product) => printedUnits(product.baseTemperature) },
          { key: 'unit', head: t.columns.unit, cell: (product) => printedUnit(product.volumeUnit) },
          { key: 'limit', head: t.columns.limit, wrap: true, cell: (product) => limitInWords(now.limits.find((limit) => limit.product === product.code)) },
        ]}
      />
    </>
  )
}
