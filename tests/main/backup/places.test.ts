import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { refuseTakenPlace, refuseUnusableFolder } from '../../../main/backup/places.ts'
import { aFolder } from '../../support/ledgers.ts'
import { codesOf, refusalOf } from '../../support/refusals.ts'

const folder = aFolder()
afterAll(folder.remove)
const data = join(folder.path, 'data')
const elsewhere = join(folder.path, 'elsewhere')
mkdirSync(data)
mkdirSync(elsewhere)
writeFileSync(join(data, 'ledger.db'), '')
symlinkSync(data, join(folder.path, 'link'))
writeFileSync(join(elsewhere, 'there'), '')
symlinkSync(join(elsewhere, 'nowhere'), join(elsewhere, 'dangling'))

async function refused(act: () => void): Promise<readonly string[]> {
  return codesOf(await refusalOf((async () => { act() })()))
}

describe('where a new file may be made', () => {
  it('at a whole path with nothing there', () => {
    expect(() => { refuseTakenPlace(join(elsewhere, 'new.db'), 'to', [data]) }).not.toThrow()
    expect(() => { refuseTakenPlace(join(elsewhere, 'deeper', 'new.db'), 'to', [data]) }).not.toThrow()
    // a name may hold dots, blanks and letters of any alphabet
    expect(() => { refuseTakenPlace(join(elsewhere, 'Mär..z 1/né.db'), 'to', [data]) }).not.toThrow()
  })

  it.each([
    ['a path that is not whole', 'new.db'], ['an empty drive', ''], ['a way back', `${elsewhere}/../data/new.db`], ['a zero byte', `${elsewhere}/a\0b`],
    ['the folder of a ledger', join(data, 'new.db')], ['below the folder of a ledger', join(data, 'backups', 'new.db')], ['the folder of a ledger by a link', join(folder.path, 'link', 'new.db')],
  ])('not at %s', async (_, path) => {
    expect(await refused(() => { refuseTakenPlace(path, 'to', []) })).toEqual(['path-not-allowed'])
  })

  it.each([['a file', 'there'], ['a link that leads nowhere', 'dangling']])('not over %s', async (_, name) => {
    expect(await refused(() => { refuseTakenPlace(join(elsewhere, name), 'to', []) })).toEqual(['path-taken'])
  })

  it('not beside a ledger of any name that is open, though elsewhere below its folder', async () => {
    expect(await refused(() => { refuseTakenPlace(join(elsewhere, 'new.db'), 'to', [elsewhere]) })).toEqual(['path-not-allowed'])
    expect(() => { refuseTakenPlace(join(elsewhere, 'deeper', 'new.db'), 'to', [elsewhere]) }).not.toThrow()
  })
})

describe('a folder for backups', () => {
  it('is there, is a folder, and is not that of a ledger', async () => {
    expect(() => { refuseUnusableFolder(elsewhere, 'folder', [data]) }).not.toThrow()
    expect(await refused(() => { refuseUnusableFolder(join(elsewhere, 'gone'), 'folder', []) })).toEqual(['folder-not-usable'])
    expect(await refused(() => { refuseUnusableFolder(join(elsewhere, 'there'), 'folder', []) })).toEqual(['folder-not-usable'])
    expect(await refused(() => { refuseUnusableFolder(data, 'folder', []) })).toEqual(['path-not-allowed'])
  })
})
