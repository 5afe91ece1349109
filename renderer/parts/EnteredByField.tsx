import type { ReactNode } from 'react'
import { useDesk } from '../bridge/desk.ts'
import { TextField } from './Field.tsx'

interface EnteredByFieldProps { readonly id: string; readonly label: string; readonly value: string; readonly onChange: (name: string) => void; readonly error?: string | undefined }

/** Asks who enters something, where nobody is on record; whoever is signed in is not asked. */
export function EnteredByField(props: EnteredByFieldProps): ReactNode {
  return useDesk()?.now.session ? null : <TextField {...props} />
}
