import { readFileSync } from 'node:fs'

/**
 * Which characters a TrueType font can draw, from its character map (formats 4 and 12). A character that the font lacks
 * would vanish from a page without a word; whoever prints asks here first.
 */
export function glyphsOf(fontFile: string): ReadonlySet<number> {
  const font = readFileSync(fontFile)
  const cmap = tableAt(font, 'cmap')
  const drawn = new Set<number>()
  for (let i = 0; i < font.readUInt16BE(cmap + 2); i++) {
    const table = cmap + font.readUInt32BE(cmap + 4 + 8 * i + 4)
    const format = font.readUInt16BE(table)
    if (format === 4) addSegments(font, table, drawn)
    if (format === 12) addGroups(font, table, drawn)
  }
  return drawn
}

function tableAt(font: Buffer, tag: string): number {
  for (let i = 0; i < font.readUInt16BE(4); i++) {
    const record = 12 + 16 * i
    if (font.toString('latin1', record, record + 4) === tag) return font.readUInt32BE(record + 8)
  }
  throw new Error(`The font has no table ${tag}.`)
}

function addSegments(font: Buffer, table: number, drawn: Set<number>): void {
  const doubled = font.readUInt16BE(table + 6)
  const [ends, starts] = [table + 14, table + 16 + doubled]
  const [deltas, offsets] = [starts + doubled, starts + 2 * doubled]
  for (let at = 0; at < doubled; at += 2) {
    const offset = font.readUInt16BE(offsets + at)
    const start = font.readUInt16BE(starts + at)
    for (let code = start; code <= font.readUInt16BE(ends + at) && code < 0xffff; code++) {
      const glyph = offset === 0 ? code + font.readUInt16BE(deltas + at) : font.readUInt16BE(offsets + at + offset + 2 * (code - start))
      if (glyph % 0x10000 !== 0) drawn.add(code)
    }
  }
}

function addGroups(font: Buffer, table: number, drawn: Set<number>): void {
  for (let i = 0; i < font.readUInt32BE(table + 12); i++) {
    const group = table + 16 + 12 * i
    for (let code = font.readUInt32BE(group); code <= font.readUInt32BE(group + 4); code++) drawn.add(code)
  }
}
