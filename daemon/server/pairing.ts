import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { PairedDevice } from '../../shared/api.ts';
import type { Stamp } from '../../shared/session/events.ts';
import { stampNow } from '../ports/port.ts';
import { replaceFile } from '../replace-file.ts';
import { Turns } from '../session/turns.ts';

const inviteLastsMs = 10 * 60_000;
const secretBytes = 24;
const mostDevices = 32;

const fileSchema = z.object({
  paired: z.literal(1),
  devices: z
    .array(
      z.object({
        id: z.string().max(40),
        name: z.string().max(200),
        since: z.number(),
        secretSha256: z.string().regex(/^[0-9a-f]{64}$/),
      }),
    )
    .max(mostDevices),
});
type Device = z.infer<typeof fileSchema>['devices'][number];

/**
 * Devices in the network that may control: each was shown a token once, gave it back within ten minutes, and got a
 * secret for it. Of tokens and secrets only digests are kept. The file `paired.json` in the folder of the recordings
 * outlives a restart; one that can't be read means that nobody is paired.
 */
export class Pairing {
  readonly #path: string;
  readonly #now: () => Stamp;
  readonly #turns = new Turns();
  #devices: readonly Device[];
  /** The invitation that is open. */
  #invited: { readonly tokenSha256: string; readonly untilM: number } | null = null;

  private constructor(path: string, devices: readonly Device[], now: () => Stamp) {
    this.#path = path;
    this.#devices = devices;
    this.#now = now;
  }

  static async open(folder: string, now: () => Stamp = stampNow): Promise<Pairing> {
    const path = join(folder, 'paired.json');
    const parsed = fileSchema.safeParse(await readJson(path));
    return new Pairing(path, parsed.success ? parsed.data.devices : [], now);
  }

  get devices(): PairedDevice[] {
    return this.#devices.map(({ id, name, since }) => ({ id, name, since }));
  }

  /** A new token for one device. It takes the place of one that nobody has used. */
  invite(): { token: string; until: number } {
    const token = randomBytes(secretBytes).toString('base64url');
    const { t, m } = this.#now();
    // By the clock that nobody can set back.
    this.#invited = { tokenSha256: digest(token), untilM: m + inviteLastsMs };
    return { token, until: t + inviteLastsMs };
  }

  /**
   * Pairs the device that shows a token; the token is spent.
   * @returns its secret, or null when the token is unknown, spent or too old, or too many are paired
   * @throws WayscribeError `recording.full` or `recording.unwritable` when that can't be remembered
   */
  async redeem(token: string, name: string): Promise<string | null> {
    const invited = this.#invited;
    if (invited === null || this.#now().m > invited.untilM || !same(digest(token), invited.tokenSha256))
      return null;
    this.#invited = null;
    return this.#turns.take(async () => {
      if (this.#devices.length >= mostDevices) return null;
      const id = randomBytes(6).toString('base64url');
      const secret = randomBytes(secretBytes).toString('base64url');
      const device = { id, name: name.slice(0, 200), since: this.#now().t, secretSha256: digest(secret) };
      await this.#keep([...this.#devices, device]);
      return `${id}.${secret}`;
    });
  }

  /** Who shows this secret; null when nobody that is paired. */
  find(shown: string): string | null {
    const [id, secret = ''] = shown.split('.');
    const device = this.#devices.find((one) => one.id === id);
    return device && same(digest(secret), device.secretSha256) ? device.id : null;
  }

  /** Takes the right to control from a device. Returns whether there was such a device. */
  async revoke(id: string): Promise<boolean> {
    return this.#turns.take(async () => {
      const left = this.#devices.filter((device) => device.id !== id);
      if (left.length === this.#devices.length) return false;
      // At once, whether or not the disk will have it.
      this.#devices = left;
      await this.#keep(left);
      return true;
    });
  }

  async #keep(devices: readonly Device[]): Promise<void> {
    await replaceFile(this.#path, `${JSON.stringify({ paired: 1, devices }, null, 2)}\n`, 0o600);
    this.#devices = devices;
  }
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

function same(a: string, b: string): boolean {
  return timingSafeEqual(Buffer.from(a), Buffer.from(b));
}

async function readJson(path: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(path, 'utf8'));
  } catch {
    return null;
  }
}
