import { join } from 'node:path';
import type { Launch } from './launch.ts';

/** A service of one person on one kind of system: a file that says what runs, and the commands that make it so. */
export interface Service {
  readonly file: string;
  readonly text: string;
  readonly encoding: 'utf8' | 'utf16le';
  readonly start: readonly Step[];
  readonly stop: readonly Step[];
  /** Says whether it runs; its exit status is 0 when it does. */
  readonly ask: Step;
  /** False where nobody has tried it yet. */
  readonly tested: boolean;
}

/** A command of the system. */
export interface Step {
  readonly run: readonly [string, ...string[]];
  /** What is lost when it fails. Without this, nothing that follows makes sense. */
  readonly optional?: string;
}

const what = 'Wayscribe: reads levels and indicators, and keeps the record';
const name = 'wayscribe';

/** The service for that kind of system; null where it is not known how. `config` is the folder of a person's settings. */
export function serviceFor(
  platform: NodeJS.Platform,
  launch: Launch,
  config = join(launch.home, '.config'),
): Service | null {
  switch (platform) {
    case 'linux':
      return systemd(launch, config);
    case 'darwin':
      return launchd(launch);
    case 'win32':
      return windowsTask(launch);
    default:
      return null;
  }
}

function systemd({ command, variables, user }: Launch, config: string): Service {
  // systemd.service(5), "Command lines": quotes as in C, %% for a per cent sign, $$ for a dollar.
  const quoted = (text: string) => `"${text.replace(/[\\"]/g, '\\$&').replaceAll('%', '%%')}"`;
  const line = command.map((word) => quoted(word).replaceAll('$', '$$$$')).join(' ');
  const set = Object.entries(variables).map(([key, value]) => `Environment=${quoted(`${key}=${value}`)}`);
  const systemctl = (...words: string[]): Step => ({ run: ['systemctl', '--user', ...words] });
  return {
    file: join(config, 'systemd', 'user', `${name}.service`),
    text: `${[
      '[Unit]',
      `Description=${what}`,
      '',
      '[Service]',
      `ExecStart=${line}`,
      ...set,
      'Restart=always',
      'RestartSec=5',
      '# Wrong settings stay wrong however often it is tried.',
      'RestartPreventExitStatus=2',
      '',
      '[Install]',
      'WantedBy=default.target',
    ].join('\n')}\n`,
    encoding: 'utf8',
    start: [
      systemctl('daemon-reload'),
      systemctl('enable', name),
      systemctl('restart', name),
      {
        run: ['loginctl', 'enable-linger', user],
        optional: 'it starts when you log in, not with the machine',
      },
    ],
    stop: [systemctl('disable', '--now', name)],
    ask: systemctl('is-active', name),
    tested: true,
  };
}

function launchd({ command, variables, home, uid }: Launch): Service {
  const file = join(home, 'Library', 'LaunchAgents', `${name}.plist`);
  const string = (text: string) => `<string>${escaped(text)}</string>`;
  const set = Object.entries(variables).map(([key, value]) => `<key>${escaped(key)}</key>${string(value)}`);
  return {
    file,
    text: `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0">
<dict>
  <key>Label</key>${string(name)}
  <key>ProgramArguments</key>
  <array>${command.map(string).join('')}</array>
  <key>EnvironmentVariables</key>
  <dict>${set.join('')}</dict>
  <key>RunAtLoad</key><true/>
  <key>KeepAlive</key><true/>
</dict>
</plist>
`,
    encoding: 'utf8',
    start: [{ run: ['launchctl', 'bootstrap', `gui/${uid}`, file] }],
    stop: [{ run: ['launchctl', 'bootout', `gui/${uid}/${name}`] }],
    ask: { run: ['launchctl', 'print', `gui/${uid}/${name}`] },
    tested: false,
  };
}

function windowsTask({ command, home, user }: Launch): Service {
  const file = join(home, 'AppData', 'Local', name, 'task.xml');
  const [program, ...words] = command;
  const line = words.map((word) => `"${word}"`).join(' ');
  return {
    file,
    // The task scheduler reads its files in UTF-16 with a mark in front. Settings of its own a task can't have:
    // variables of the person hold.
    text: `\ufeff<?xml version="1.0" encoding="UTF-16"?>
<Task version="1.2" xmlns="http://schemas.microsoft.com/windows/2004/02/mit/task">
  <RegistrationInfo><Description>${escaped(what)}</Description></RegistrationInfo>
  <Triggers><LogonTrigger><UserId>${escaped(user)}</UserId></LogonTrigger></Triggers>
  <Principals><Principal id="person"><UserId>${escaped(user)}</UserId><LogonType>InteractiveToken</LogonType></Principal></Principals>
  <Settings>
    <DisallowStartIfOnBatteries>false</DisallowStartIfOnBatteries>
    <StopIfGoingOnBatteries>false</StopIfGoingOnBatteries>
    <ExecutionTimeLimit>PT0S</ExecutionTimeLimit>
    <RestartOnFailure><Interval>PT1M</Interval><Count>999</Count></RestartOnFailure>
  </Settings>
  <Actions Context="person"><Exec><Command>${escaped(program)}</Command><Arguments>${escaped(line)}</Arguments></Exec></Actions>
</Task>
`,
    encoding: 'utf16le',
    start: [
      { run: ['schtasks', '/Create', '/F', '/TN', name, '/XML', file] },
      { run: ['schtasks', '/Run', '/TN', name] },
    ],
    stop: [
      { run: ['schtasks', '/End', '/TN', name], optional: 'it did not run' },
      { run: ['schtasks', '/Delete', '/F', '/TN', name] },
    ],
    ask: { run: ['schtasks', '/Query', '/TN', name] },
    tested: false,
  };
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
