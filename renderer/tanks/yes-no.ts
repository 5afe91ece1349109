import { words } from '../words/en.ts'

export const YES_NO = [{ value: 'false', label: words.yard.no }, { value: 'true', label: words.yard.yes }] as const
