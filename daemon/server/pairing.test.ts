import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { Pairing } from './pairing.ts';

test('a token is good for ten minutes, whatever is done to the clock on the wall', async () => {
  let [t, m] = [1_700_000_000_000, 5000];
  const pairing = await Pairing.open(testFolder(), () => ({ t, m }));
  const late = pairing.invite().token;
  m += 10 * 60_000 + 1;
  t -= 3600_000;
  expect(await pairing.redeem(late, 'tablet')).toBeNull();
  const early = pairing.invite().token;
  m += 10 * 60_000 - 1;
  t += 3600_000;
  expect(await pairing.redeem(early, 'tablet')).not.toBeNull();
});

test('a newer token takes the place of one that nobody has used', async () => {
  const pairing = await Pairing.open(testFolder());
  const { token } = pairing.invite();
  pairing.invite();
  expect(await pairing.redeem(token, 'tablet')).toBeNull();
});

test('one token pairs one device, however many show it at once', async () => {
  const pairing = await Pairing.open(testFolder());
  const { token } = pairing.invite();
  const secrets = await Promise.all(Array.from({ length: 20 }, () => pairing.redeem(token, 'tablet')));
  expect(secrets.filter((secret) => secret !== null)).toHaveLength(1);
  expect(pairing.devices).toHaveLength(1);
});

test.each(['', '{', '[]', '{"paired":1,"devices":[{"id":"a"}]}', '{"paired":2,"devices":[]}'])(
  'nobody is paired by a file that says %j',
  async (text) => {
    const folder = testFolder();
    writeFileSync(join(folder, 'paired.json'), text);
    const pairing = await Pairing.open(folder);
    expect(pairing.devices).toEqual([]);
    expect(pairing.find('a.b')).toBeNull();
  },
);
