import type { BenchState, BenchStream, Live } from '../../../shared/messages.ts';
import { unreadWords } from '../../state/needle.ts';
import type { PageState } from '../../state/page-state.ts';
import { say } from '../../words/say.ts';

/** Everything on the bench that can be measured with. */
export function streamsOf(bench: BenchState | null): readonly BenchStream[] {
  return bench?.ports.flatMap(({ streams }) => streams) ?? [];
}

/** What a stream is called among others: by its port, and by its channel where one port has several. */
export function streamName(
  { port, channel }: BenchStream,
  all: readonly BenchStream[],
  labelOf: (port: string) => string,
): string {
  const several = all.filter((other) => other.port === port).length > 1;
  return several ? `${labelOf(port)}, ${channel}` : labelOf(port);
}

/** The needle of a stream, while it can be believed. */
export function liveOf(state: PageState, stream: BenchStream | null): Live | undefined {
  return stream && staleOf(state, stream) === null ? state.needles[stream.id] : undefined;
}

/** Why the needle of a stream is not live, in words; null when it is. */
export function staleOf({ bench, link }: PageState, { port }: BenchStream): string | null {
  const heard = bench?.ports.find((one) => one.port === port);
  if (link === 'lost') return say('connection lost');
  if (!heard) return say('not listened to');
  if (heard.link !== 'open') return heard.link === 'absent' ? say('cable is out') : say('port is not open');
  if (heard.silent) return say(heard.unread ? unreadWords : 'silent');
  return null;
}
