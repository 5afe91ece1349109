/**
 * The worksheet line: every number with its formula, inputs, unrounded value, rounding rule and clause.
 * In: rounded values. Out: lines that are printed as they were computed.
 */
export {
  exactLine, exceptionFrom, exceptionSchema, inputLine, quantitySchema, roundedLine, unroundedLine, worksheetLineSchema,
  type Exception, type Quantity, type WorksheetLine,
} from './line.ts'
