import type { ReactNode } from 'react'
import './page.css'

interface PageProps {
  readonly title: string
  /** Beside the title: what is looked at. */
  readonly about?: ReactNode
  /** At the right end of the head: buttons, the primary one last. */
  readonly actions?: ReactNode
  readonly children: ReactNode
}

/** A job's page: a head line with its actions, and the room below it, which scrolls by itself. */
export function Page({ title, about, actions, children }: PageProps): ReactNode {
  return (
    <section className="page" aria-label={title}>
      <header className="page-head">
        <h1>{title}</h1>
        {about && <div className="page-about">{about}</div>}
        {actions && <div className="page-actions">{actions}</div>}
      </header>
      <div className="page-body">{children}</div>
    </section>
  )
}
