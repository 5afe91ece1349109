/** Every text of the window in English, a part per folder. Sentences of findings come from the core. */
import { app } from './en/app.ts'
import { gauge } from './en/gauge.ts'
import { month } from './en/month.ts'
import { register } from './en/register.ts'
import { parts } from './en/parts.ts'
import { transfer } from './en/transfer.ts'

export const words = { app, gauge, parts, transfer, month, register } as const
