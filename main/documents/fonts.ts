import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { TFontDictionary } from 'pdfmake/interfaces.js'
import { glyphsOf } from './glyphs.ts'

/** Where the fonts lie that pages are set in; nothing else on the disk is read for a page. */
export const FONT_FOLDER = join(dirname(createRequire(import.meta.url).resolve('pdfmake/package.json')), 'fonts', 'Roboto')

/** Figures of this face are all of one width, so that columns of digits stand under each other. */
export const FONTS: TFontDictionary = {
  Roboto: {
    normal: join(FONT_FOLDER, 'Roboto-Regular.ttf'), bold: join(FONT_FOLDER, 'Roboto-Medium.ttf'),
    italics: join(FONT_FOLDER, 'Roboto-Italic.ttf'), bolditalics: join(FONT_FOLDER, 'Roboto-MediumItalic.ttf'),
  },
}

/** What is set in place of characters that the font lacks but our own formulas use. */
const SET_AS: Readonly<Record<string, string>> = { '→': 'to', '↔': 'to and from' }

let drawn: ReadonlySet<number> | undefined

/** A text with every character that the font cannot draw written as its code, `[U+4E2D]`: seen, and not lost. */
export function legible(text: string): string {
  drawn ??= glyphsOf(join(FONT_FOLDER, 'Roboto-Regular.ttf'))
  const known = drawn
  return Array.from(text, (character) => {
    const code = character.codePointAt(0) ?? 0
    if (character === '\n' || known.has(code)) return character
    return SET_AS[character] ?? `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`
  }).join('')
}
