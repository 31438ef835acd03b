import { execFile } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { beforeEach, describe, expect, test } from 'vitest';
import { ownLaunch } from '../daemon/service/launch.ts';
import { serviceFor } from '../daemon/service/service.ts';
import { testFolder } from './tools/test-folder.ts';

const run = promisify(execFile);
const program = realpathSync('dist/wayscribe.js');

let folder = '';
const log = () => readFileSync(join(folder, 'log'), 'utf8').trimEnd().split('\n');
const unit = () => join(folder, 'systemd', 'user', 'wayscribe.service');

/** Stands in for a command of the system: writes down how it was called, and ends with a status. */
function standIn(name: string, status = 0): void {
  const path = join(folder, name);
  writeFileSync(path, `#!/bin/sh\necho "${name} $*" >> "${folder}/log"\nexit ${status}\n`);
  chmodSync(path, 0o755);
}

function wayscribe(...words: string[]) {
  const env = { ...process.env, PATH: `${folder}:${process.env.PATH}`, XDG_CONFIG_HOME: folder };
  return run(process.execPath, ['dist/wayscribe.js', 'service', ...words], { env });
}

describe.runIf(process.platform === 'linux')('a service of systemd', () => {
  beforeEach(() => {
    folder = testFolder();
    standIn('systemctl');
    standIn('loginctl');
  });

  test('is written, started, told of and taken away', async () => {
    expect(await wayscribe('status').catch((error) => error)).toMatchObject({
      code: 1,
      stdout: 'There is no service: wayscribe service install.\n',
    });

    await wayscribe('install');
    expect(readFileSync(unit(), 'utf8')).toContain(`ExecStart="${process.execPath}" "${program}" "serve"`);
    expect(log().slice(0, 3)).toEqual([
      'systemctl --user daemon-reload',
      'systemctl --user enable wayscribe',
      'systemctl --user restart wayscribe',
    ]);
    expect(log()[3]).toMatch(/^loginctl enable-linger \w+/);
    expect((await wayscribe('status')).stdout).toContain('is there, and it runs');

    await wayscribe('remove');
    expect(log().at(-1)).toBe('systemctl --user disable --now wayscribe');
    expect(existsSync(unit())).toBe(false);
    expect((await wayscribe('remove')).stdout).toBe('There is no such service.\n');
  });

  test('that another program is started by is told of', async () => {
    await wayscribe('install');
    writeFileSync(unit(), readFileSync(unit(), 'utf8').replace(program, '/old/wayscribe.js'));
    expect((await wayscribe('status')).stdout).toContain('another program or version');
  });

  test('says what is lost when it can only start with the person', async () => {
    standIn('loginctl', 1);
    expect((await wayscribe('install')).stdout).toContain('starts when you log in, not with the machine');
  });

  test('that the system refuses ends in one line that says which command', async () => {
    standIn('systemctl', 3);
    const refused = await wayscribe('install').catch((error) => error);
    expect(refused.code).toBe(1);
    expect(refused.stderr).toMatch(/^systemctl --user daemon-reload: ended with 3; .+\n$/);
  });
});

describe('what is written', () => {
  const launch = {
    command: ['/opt/node', '/home/a b/50%/$x/"q".js', 'serve'],
    variables: { WAYSCRIBE_SETTINGS: '/home/a & b/s.json' },
    home: '/home/a',
    user: 'a',
    uid: 1000,
  } as const;

  // systemd.service(5): per cent and dollar signs are doubled, quotes are escaped.
  test('for systemd keeps odd paths', () => {
    expect(serviceFor('linux', launch)!.text).toContain(
      'ExecStart="/opt/node" "/home/a b/50%%/$$x/\\"q\\".js" "serve"',
    );
  });

  test.runIf(existsSync('/usr/bin/systemd-analyze'))('for systemd is sound to systemd itself', async () => {
    const path = join(testFolder(), 'wayscribe.service');
    const command = [process.execPath, program, 'serve'] as const;
    writeFileSync(path, serviceFor('linux', { ...launch, command: [...command] })!.text);
    const { stdout, stderr } = await run('systemd-analyze', ['--user', 'verify', path]).catch(
      (error) => error,
    );
    expect(`${stdout}${stderr}`).not.toMatch(/wayscribe\.service/);
  });

  test.each(['darwin', 'win32'] as const)(
    'for %s is XML that keeps odd paths, and says it is untried',
    (platform) => {
      const { text, tested } = serviceFor(platform, launch)!;
      expect(text).toContain('/home/a b/50%/$x/&quot;q&quot;.js');
      expect(text).not.toMatch(/&(?!amp;|lt;|gt;|quot;)/);
      expect(tested).toBe(false);
    },
  );

  test('is nothing for a system that is not known', () => {
    expect(serviceFor('aix', launch)).toBeNull();
  });
});

test('a program that is here only for a while is not made a service', () => {
  const kept = process.argv[1]!;
  const path = join(testFolder(), '_npx');
  // realpath needs a file to be there.
  const file = join(path, 'wayscribe.js');
  mkdirSync(path);
  writeFileSync(file, '');
  try {
    process.argv[1] = file;
    expect(() => ownLaunch({})).toThrow(/only for a while/);
  } finally {
    process.argv[1] = kept;
  }
});
