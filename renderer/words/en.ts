/** Every text of the window in English, a part per folder. Sentences of findings come from the core. */
import { app } from './en/app.ts'
import { density } from './en/density.ts'
import { desk } from './en/desk.ts'
import { gauge } from './en/gauge.ts'
import { month } from './en/month.ts'
import { register } from './en/register.ts'
import { check } from './en/check.ts'
import { ledger } from './en/ledger.ts'
import { people } from './en/people.ts'
import { period } from './en/period.ts'
import { parts } from './en/parts.ts'
import { probe } from './en/probe.ts'
import { storage } from './en/storage.ts'
import { transfer } from './en/transfer.ts'
import { tables } from './en/tables.ts'
import { yard } from './en/yard.ts'

export const words = { app, gauge, parts, probe, transfer, month, register, tables, yard, check, ledger, people, period, density, desk, storage } as const
