// Builds dist/: the program (wayscribe.js) and the page (web/). Runs by itself on `npm install`.

import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { chmod, cp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';

const PROGRAM = 'dist/wayscribe.js';
const PAGE = 'dist/web';

async function buildProgram(esbuild) {
  await rm('dist', { recursive: true, force: true });
  await esbuild.build({
    entryPoints: { wayscribe: 'daemon/main.ts' },
    outdir: 'dist',
    chunkNames: 'part-[hash]',
    platform: 'node',
    target: 'node20.20',
    format: 'esm',
    bundle: true,
    // A command loads only what it needs: `reduce` never touches the serial port library.
    splitting: true,
    packages: 'external',
    logLevel: 'warning',
  });
  await chmod(PROGRAM, 0o755);
}

async function buildPage({ vite, esbuild }) {
  if (!existsSync('web/index.html')) {
    console.log('The page is not built: there is no web/index.html.');
    return;
  }
  await vite.build({ logLevel: 'warn' });
  await compressPage();
  // The lessons lie beside the page, so that whatever serves it serves them. They are opened one at a time, as they are.
  await cp('recordings/lessons', 'dist/web/lessons', { recursive: true });
  await buildServiceWorker(esbuild);
}

/** The service worker knows every file of the page, and is another one when any of them is. */
async function buildServiceWorker(esbuild) {
  const paths = (await filesOf(PAGE)).filter((path) => !/\.(br|gz)$/.test(path));
  const digest = createHash('sha256');
  for (const path of paths.sort()) digest.update(path).update(await readFile(path));
  const files = paths.map((path) => path.slice(PAGE.length + 1).replaceAll('\\', '/'));
  await esbuild.build({
    entryPoints: ['web/offline/service-worker.ts'],
    outfile: join(PAGE, 'service-worker.js'),
    bundle: true,
    define: { FILES: JSON.stringify(files), DIGEST: JSON.stringify(digest.digest('hex').slice(0, 16)) },
    target: 'es2022',
    logLevel: 'warning',
  });
}

/** Beside every file of the page that gets smaller by it lie its compressed forms, so that serving them costs nothing. */
async function compressPage() {
  for (const path of await filesOf(PAGE)) {
    const whole = await readFile(path);
    const forms = { br: brotliCompressSync(whole), gz: gzipSync(whole, { level: 9 }) };
    for (const [end, bytes] of Object.entries(forms)) {
      if (bytes.length < 0.9 * whole.length) await writeFile(`${path}.${end}`, bytes);
    }
  }
}

/** Paths of all files in a folder and its folders. */
async function filesOf(folder) {
  const found = await readdir(folder, { recursive: true, withFileTypes: true });
  return found.filter((entry) => entry.isFile()).map(({ parentPath, name }) => join(parentPath, name));
}

/** The tools that build, or null when this is an install without development packages. */
async function loadTools() {
  try {
    return { esbuild: await import('esbuild'), vite: await import('vite') };
  } catch (error) {
    if (error.code === 'ERR_MODULE_NOT_FOUND') return null;
    throw error;
  }
}

process.chdir(import.meta.dirname);
const tools = await loadTools();
if (tools) {
  await buildProgram(tools.esbuild);
  await buildPage(tools);
} else if (existsSync(PROGRAM)) {
  console.log('The program in dist/ is kept as it is: building it needs the development packages.');
} else {
  console.error('There is no dist/ yet, and building it needs the development packages: run npm install.');
  process.exitCode = 1;
}
