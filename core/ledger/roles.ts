/** Whose work an operation is. What each may do stands in the table of operations. */
export const ROLES = ['accountant', 'inspector', 'analyst', 'administrator'] as const
export type Role = (typeof ROLES)[number]
