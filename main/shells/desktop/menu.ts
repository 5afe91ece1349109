import type { MenuItemConstructorOptions } from 'electron'

/**
 * The menu: what every program has, and no more; the work is done in the window.
 * @param packaged an installed program has no developer tools
 */
export function menuOf(packaged: boolean, platform: NodeJS.Platform): MenuItemConstructorOptions[] {
  const view: MenuItemConstructorOptions[] = [
    { role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { type: 'separator' }, { role: 'togglefullscreen' },
  ]
  const program: MenuItemConstructorOptions = platform === 'darwin' ? { role: 'appMenu' } : { label: 'Program', submenu: [{ role: 'quit' }] }
  return [
    program,
    { role: 'editMenu' },
    { label: 'View', submenu: packaged ? view : [...view, { type: 'separator' }, { role: 'toggleDevTools' }] },
    { role: 'windowMenu' },
  ]
}
