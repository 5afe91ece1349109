import { createContext, use, useEffect, useRef, useState, useSyncExternalStore, type ReactNode } from 'react'
import type { OperationName } from '../../main/operations/contracts/index.ts'
import { useLeave } from '../bridge/desk.ts'
import { KeyRegistry, type KeyEntry } from './key-registry.ts'

const KeysContext = createContext<KeyRegistry | null>(null)

/** Hears every key of the window and hands it to whoever registered it. */
export function KeysProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const [registry] = useState(() => new KeyRegistry())
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (!event.defaultPrevented && registry.press(event, isWriting(event.target))) event.preventDefault()
    }
    window.addEventListener('keydown', pressed)
    return () => window.removeEventListener('keydown', pressed)
  }, [registry])
  return <KeysContext value={registry}>{children}</KeysContext>
}

function isWriting(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input:not([type=range]), textarea, select, [contenteditable]')
}

function useRegistry(): KeyRegistry {
  const registry = use(KeysContext)
  if (!registry) throw new Error('keys need a KeysProvider above them')
  return registry
}

/**
 * Registers a key where it acts: `useKey('ctrl+enter', words.transfer.sign, sign, { group: words.transfer.title })`.
 * It lists itself under `?` as long as the component stands, `when` holds and whoever is at the desk may do what it `does`.
 */
export function useKey(combo: string, label: string, act: () => void, { group, when = true, does }: { readonly group: string; readonly when?: boolean; readonly does?: OperationName }): void {
  const registry = useRegistry()
  const acts = useLeave(does).may && when
  const latest = useRef(act)
  useEffect(() => {
    latest.current = act
  })
  useEffect(() => (acts ? registry.register({ combo, label, group, act: () => latest.current() }) : undefined), [registry, combo, label, group, acts])
}

/** As long as the component stands, no key of the window acts. */
export function useKeysHeld(): void {
  const registry = useRegistry()
  useEffect(() => registry.hold(), [registry])
}

/** The keys that act at the moment. */
export function useKeys(): readonly KeyEntry[] {
  const registry = useRegistry()
  return useSyncExternalStore(registry.subscribe, registry.list, registry.list)
}
