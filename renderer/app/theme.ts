import { createTheme } from '@mantine/core'

/** One oxide in ten shades; shade 6 on paper is 6.4 : 1. */
export const theme = createTheme({
  primaryColor: 'oxide', primaryShade: 6, autoContrast: true, defaultRadius: 0, cursorType: 'pointer', respectReducedMotion: true,
  fontFamily: 'system-ui, "DejaVu Sans", "Segoe UI", sans-serif',
  colors: { oxide: ['#f8ece8', '#ecd2c9', '#dcae9f', '#cc8974', '#bb674e', '#ab4d31', '#9a3b1f', '#822f17', '#6a2511', '#521b0b'] },
})
