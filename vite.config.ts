import { defineConfig } from 'vite';

/** The page: built whole, so that it asks nothing of any other host and carries no inline script. */
export default defineConfig({
  root: 'web',
  base: './',
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 700,
  },
});
