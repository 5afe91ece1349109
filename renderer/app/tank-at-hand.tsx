import { createContext, use, useEffect, useState, type ReactNode } from 'react'

const TankAtHand = createContext<readonly [string, (code: string) => void]>(['', () => undefined])

/** Lets a page tell the yard strip which tank it works on. */
export function TankAtHandProvider({ children }: { readonly children: ReactNode }): ReactNode {
  return <TankAtHand value={useState('')}>{children}</TankAtHand>
}

/** Marks a tank in the yard strip as long as the component stands. */
export function useTankAtHand(code: string): void {
  const [, set] = use(TankAtHand)
  useEffect(() => {
    set(code)
    return () => set('')
  }, [set, code])
}

/** The tank a page works on; empty when it works on none. */
export function useMarkedTank(): string {
  return use(TankAtHand)[0]
}
