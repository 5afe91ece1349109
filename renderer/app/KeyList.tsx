import type { ReactNode } from 'react'
import { Panel } from '../parts/Panel.tsx'
import { words } from '../words/en.ts'
import { spelled } from './key-registry.ts'
import { useKeys } from './keys.tsx'

/** Every key that acts at the moment, under the part of the window that registered it. */
export function KeyList({ open, onClose }: { readonly open: boolean; readonly onClose: () => void }): ReactNode {
  const keys = useKeys()
  const groups = [...new Set(keys.map((key) => key.group))]
  return (
    <Panel title={words.app.keysTitle} open={open} onClose={onClose} width={520}>
      {groups.map((group) => (
        <section key={group} className="key-group">
          <h2>{group}</h2>
          <dl>
            {keys.filter((key) => key.group === group).map((key) => (
              <div key={key.combo + key.label}><dt><kbd>{spelled(key.combo)}</kbd></dt><dd>{key.label}</dd></div>
            ))}
            {group === words.app.everywhere && <div><dt><kbd>Enter</kbd></dt><dd>{words.app.nextField}</dd></div>}
          </dl>
        </section>
      ))}
    </Panel>
  )
}
