import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/** The window: renderer/ → dist/renderer, with relative addresses, so that it opens from a file as from a host. */
export default defineConfig({
  root: new URL('./renderer/', import.meta.url).pathname,
  base: './',
  plugins: [react()],
  build: { outDir: '../dist/renderer', emptyOutDir: true, target: 'es2023', chunkSizeWarningLimit: 2_000 },
})
