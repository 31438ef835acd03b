import { z } from 'zod';
import { isWayscribeError } from '../../shared/errors.ts';
import {
  type EventOf,
  type Header,
  placementSchema,
  type SessionEvent,
  steadinessSchema,
  takenBySchema,
} from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { readingUnitSchema } from '../../shared/session/setup.ts';
import { resultSchema } from '../../shared/sheet/result.ts';

/** What every message begins with. */
const head = {
  wayscribe: z.literal(1).describe('version of these messages'),
  id: z.string().describe('the same for the same message, for ever: whoever gets it twice drops the second'),
  bench: z.string(),
  recording: z.string().describe('id of the recording, the name of its file'),
  seq: z.number().int().describe('number of the event in the recording'),
  t: z.number().describe('when it happened, ms since 1970'),
  part: z.string(),
  surface: z.string(),
  round: z.string(),
};

const publishedTakeSchema = z.object({
  ...head,
  place: placementSchema,
  from: z.string().describe('name of the instrument'),
  value: z.number().describe('as the instrument reads, in graduations of that unit'),
  unit: readingUnitSchema,
  graduation: z.number(),
  spread: z.number().nullable().describe('standard deviation of the readings used; null when typed'),
  count: z.number().int().describe('how many readings were averaged'),
  by: takenBySchema,
  steadiness: steadinessSchema.nullable(),
  replaces: z.number().int().optional().describe('seq of the take that this one repeats'),
});

const publishedVoidSchema = z.object({
  ...head,
  take: z.number().int().describe('seq of the take that does not count any more'),
  reason: z.string(),
});

const publishedResultSchema = z.object({
  ...head,
  result: resultSchema.nullable().describe('as of `wayscribe reduce --json`; null when the takes tell none'),
  why: z.string().optional().describe('why there is no result'),
});

/** What goes to the broker, by the last part of its topic. */
export const publishedSchemas = {
  take: publishedTakeSchema,
  void: publishedVoidSchema,
  result: publishedResultSchema,
};

type PayloadOf<K extends keyof typeof publishedSchemas> = z.infer<(typeof publishedSchemas)[K]>;

/** One message, with the last part of its topic. */
export type Published = {
  [K in keyof typeof publishedSchemas]: { readonly kind: K; readonly payload: PayloadOf<K> };
}[keyof typeof publishedSchemas];

type Told = EventOf<'take' | 'void' | 'end'>;

/** Whether an event is published: takes, takings back, and with the end of a survey its result. */
export function isTold(event: SessionEvent): event is Told {
  return event.type === 'take' || event.type === 'void' || event.type === 'end';
}

/** The message about a take or a taking back. A pure function of the record: the same event gives the same bytes. */
export function toldOf(bench: string, header: Header, event: EventOf<'take' | 'void'>): Published {
  if (event.type === 'void') {
    const { take, reason } = event;
    return { kind: 'void', payload: { ...headOf(bench, header, event), take, reason } };
  }
  const { instrument } = header.setup;
  const { place, from, value, spread, count, by, steadiness, replaces } = event;
  const payload: PayloadOf<'take'> = {
    ...headOf(bench, header, event),
    place,
    from,
    value,
    unit: instrument.unit,
    graduation: instrument.graduation,
    spread,
    count,
    by,
    steadiness,
    ...(replaces !== undefined && { replaces }),
  };
  return { kind: 'take', payload };
}

/** The message about the result of a survey as it stood at its end. `events` may go on behind that. */
export function resultTold(
  bench: string,
  header: Header,
  end: EventOf<'end'>,
  events: readonly SessionEvent[],
): Published {
  const session = fold(
    header,
    events.filter(({ seq }) => seq <= end.seq),
  );
  const payload = (rest: Pick<PayloadOf<'result'>, 'result' | 'why'>): Published => ({
    kind: 'result',
    payload: { ...headOf(bench, header, end), ...rest },
  });
  try {
    return payload({ result: resultOf(session) });
  } catch (error) {
    if (!isWayscribeError(error)) throw error;
    return payload({ result: null, why: error.message });
  }
}

function headOf(bench: string, { id: recording, t: begun, setup }: Header, { seq, t }: Told) {
  const { part, surface, round } = setup;
  // Two benches may have a recording of one name, and one bench a second one after the first was put away.
  const id = `${bench}/${recording}/${begun}/${seq}`;
  return { wayscribe: 1 as const, id, bench, recording, seq, t, part, surface, round };
}
