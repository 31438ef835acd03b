import { once } from 'node:events';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { type IncomingMessage, request } from 'node:http';
import { basename, join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { expect, onTestFinished, test } from 'vitest';
import { languageCodes } from '../web/words/languages/languages.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { testFolder } from './tools/test-folder.ts';

/** What is loaded of the page, in the form in which it is sent. */
const page = 'dist/web';
const files = readdirSync(page, { recursive: true })
  .map(String)
  .filter((name) => statSync(join(page, name)).isFile() && !name.startsWith('lessons'));
const whole = files.filter((name) => !/\.(br|gz)$/.test(name));
const sentBytes = (name: string) =>
  statSync(join(page, files.includes(`${name}.br`) ? `${name}.br` : name)).size;
const isLanguage = (name: string) => languageCodes.some((code) => basename(name).startsWith(`${code}-`));
/** The bytes as they are sent. */
async function raw(url: string, form: string) {
  const asked = request(url, { headers: { 'accept-encoding': form } }).end();
  const [answer] = (await once(asked, 'response')) as [IncomingMessage];
  return { status: answer.statusCode, headers: answer.headers, bytes: await buffer(answer) };
}
const sum = (names: readonly string[]) => names.reduce((all, name) => all + sentBytes(name), 0);

test('the whole page weighs at most 250 kB compressed, and each language but English at most 45 more', () => {
  const languages = whole.filter(isLanguage);
  const [ownKb, ...othersKb] = [
    sum(whole.filter((name) => !isLanguage(name))),
    ...languages.map(sentBytes),
  ].map((bytes) => bytes / 1000);
  console.log(`${ownKb} kB; languages: ${othersKb.join(', ')} kB`);
  expect(languages.length).toBe(languageCodes.length - 1);
  expect(ownKb).toBeLessThanOrEqual(250);
  for (const kb of othersKb) expect(kb).toBeLessThanOrEqual(45);
});

test.each([
  ['br', brotliDecompressSync],
  ['gzip', gunzipSync],
  ['identity', (bytes: Buffer) => bytes],
] as const)('a browser that takes %s gets each file so, as what it is', async (form, open) => {
  const daemon = await DaemonProcess.start('demo', '--folder', testFolder());
  onTestFinished(() => daemon.stop());
  for (const name of whole) {
    const { status, headers, bytes } = await raw(`${daemon.url}${name}`, form);
    expect(status).toBe(200);
    const was = headers['content-encoding'] ?? 'identity';
    const there = files.includes(`${name}.${form === 'gzip' ? 'gz' : form}`);
    expect(was, name).toBe(there ? form : 'identity');
    if (files.includes(`${name}.br`)) expect(headers.vary).toContain('Accept-Encoding');
    const type = (await raw(`${daemon.url}${name}`, 'identity')).headers['content-type'];
    expect(headers['content-type'], name).toBe(type);
    expect((there ? open(bytes) : bytes).equals(readFileSync(join(page, name))), name).toBe(true);
  }
});
