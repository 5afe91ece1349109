import type { ReactNode } from 'react'
import type { z } from 'zod'
import { OPERATION_NAMES, OPERATIONS, ROLES, type Contract, type OperationName, type Role } from '../../main/operations/contracts/index.ts'
import { DenseTable } from '../parts/DenseTable.tsx'
import { words } from '../words/en.ts'

type Terms = Pick<Contract<string, z.ZodType, z.ZodType>, 'name' | 'says' | 'roles' | 'approval' | 'ledger'>

/** What each role may do with the ledger, from the table of operations itself; what everybody may do is left out. */
export function operationsByRole(): readonly Terms[] {
  const all: readonly Terms[] = OPERATION_NAMES.map((name: OperationName): Terms => OPERATIONS[name])
  return all.filter(({ roles }) => roles.length < ROLES.length)
}

/** What each role may do. */
export function RoleTable(): ReactNode {
  const t = words.desk.people
  return (
    <>
      <p className="quiet">{t.signs}</p>
      <DenseTable<Terms>
        label={t.table} rows={operationsByRole()} rowKey={({ name }) => name} empty=""
        columns={[
          { key: 'says', head: t.operation, cell: ({ says }) => says, wrap: true },
          ...ROLES.map((role: Role) => ({ key: role, head: words.desk.roles[role], cell: (terms: Terms) => <RoleSign terms={terms} role={role} /> })),
        ]}
      />
    </>
  )
}

function RoleSign({ terms: { roles, approval }, role }: { readonly terms: Terms; readonly role: Role }): ReactNode {
  if (!roles.includes(role)) return ''
  const t = words.desk.people
  return <span role="img" aria-label={approval ? t.second : t.may} title={approval ? t.second : t.may}>{approval ? '◐' : '●'}</span>
}
