import jsdoc from 'eslint-plugin-jsdoc'
import tseslint from 'typescript-eslint'

const ROUNDING = [
  { selector: "CallExpression[callee.property.name='toFixed'][arguments.length>0]", message: 'Round in core/rounding only: discriminate(quantity, value), or display(value, decimals).' },
  { selector: "CallExpression[callee.property.name=/^(toPrecision|toDecimalPlaces|toSignificantDigits|toNearest)$/]", message: 'Round in core/rounding only: discriminate(quantity, value).' },
  { selector: "CallExpression[callee.object.name='Math'][callee.property.name='round']", message: 'Round in core/rounding only: discriminate(quantity, value).' },
  { selector: "CallExpression[callee.property.name='round'][arguments.length=0]", message: 'Round in core/rounding only: discriminate(quantity, value).' },
]
const CLOCK_AND_DICE = [
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'No clock in core: main hands the instant in.' },
  { selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']", message: 'No clock in core: main hands the instant in.' },
  { selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']", message: 'No dice in core.' },
  { selector: "MemberExpression[object.name='performance']", message: 'No clock in core.' },
]
const EXPORTS = [{ selector: 'ExportDefaultDeclaration', message: 'Named exports only.' }]

const everywhere = {
  '@typescript-eslint/no-explicit-any': 'error',
  '@typescript-eslint/no-non-null-assertion': 'error',
  '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
  'no-empty': 'error',
  'no-console': 'error',
  eqeqeq: 'error',
  'prefer-const': 'error',
  'no-var': 'error',
}

export default tseslint.config(
  { ignores: ['dist/', 'out/', 'node_modules/', 'ledger/'] },
  { files: ['**/*.ts', '**/*.tsx'], languageOptions: { parser: tseslint.parser }, plugins: { '@typescript-eslint': tseslint.plugin, jsdoc }, rules: everywhere },
  {
    files: ['core/**/*.ts', 'main/**/*.ts', 'renderer/**/*.{ts,tsx}'],
    rules: {
      'max-lines': ['error', { max: 250, skipBlankLines: true, skipComments: true }],
      'no-restricted-syntax': ['error', ...ROUNDING, ...EXPORTS],
    },
  },
  {
    files: ['core/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...ROUNDING, ...CLOCK_AND_DICE, ...EXPORTS],
      'no-restricted-globals': ['error', 'process', 'window', 'document', 'fetch', 'crypto', 'performance', 'setTimeout', 'setInterval', 'console'],
      'jsdoc/require-jsdoc': ['error', { publicOnly: { esm: true }, require: { FunctionDeclaration: true }, contexts: ['ExportNamedDeclaration > TSInterfaceDeclaration'] }],
    },
  },
  { files: ['core/rounding/*.ts'], rules: { 'no-restricted-syntax': ['error', ...CLOCK_AND_DICE, ...EXPORTS] } },
  { files: ['main/shells/**/*.ts', 'scripts/**/*.ts', 'tests/**/*.ts', '*.config.ts'], rules: { 'no-console': 'off' } },
  { files: ['tests/**/*.{ts,tsx}'], rules: { '@typescript-eslint/no-non-null-assertion': 'off', 'no-restricted-syntax': ['error', { selector: "CallExpression[callee.property.name='only']", message: 'A test that runs alone hides the others.' }, { selector: "CallExpression[callee.object.name=/^(it|test|describe)$/][callee.property.name=/^(skip|todo)$/]", message: 'A switched-off test is a red test; use skipIf with a loud reason where a program is missing.' }] } },
)
