/** Where an arrow may point. The flow is a list; the rules are made from it. */
const flow = [
  'refusal', 'units', 'rounding', 'worksheet', 'volume-correction', 'tank', 'gauge', 'quantity', 'transfer',
  'uncertainty', 'evaporation', 'ticket', 'ledger', 'reconciliation', 'chart',
]
const oneWay = flow.slice(0, -1).map((folder, i) => ({
  name: `${folder}-looks-back-only`,
  severity: 'error',
  from: { path: `^core/${folder}/` },
  to: { path: `^core/(${flow.slice(i + 1).join('|')})/` },
}))
const rule = (name, from, to) => ({ name, severity: 'error', from, to })

module.exports = {
  forbidden: [
    ...oneWay,
    rule('core-folders-are-in-the-flow', { path: '^core/' }, { path: `^core/(?!(${flow.join('|')})/|sources[.]ts$)` }),
    rule('folders-meet-at-index', { path: '^core/([^/]+)/' }, { path: '^core/(?!$1/)[^/]+/(?!index[.]ts$)' }),
    rule('others-enter-core-by-index', { path: '^(main|renderer|scripts)/' }, { path: '^core/[^/]+/(?!index[.]ts$)' }),
    rule('core-is-alone', { path: '^core/' }, { path: '^(main|renderer|tests|samples|scripts)/' }),
    rule('core-has-no-node', { path: '^core/' }, { dependencyTypes: ['core'] }),
    rule('core-has-few-libraries', { path: '^core/' }, { path: 'node_modules/(?!(decimal[.]js|@noble/hashes|canonicalize|zod|echarts)/)' }),
    rule('core-takes-only-types-of-echarts', { path: '^core/' }, { path: 'node_modules/echarts/', dependencyTypesNot: ['type-only'] }),
    rule('main-does-not-see-the-window', { path: '^main/' }, { path: '^renderer/' }),
    rule('window-sees-contracts-only', { path: '^renderer/' }, { path: '^main/(?!operations/contracts/index[.]ts$)' }),
    rule('window-has-no-node', { path: '^renderer/' }, { dependencyTypes: ['core'] }),
    rule('contracts-see-core-only', { path: '^main/operations/contracts/' }, { path: '^(main/(?!operations/contracts/)|renderer/)' }),
    rule('electron-in-the-desktop-shell-only', { path: '^main/(?!shells/desktop/)' }, { path: 'node_modules/electron/' }),
    rule('shells-are-transport', { path: '^main/(?!shells/)' }, { path: '^main/shells/' }),
    rule('no-circles', {}, { circular: true }),
    rule('no-unresolved', {}, { couldNotResolve: true }),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: 'specify',
    tsConfig: { fileName: 'tests/tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'], mainFields: ['module', 'main', 'types'] },
  },
}
