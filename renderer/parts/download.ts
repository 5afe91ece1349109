/** A file as an operation answers it. */
export interface FileInAnswer { readonly name: string; readonly type: string; readonly file: string }

/** Hands a file to the person: the same way in a browser and in the desktop window. */
export function download({ name, type, file }: FileInAnswer): void {
  downloadBlob(name, new Blob([bytesOf(file)], { type }))
}

/** {@link download} of what was put together here. */
export function downloadBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

/** What an answer holds as base64. */
export function bytesOf(file: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0))
}

/** A file the person chose, as base64 for an operation's `file` field. */
export async function fileAsBase64(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  let binary = ''
  for (let at = 0; at < bytes.length; at += 0x8000) binary += String.fromCharCode(...bytes.subarray(at, at + 0x8000))
  return btoa(binary)
}
