import type { BenchPort } from '../../../shared/messages.ts';
import { say } from '../../words/say.ts';
import { RawBytes } from './raw-bytes.tsx';

/** Bytes that the chosen profile can't read: what they are, and what to try. */
export function Unread({ port }: { port: BenchPort }) {
  return (
    <section class="unread" data-testid="unread">
      <p>{say('Bytes come that {profile} does not read.', { profile: port.profile ?? '' })}</p>
      <RawBytes hex={port.hex} />
      {port.hint && <p>{port.hint}</p>}
      <p>{whatToTry(port)}</p>
    </section>
  );
}

/** What to try where bytes come that nothing reads: speed, parity, another profile. */
export function whatToTry({ profile, line }: BenchPort): string {
  return profile === undefined
    ? say(
        'See on the instrument how its line is set: speed, parity, data bits. Set it as one of the profiles says, or write a profile for it: the folder of your own profiles needs only one file more.',
      )
    : say(
        'The line is set to {line}. Set the instrument to the same speed and parity, or go back and choose another profile.',
        { line },
      );
}
