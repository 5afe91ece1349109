import { describe, expect, it } from 'vitest'
import { backupName, readBackupName, readUnfinishedName, unfinishedName } from '../../../main/backup/names.ts'

describe('the name of a backup', () => {
  it('says of what it is, when it was begun, and where it ends', () => {
    const name = backupName({ of: 'CPT', at: '2026-11-25T10:23:00.512Z', seq: 415 })
    expect(name).toBe('CPT-2026-11-25T102300Z-415.db')
    expect(readBackupName(name)).toEqual({ name, of: 'CPT', at: '2026-11-25T10:23:00Z', seq: 415 })
    expect(readBackupName('ledger-2026-11-25T102300Z-0.db')?.of).toBe('ledger')
  })

  it.each(['ledger.db', 'CPT-2026-11-25T102300Z-415.db-wal', 'CPT-2026-13-45T102300Z-415.db', 'CPT-2026-11-25T102300Z-415.db.part', 'cpt-2026-11-25T102300Z-415.db', '../CPT-2026-11-25T102300Z-415.db'])('is not %s', (name) => {
    expect(readBackupName(name)).toBeUndefined()
  })

  it('is never that of an unfinished one, from which its maker can be read', () => {
    const name = unfinishedName('desk-1.calder point', 4711, '0123456789ab')
    expect(readBackupName(name)).toBeUndefined()
    expect(readUnfinishedName(name)).toEqual({ machine: 'desk_1.calder_point', process: 4711 })
    expect(readUnfinishedName(`${name}-journal`)).toEqual({ machine: 'desk_1.calder_point', process: 4711 })
    expect(readUnfinishedName('unfinished business.part')).toBeUndefined()
  })
})
