import type { ReactNode } from 'react'
import type { ListedBackup } from '../../main/operations/contracts/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { Figure } from '../parts/Figure.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { fateInWords, kilobytes } from './backup-words.ts'

/** The backups in the folder, newest first, and what the rule does with each. */
export function BackupTable({ backups, onChoose }: { readonly backups: readonly ListedBackup[]; readonly onChoose: (backup: ListedBackup) => void }): ReactNode {
  const t = words.storage
  const zone = useZone()
  return (
    <DenseTable<ListedBackup>
      label={t.list} rows={backups} rowKey={({ name }) => name} empty={t.empty} onChoose={onChoose}
      columns={[
        { key: 'at', head: t.columns.at, cell: ({ at }) => localTime(at, zone), sortBy: ({ at }) => at },
        { key: 'entries', head: t.columns.entries, align: 'end', cell: ({ entries }) => <Figure value={String(entries)} unit="" /> },
        { key: 'head', head: t.columns.head, cell: ({ head }) => <span title={head}>{head.slice(0, 16)}</span> },
        { key: 'size', head: `${t.columns.size}, ${t.sizeUnit}`, align: 'end', cell: ({ size }) => <Figure value={kilobytes(size)} unit={t.sizeUnit} unitInHead /> },
        { key: 'standing', head: t.columns.standing, cell: ({ standing }) => <span className={standing === 'verified' ? undefined : 'storage-wrong'}>{standing}</span> },
        { key: 'verified', head: t.columns.verified, cell: ({ verifiedAt }) => (verifiedAt === null ? '–' : localTime(verifiedAt, zone).slice(0, 16)) },
        { key: 'fate', head: t.columns.fate, wrap: true, cell: (backup) => <span className={backup.fate === 'retired' ? 'storage-goes' : undefined}>{fateInWords(backup)}</span> },
        { key: 'name', head: t.columns.name, wrap: true, cell: ({ name }) => name },
      ]}
    />
  )
}
