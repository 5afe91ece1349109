/** Where the chain ends: sequence 0 and 64 zeros before the first entry. */
export interface Head { readonly seq: number; readonly hash: string }
