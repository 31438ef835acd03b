import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join, posix } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { COMPUTED, importsOf } from './tools/source-imports.ts';

/** Source text by path from the root of the package. */
type Sources = ReadonlyMap<string, string>;

/** daemon → protocols → shared ← web: which folders each may import from. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  shared: ['shared'],
  protocols: ['protocols', 'shared'],
  daemon: ['daemon', 'protocols', 'shared'],
  web: ['web', 'shared'],
};
const pureFolders = ['shared', 'protocols'];
const purePackages = ['zod'];

const root = join(import.meta.dirname, '..');
const sources: Sources = readSources();

describe('the folders', () => {
  it('hold what this test believes to read', () => {
    for (const folder of Object.keys(arrows)) {
      expect([...sources.keys()].filter((path) => folderOf(path) === folder).length, folder).toBeGreaterThan(
        2,
      );
    }
  });

  it('import along the arrows only', () => {
    expect(againstArrows(sources)).toEqual([]);
  });

  it('keep Node and the browser out of shared/ and protocols/', () => {
    expect(impureImports(sources)).toEqual([]);
    expect(unknownNames(sources)).toEqual([]);
  });

  it('keep Node out of web/', () => {
    expect(nodeInWeb(sources)).toEqual([]);
  });

  it('have no circle of imports', () => {
    expect(circles(sources)).toEqual([]);
  });

  it('hold no file of more than 400 lines', () => {
    const written = [...Object.keys(arrows), 'tests']
      .flatMap((folder) =>
        readdirSync(join(root, folder), { recursive: true }).map((path) => join(folder, String(path))),
      )
      .filter((path) => /\.(ts|tsx|js|css)$/.test(path));
    expect(written.length).toBeGreaterThan(sources.size);
    const lines = (path: string) => readFileSync(join(root, path), 'utf8').trimEnd().split('\n').length;
    expect(written.map((path) => [path, lines(path)]).filter(([, count]) => Number(count) > 400)).toEqual([]);
  });
});

describe('the check itself', () => {
  const planted = (path: string, text: string): Sources => new Map([...sources, [path, text]]);

  it.each([
    ['shared/bad.ts', "import '../protocols/decode.ts';"],
    ['shared/bad.ts', "import type { A } from '../web/app.tsx';"],
    ['protocols/bad.ts', "export { a } from '../daemon/main.ts';"],
    ['web/bad.ts', "const a = await import('../daemon/main.ts');"],
    ['web/bad.tsx', "let a: import('../protocols/decode.ts').A;"],
    ['daemon/bad.ts', "import '../web/app.tsx';"],
    ['daemon/bad.ts', "import '../tests/tools/source-imports.ts';"],
  ])('finds an import against the arrows: %s %s', (path, text) => {
    expect(againstArrows(planted(path, text))).toHaveLength(1);
  });

  it.each([
    ['shared/bad.ts', "import { readFile } from 'node:fs/promises';"],
    ['shared/bad.ts', "import fs = require('fs');"],
    ['protocols/bad.ts', "import type { Socket } from 'net';"],
    ['protocols/bad.ts', "import ws from 'ws';"],
    ['shared/bad.ts', 'const name = String(1); await import(name);'],
  ])('finds an impure import: %s %s', (path, text) => {
    expect(impureImports(planted(path, text))).toHaveLength(1);
  });

  it('finds names of Node and of the browser, and lets what is declared in the file be called so', () => {
    const bad = [
      'process.exitCode = 1;',
      'export const bytes = Buffer.alloc(1);',
      'document.title = "";',
      'window.alert("");',
      'await fetch("x");',
      'export const now = performance.now();',
      'console.log(1);',
      'setTimeout(() => {}, 1);',
      'globalThis.process.exit();',
      'export const here = import.meta.dirname;',
      'export type Element = HTMLElement;',
      'export const text = new TextDecoder();',
    ];
    // With zod, so that no package quietly brings the types of Node along.
    const before = "import { z } from 'zod';\nexport const schema = z.string();\n";
    const files = bad.map((text, k): [string, string] => [`shared/bad-${k}.ts`, `${before}${text}\n`]);
    const good = 'export const read = (document: string, process: number) => document.slice(process);\n';
    const found = unknownNames(new Map([...files, ['shared/good.ts', good]]));
    const places = found.map((line) => line.slice(0, line.indexOf(':')));
    expect([...new Set(places)].sort()).toEqual(files.map(([path]) => path).sort());
  });

  it('finds node in web/', () => {
    expect(nodeInWeb(planted('web/bad.ts', "import 'fs';"))).toHaveLength(1);
  });

  it('finds a circle', () => {
    const circle = new Map([
      ['shared/a.ts', "import './b.ts';"],
      ['shared/b.ts', "import type { C } from './deep/c.ts';"],
      ['shared/deep/c.ts', "export * from '../a.ts';"],
    ]);
    expect(circles(circle)).toEqual(['shared/a.ts → shared/b.ts → shared/deep/c.ts → shared/a.ts']);
  });
});

function readSources(): Sources {
  const found = ts.sys.readDirectory(root, ['.ts', '.tsx'], [], Object.keys(arrows));
  const paths = found.map((path) => posix.relative(root, path)).filter((path) => !/\.test\.tsx?$/.test(path));
  return new Map(paths.sort().map((path) => [path, readFileSync(join(root, path), 'utf8')]));
}

function folderOf(path: string): string {
  return path.slice(0, path.indexOf('/'));
}

interface Edge {
  readonly from: string;
  readonly specifier: string;
  /** Path from the root of the package; null for a package or a module of Node. */
  readonly to: string | null;
}

function edgesOf(from: string, text: string): Edge[] {
  return importsOf(from, text).map((specifier) => {
    const relative = specifier.startsWith('.');
    return { from, specifier, to: relative ? posix.join(posix.dirname(from), specifier) : null };
  });
}

function edges(of: Sources): Edge[] {
  return [...of].flatMap(([from, text]) => edgesOf(from, text));
}

function againstArrows(of: Sources): string[] {
  return edges(of)
    .filter(({ from, to }) => to?.includes('/') && !arrows[folderOf(from)]!.includes(folderOf(to)))
    .map(tell);
}

function impureImports(of: Sources): string[] {
  return edges(of)
    .filter(({ from, to }) => to === null && pureFolders.includes(folderOf(from)))
    .filter(({ specifier }) => !purePackages.includes(specifier))
    .map(tell);
}

function nodeInWeb(of: Sources): string[] {
  const isNode = (specifier: string) => specifier.startsWith('node:') || builtinModules.includes(specifier);
  return edges(of)
    .filter(
      ({ from, specifier }) => folderOf(from) === 'web' && (isNode(specifier) || specifier === COMPUTED),
    )
    .map(tell);
}

function tell({ from, specifier }: Edge): string {
  return `${from} imports ${specifier}`;
}

/**
 * What the compiler cannot find when it knows the bare language and nothing else. Stronger than a list of
 * forbidden names, and it does not mistake a parameter called `document` for the browser's.
 */
function unknownNames(of: Sources): string[] {
  const pure = [...of].filter(([path]) => pureFolders.includes(folderOf(path)));
  const planted = new Map(pure.map(([path, text]) => [join(root, path), text]));
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2023,
    lib: ['lib.es2023.d.ts'],
    types: [],
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    strict: true,
    allowImportingTsExtensions: true,
    resolveJsonModule: true,
    skipLibCheck: true,
    noEmit: true,
  };
  const host = ts.createCompilerHost(options);
  const { readFile, fileExists, getSourceFile } = host;
  host.readFile = (path) => planted.get(path) ?? readFile(path);
  host.fileExists = (path) => planted.has(path) || fileExists(path);
  host.getSourceFile = (path, version, ...rest) => {
    const text = planted.get(path);
    return text === undefined
      ? getSourceFile(path, version, ...rest)
      : ts.createSourceFile(path, text, version);
  };
  const program = ts.createProgram([...planted.keys()], options, host);
  return ts.getPreEmitDiagnostics(program).map(({ file, messageText }) => {
    const where = file ? posix.relative(root, file.fileName) : 'options';
    return `${where}: ${ts.flattenDiagnosticMessageText(messageText, ' ')}`;
  });
}

/** Every circle of imports, types too, named once by its first file in the order of the alphabet. */
function circles(of: Sources): string[] {
  const next = new Map(
    [...of].map(([from, text]) => [from, edgesOf(from, text).flatMap(({ to }) => to ?? [])]),
  );
  const done = new Set<string>();
  const found: string[] = [];
  const walk = (path: string, trail: readonly string[]): void => {
    const start = trail.indexOf(path);
    if (start >= 0) found.push([...trail.slice(start), path].join(' → '));
    if (start >= 0 || done.has(path)) return;
    for (const to of next.get(path) ?? []) walk(to, [...trail, path]);
    done.add(path);
  };
  for (const path of [...next.keys()].sort()) walk(path, []);
  return found;
}
