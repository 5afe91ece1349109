import { useRef, useState, type DragEvent, type ReactNode } from 'react'
import { Button } from './Button.tsx'
import './file-pick.css'

interface FilePickProps {
  readonly id: string
  /** What the button says. */
  readonly choose: string
  /** What else may be done: drop it here. */
  readonly hint: string
  /** File name endings and types, as an input's `accept`. */
  readonly accept: string
  readonly onFile: (file: File) => void
  readonly error?: string | undefined
}

/** One file, chosen with a button or dropped on the frame. */
export function FilePick({ id, choose, hint, accept, onFile, error }: FilePickProps): ReactNode {
  const input = useRef<HTMLInputElement>(null)
  const [over, setOver] = useState(false)
  const take = (files: FileList | null): void => {
    const file = files?.[0]
    if (file) onFile(file)
  }
  const drop = (event: DragEvent): void => {
    event.preventDefault()
    setOver(false)
    take(event.dataTransfer.files)
  }
  return (
    <div className={over ? 'file-pick file-over' : 'file-pick'} onDrop={drop} onDragOver={(event) => { event.preventDefault(); setOver(true) }} onDragLeave={() => setOver(false)}>
      <input ref={input} id={id} type="file" accept={accept} hidden onChange={(event) => { take(event.currentTarget.files); event.currentTarget.value = '' }} />
      <Button onClick={() => input.current?.click()}>{choose}</Button>
      <span className="quiet">{hint}</span>
      {error && <p role="alert" className="field-error">{error}</p>}
    </div>
  )
}
