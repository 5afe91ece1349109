/** The tool that checks where arrows point, and how it is called. */
export const DEPENDENCY_RULES = [
  'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs', '--config', '.dependency-cruiser.cjs', 'core', 'main', 'renderer', 'scripts',
] as const
