import { defineConfig } from 'vite'
import { softwareAt } from './main/software.ts'

/** The desktop program's main process. Libraries stay in node_modules; only our own sources are bundled. */
export default defineConfig({
  define: { DIPLEDGER_BUILT_FROM: JSON.stringify(softwareAt(import.meta.dirname)) },
  build: {
    ssr: true, target: 'node24', outDir: 'dist/main', emptyOutDir: true, minify: false, sourcemap: true,
    rolldownOptions: {
      input: 'main/shells/desktop/start.ts',
      external: ['electron', /^node:/],
      output: { format: 'es', entryFileNames: 'start.mjs', chunkFileNames: '[name]-[hash].mjs' },
    },
  },
})
