import { density } from './density.ts'
import { desk } from './desk.ts'
import { people } from './people.ts'
import { stock } from './stock.ts'
import { tables } from './tables.ts'
import { yard } from './yard.ts'

const { tankForm: tank, productForm: product, limitForm: limit, terminalForm: terminal } = yard
const { facts, revisions } = tables
const { form: instrument } = stock.instruments
const { settings, curve } = density

/** What the sheets of the window call the fields of a set-up entry, by their paths. A field that no sheet has is not here. */
export const fields: Readonly<Record<string, string>> = {
  effectiveFrom: tank.effectiveFrom,
  'terminal.code': terminal.code, 'terminal.name': terminal.name, 'terminal.zone': terminal.zone, 'terminal.gaugeHour': terminal.gaugeHour,
  'tank.code': tank.code, 'tank.name': tank.name, 'tank.shape': facts.shape, 'tank.shellMaterial': tank.shellMaterial, 'tank.insulated': tank.insulated, 'tank.datum': tank.datum,
  'tank.referenceGaugeHeight': tank.referenceGaugeHeight, 'tank.referenceHeightTolerance': `${tank.referenceGaugeHeight} may differ by`, 'tank.product': tank.product, 'tank.usualWaterCut': tank.usualWaterCut,
  'tank.roof.kind': tank.roof, 'tank.roof.mass': tank.mass, 'tank.roof.inTable': tank.inTable, 'tank.roof.referenceDensity': `${tank.inTable} for a density of`, 'tank.roof.printedAdjustment': tank.printed,
  'tank.roof.criticalZone.from': tank.criticalFrom, 'tank.roof.criticalZone.to': 'Critical zone to',
  'tank.roof.legs.low': `${tables.legs.lowHeight} of the legs`, 'tank.roof.legs.high': `${tables.legs.highHeight} of the legs`, 'tank.roof.legs.position': tables.legs.position,
  'tank.capacityTable.certificate': `${revisions.certificate} of the capacity table`, 'tank.capacityTable.issuedBy': `${tank.table} issued by`, 'tank.capacityTable.issuedOn': `${tank.table} issued on`, 'tank.capacityTable.revision': `${facts.revision} of the capacity table`,
  'tank.capacityTable.baseTemperature': yard.tank.facts.base, 'tank.capacityTable.volumeUnit': yard.tank.facts.volumeUnit, 'tank.capacityTable.levelUnit': 'Table levels in', 'tank.capacityTable.rows': tank.table,
  'tank.capacityTable.bottom': facts.bottom, 'tank.capacityTable.heel': facts.heel, 'tank.capacityTable.layout': `Capacity table ${facts.layout.toLowerCase()}`, 'tank.capacityTable.noticed': tables.noticed, 'tank.capacityTable.madeBy': tables.computed,
  'product.code': product.code, 'product.name': product.name, 'product.commodity': settings.commodity, 'product.edition': settings.edition, 'product.baseTemperature': settings.baseTemperature,
  'product.volumeUnit': product.volumeUnit, 'product.massUnit': product.massUnit, 'product.densityUnit': product.densityUnit, 'product.airConvention': product.airConvention,
  'product.alpha': settings.alpha, 'product.molarMass': settings.molarMass, 'product.component': settings.component, 'product.content': settings.content, 'product.salinity': settings.salinity, 'product.figures': settings.figures,
  'product.curve.certificate': `${curve.title}: certificate`, 'product.curve.laboratory': `${curve.title}: laboratory`, 'product.curve.date': `${curve.title}: date`, 'product.curve.tolerance': `${curve.title}: ${curve.tolerance.toLowerCase()}`, 'product.curve.points': curve.points,
  'limit.product': 'Product', 'limit.percent': limit.percent, 'limit.fixed': limit.fixed, 'limit.base': limit.base, 'limit.source': limit.source,
  'party.code': people.party.code, 'party.name': people.party.name, 'party.address': 'Address',
  'identity.id': people.identity.id, 'identity.name': people.identity.name, 'identity.party': people.identity.party, 'identity.certificate': revisions.certificate, 'identity.fingerprint': people.columns.fingerprint,
  'identity.notBefore': 'Certificate valid from', 'identity.notAfter': 'Certificate valid to',
  'instrument.code': instrument.code, 'instrument.kind': instrument.kind, 'instrument.tank': instrument.tank, 'instrument.serial': instrument.serial, 'instrument.expandedUncertainty': instrument.uncertainty,
  'instrument.certificate': instrument.certificate, 'instrument.verifyEveryDays': instrument.every, 'instrument.inService': instrument.inService, 'instrument.remarks': instrument.remarks,
  'person.id': desk.person.id, 'person.name': desk.person.name, 'person.party': desk.person.party, 'person.roles': desk.person.roles, 'person.active': desk.person.active, 'person.identity': 'Signing identity',
  'rules.approval': desk.rules.approval, 'rules.idleMinutes': desk.rules.idle,
}
