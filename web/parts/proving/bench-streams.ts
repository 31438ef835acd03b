import type { BenchState, BenchStream } from '../../../shared/messages.ts';

/** Everything on the bench that can be measured with. */
export function streamsOf(bench: BenchState | null): readonly BenchStream[] {
  return bench?.ports.flatMap(({ streams }) => streams) ?? [];
}

/** What a stream is called among others: by its port, and by its channel where one port has several. */
export function streamName({ port, channel }: BenchStream, all: readonly BenchStream[]): string {
  return all.filter((other) => other.port === port).length > 1 ? `${port}, ${channel}` : port;
}
