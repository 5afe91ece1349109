import pdfmake from 'pdfmake'
import type { Content, DynamicContent, TDocumentDefinitions } from 'pdfmake/interfaces.js'
import { FONT_FOLDER, FONTS, legible } from './fonts.ts'
import { FACE, NEW_PAGE } from './parts/style.ts'

/** A file that travels inside a document. */
export interface Attachment {
  readonly name: string
  readonly text: string
  readonly says: string
}

/** What a document is made of: PDF/A-3b with its files attached. The same parts give the same bytes. @source ISO-19005-3 6.8 */
export interface DocumentParts {
  readonly title: string
  readonly subject: string
  /** UTC instant of making, printed into the file; the clock is not read. */
  readonly at: string
  readonly orientation?: 'portrait' | 'landscape'
  readonly content: Content
  readonly footer: DynamicContent
  readonly attachments?: readonly Attachment[]
}

/** Room around a page, in points: left, top, right, bottom. */
export const MARGINS: [number, number, number, number] = [36, 34, 36, 46]

/** Share of a page's height above which a part may begin without a page of its own. */
const NEAR_TOP = 0.4

pdfmake.setFonts(FONTS)
pdfmake.setUrlAccessPolicy(() => false)
pdfmake.setLocalAccessPolicy((path) => path.startsWith(FONT_FOLDER))

/**
 * Sets a document on A4 pages as PDF/A-3b with its attachments. No structure tree: level A is not claimed.
 * @source ISO-19005-3
 */
export async function renderPdf(parts: DocumentParts): Promise<Uint8Array> {
  const at = new Date(parts.at)
  const definition: TDocumentDefinitions = {
    version: '1.7', subset: 'PDF/A-3b', language: 'en-GB', displayTitle: true,
    pageSize: 'A4', pageOrientation: parts.orientation ?? 'portrait', pageMargins: MARGINS,
    info: { title: legible(parts.title), subject: legible(parts.subject), creator: 'Dipledger', producer: 'Dipledger', creationDate: at, modDate: at },
    defaultStyle: FACE,
    content: allLegible(parts.content),
    pageBreakBefore: (node) => node.headlineLevel === NEW_PAGE && node.startPosition.verticalRatio > NEAR_TOP,
    footer: (page, pages, size) => allLegible(parts.footer(page, pages, size) ?? ''),
    ...attached(parts.attachments ?? [], at),
  }
  return new Uint8Array(await pdfmake.createPdf(definition).getBuffer())
}

/** The library's types know no relationship of an attachment; it writes it all the same, and PDF/A-3 asks for it. */
function attached(attachments: readonly Attachment[], at: Date): Pick<TDocumentDefinitions, 'files'> {
  const files = attachments.map(({ name, text, says }) => {
    const src = `data:application/json;base64,${Buffer.from(text, 'utf8').toString('base64')}`
    return [name, { src, name, description: says, type: 'application/json', relationship: 'Source', creationDate: at, modifiedDate: at }] as const
  })
  return { files: Object.fromEntries(files) }
}

/** Content with all its texts legible; drawings are ours and stay as they are. */
function allLegible<T>(content: T): T
function allLegible(content: unknown): unknown {
  if (typeof content === 'string') return legible(content)
  if (Array.isArray(content)) return content.map((item: unknown) => allLegible(item))
  if (typeof content !== 'object' || content === null) return content
  return Object.fromEntries(Object.entries(content).map(([key, value]) => [key, key === 'svg' ? value : allLegible<unknown>(value)]))
}
