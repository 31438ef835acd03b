import { Command, InvalidArgumentError, Option } from 'commander';
import type { ChannelReading } from '../../protocols/decode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { Acquaintance } from '../instruments/acquaintance.ts';
import type { LineSettings } from '../ports/port.ts';
import { folderOption, homeFolder, profilesOption } from './options.ts';
import { stopSignal } from './serving.ts';

interface ListenOptions {
  readonly as?: string;
  readonly ask?: string;
  readonly speed?: number;
  readonly bits?: '7' | '8';
  readonly parity?: LineSettings['parity'];
  readonly stop?: '1' | '2';
  readonly seconds?: number;
  readonly folder: string;
  readonly profiles?: string;
}

const plainLine: LineSettings = { baudRate: 9600, dataBits: 8, parity: 'none', stopBits: 1 };

/** `wayscribe listen PORT`: what comes, and which profiles would understand it. It writes only with --ask. */
export function listenCommand(): Command {
  const number = (text: string) => {
    if (/^[1-9]\d{0,6}$/.test(text)) return Number(text);
    throw new InvalidArgumentError('It is a whole number from 1.');
  };
  return new Command('listen')
    .description('show the bytes that come from an instrument, and the profiles that understand them')
    .argument('<port>', 'port to listen on')
    .addOption(new Option('--as <profile>', 'set the line as this profile says'))
    .addOption(new Option('--ask <profile>', 'also send the request of this profile, at its rate'))
    .addOption(new Option('--speed <baud>', 'speed of the line (default: 9600)').argParser(number))
    .addOption(new Option('--bits <bits>', 'data bits (default: 8)').choices(['7', '8']))
    .addOption(new Option('--parity <kind>', 'parity (default: none)').choices(['none', 'even', 'odd']))
    .addOption(new Option('--stop <bits>', 'stop bits (default: 1)').choices(['1', '2']))
    .addOption(new Option('--seconds <number>', 'end by itself after this long').argParser(number))
    .addOption(folderOption(homeFolder))
    .addOption(profilesOption())
    .action(listen);
}

async function listen(path: string, options: ListenOptions): Promise<void> {
  const { loadProfiles, profilesFolder } = await import('../instruments/own-profiles.ts');
  const { Acquaintance } = await import('../instruments/acquaintance.ts');
  const { realPort } = await import('../ports/real.ts');
  const { stampNow } = await import('../ports/port.ts');
  const { bytesOf } = await import('../../protocols/bytes.ts');
  const { book } = await loadProfiles(profilesFolder(options));
  const asked = options.ask === undefined ? null : book.find(options.ask);
  const request = asked && requestOf(asked);
  const line = lineOf(options, asked ?? (options.as === undefined ? null : book.find(options.as)));
  const acquaintance = new Acquaintance(book.all, stampNow());
  const stopped = stopSignal();
  const over = new AbortController();
  const ended = new Promise<void>((resolve) => over.signal.addEventListener('abort', () => resolve()));

  const port = await realPort(path)
    .open(line, {
      data: (bytes, stamp) => {
        acquaintance.push(bytes, stamp);
        for (const row of rowsOf(bytes)) console.log(row);
      },
      closed: (error) => {
        if (error) console.log('The port is gone.');
        over.abort();
      },
    })
    .catch((error) => {
      throw notOpened(error);
    });
  console.log(`Listening to ${path} at ${settings(line)}. Ctrl-C ends it.`);
  const asking = request && setInterval(() => port.write(bytesOf(request.request)), request.everyMs);
  const timer = options.seconds && setTimeout(() => over.abort(), 1000 * options.seconds);
  await Promise.race([stopped, ended]);
  if (asking) clearInterval(asking);
  if (timer) clearTimeout(timer);
  await port.close();
  for (const row of outcome(acquaintance)) console.log(row);
}

/** A command that listens once waits for nothing, so it may promise no waiting. */
function notOpened(error: unknown): unknown {
  if (isWayscribeError(error, 'port.absent')) {
    const remedy = 'plug the cable in, or name one that `wayscribe ports` lists';
    return new WayscribeError(error.code, error.place, error.detail, remedy);
  }
  if (isWayscribeError(error, 'port.busy')) {
    return new WayscribeError(error.code, error.place, error.detail, 'close that program, then listen again');
  }
  return error;
}

function requestOf({ id, talk }: Profile): { request: string; everyMs: number } {
  if (talk.kind === 'on-request') return talk;
  throw new WayscribeError(
    'command.invalid',
    '--ask',
    `${id} is not asked: it speaks by itself`,
    'leave --ask out',
  );
}

function lineOf({ speed, bits, parity, stop }: ListenOptions, profile: Profile | null): LineSettings {
  return {
    ...(profile?.line ?? plainLine),
    ...(speed !== undefined && { baudRate: speed }),
    ...(bits && { dataBits: bits === '7' ? 7 : 8 }),
    ...(parity && { parity }),
    ...(stop && { stopBits: stop === '1' ? 1 : 2 }),
  };
}

function settings({ baudRate, dataBits, parity, stopBits }: LineSettings): string {
  return `${baudRate} baud, ${dataBits} data bits, ${parity === 'none' ? 'no' : parity} parity, ${stopBits} stop ${stopBits === 1 ? 'bit' : 'bits'}`;
}

/** Bytes as hex and as text, sixteen a row. */
function rowsOf(bytes: Buffer): string[] {
  const rows: string[] = [];
  for (let at = 0; at < bytes.length; at += 16) {
    const row = bytes.subarray(at, at + 16);
    const hex = [...row].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
    rows.push(`${hex.padEnd(48)} ${row.toString('latin1').replace(/[^ -~]/g, '.')}`);
  }
  return rows;
}

function outcome({ fits, hint }: Acquaintance): string[] {
  if (hint !== null) return ['', `No frame of any profile came. ${hint}`];
  return [
    '',
    ...fits.map(({ profile, frames, discarded, last }) => {
      const others = discarded > 0 ? `, ${discarded} pieces not` : '';
      return `${profile.id}: understood ${frames} frames${others}; the last reads ${(last ?? []).map((said) => told(profile, said)).join(', ')}`;
    }),
  ];
}

function told({ channels }: Profile, { channel, value, unit, state, decimals }: ChannelReading): string {
  const own = channels.find(({ name }) => name === channel);
  const named = unit ?? (own?.unitKnown ? own.unit : '');
  const number = value === null ? [] : [decimals === undefined ? value : value.toFixed(decimals), named];
  return [channel, ...number, state === 'ok' ? '' : `(${state})`].filter((word) => word !== '').join(' ');
}
