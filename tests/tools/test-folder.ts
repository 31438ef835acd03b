import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, onTestFinished } from 'vitest';

/** A folder that goes away with the test. */
export function testFolder(): string {
  const folder = made();
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A folder that goes away with all tests of the file. */
export function sharedFolder(): string {
  const folder = made();
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

function made(): string {
  return mkdtempSync(join(tmpdir(), 'wayscribe-test-'));
}
