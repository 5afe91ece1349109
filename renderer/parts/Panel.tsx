import { Modal } from '@mantine/core'
import type { ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { words } from '../words/en.ts'
import { useFocusReturn } from './use-focus-return.ts'
import './panel.css'

interface PanelProps {
  readonly title: string
  readonly open: boolean
  readonly onClose: () => void
  /** Width in pixels. */
  readonly width?: number
  readonly children: ReactNode
}

/** A sheet laid over the page: keeps the focus and gives it back, closes with Esc, which then closes nothing below it. */
export function Panel({ title, open, onClose, width = 560, children }: PanelProps): ReactNode {
  useKey('escape', words.app.closes, onClose, { group: words.app.everywhere, when: open })
  useFocusReturn(open)
  return (
    <Modal
      opened={open} onClose={onClose} returnFocus={false} title={title} size={width} radius={0} padding="md" shadow="none" centered={false} yOffset={60} closeOnEscape={false}
      transitionProps={{ duration: 0 }} overlayProps={{ backgroundOpacity: 0.25, color: '#1c2733' }} closeButtonProps={{ 'aria-label': 'Close', size: 'sm' }}
      attributes={{ header: { role: 'presentation' } }}
      classNames={{ content: 'panel', header: 'panel-head', title: 'panel-title' }}
    >
      {children}
    </Modal>
  )
}
