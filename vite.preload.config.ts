import { defineConfig } from 'vite'

/** The preload: one CommonJS file with everything in it, because a sandboxed preload can load nothing else. */
export default defineConfig({
  ssr: { noExternal: true },
  build: {
    ssr: true, target: 'chrome140', outDir: 'dist/preload', emptyOutDir: true, minify: false,
    rolldownOptions: {
      input: 'main/shells/desktop/preload.ts',
      external: ['electron'],
      output: { format: 'cjs', entryFileNames: 'preload.cjs', codeSplitting: false },
    },
  },
})
