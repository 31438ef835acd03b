import { defineConfig, type Plugin } from 'vite';

/** The page checks what it is told by schemas and never prints one: the library's printing of them stays away. */
const printsNoSchemas: Plugin = {
  name: 'prints-no-schemas',
  transform(code, id) {
    if (!/zod\/v4\/core\/(to-json-schema|json-schema-processors)\.js$/.test(id)) return null;
    const names = [...code.matchAll(/^export (?:const|function) (\w+)/gm)].map(([, name]) => name);
    const lines = names.map((name) => `export const ${name} = none;`);
    return { code: ['const none = () => none;', ...lines].join('\n'), map: null };
  },
};

/** The page: built whole, so that it asks nothing of any other host and carries no inline script. */
export default defineConfig({
  root: 'web',
  base: './',
  plugins: [printsNoSchemas],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 750,
  },
});
