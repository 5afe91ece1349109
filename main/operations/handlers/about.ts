import { SOURCES } from '../../../core/sources.ts'
import type { Handler } from '../context.ts'

export const about: Handler<'about'> = async (_input, { software }) => ({
  software,
  sources: Object.entries(SOURCES).map(([key, { title, edition }]) => ({ key, title, edition })),
})
