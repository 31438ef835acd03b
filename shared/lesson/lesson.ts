import { z } from 'zod';
import { WayscribeError } from '../errors.ts';
import type { Header } from '../session/events.ts';
import { explainIssue, placeOf } from '../sheet/explain.ts';
import { planFor } from '../survey/plan-for.ts';

/**
 * A lesson is a small document beside a recording: notes and stop points pinned to its moments. It never changes the
 * recording, and the recording knows nothing of it.
 */

const text = z.string().trim().min(1).max(2000);
const at = z.int().min(0).describe('number of the last event that has happened at this moment');

const arrow = z.strictObject({
  to: z.string().min(1).max(20).describe('station that the arrow points to'),
  says: z.string().trim().max(60).default('').describe('a few words at its tail'),
});

export const answers = ['take', 'wait', 'wipe', 'turn'] as const;
export const answerSchema = z.enum(answers);
export type Answer = z.infer<typeof answerSchema>;

const noteMoment = z.strictObject({
  is: z.literal('note'),
  at,
  text: text.describe('what is to be understood at this moment'),
  arrows: z.array(arrow).max(8).default([]).describe('where to look on the drawing'),
});

const stopMoment = z.strictObject({
  is: z.literal('stop'),
  at,
  text: text.describe('what is asked; what follows in the recording stays hidden until it is answered'),
  arrows: z.array(arrow).max(8).default([]),
  right: answerSchema.describe('the answer that a good hand would give'),
  because: text.describe('what is said once it was answered'),
});

export const lessonSchema = z.strictObject({
  lesson: z.literal(1).describe('version of this format'),
  language: z
    .string()
    .regex(/^[a-z]{2,3}$/)
    .optional()
    .describe('language that it is written in; en when left out'),
  title: z.string().trim().min(1).max(120),
  recording: z
    .string()
    .regex(/^[a-z0-9][a-z0-9-]{0,79}$/)
    .describe('id of the recording it belongs to'),
  about: text.describe('what happened, in one or two sentences'),
  lookFor: text.describe('what to look for'),
  seen: text.describe('what mathematics can see'),
  unseen: text.describe('what it cannot see, and who can'),
  names: z.enum(['shown', 'left out']).default('shown').describe('left out: nobody’s name is shown'),
  moments: z
    .array(z.discriminatedUnion('is', [noteMoment, stopMoment]))
    .max(200)
    .describe('in the order of the recording'),
});
/** What a lesson is written in, as browsers name languages. */
export function languageOf({ language }: Lesson): string {
  return language ?? 'en';
}

/** A lesson with every default filled in. */
export type Lesson = z.infer<typeof lessonSchema>;
export type LessonInput = z.input<typeof lessonSchema>;
export type Moment = Lesson['moments'][number];

/** The lessons of a folder, in the order in which they are best learnt. */
export const lessonListSchema = z.array(
  z.strictObject({ id: z.string(), title: z.string(), about: z.string(), takes: z.int() }),
);
export type LessonList = z.infer<typeof lessonListSchema>;

/**
 * The lesson that a text holds.
 * @throws WayscribeError `lesson.invalid` that names the place in the document
 */
export function readLesson(json: string): Lesson {
  let document: unknown;
  try {
    document = JSON.parse(json);
  } catch {
    throw new WayscribeError('lesson.invalid', 'lesson', 'is not JSON', 'open the file of a lesson');
  }
  const parsed = lessonSchema.safeParse(document, { reportInput: true });
  if (!parsed.success) {
    const { place, detail, remedy } = explainIssue(parsed.error.issues[0]!);
    throw new WayscribeError('lesson.invalid', place || 'lesson', detail, remedy);
  }
  parsed.data.moments.forEach((moment, k, all) => {
    if (k > 0 && moment.at < all[k - 1]!.at) {
      throw new WayscribeError(
        'lesson.invalid',
        placeOf(['moments', k, 'at']),
        `${moment.at} comes before the moment above it`,
        'write the moments in the order of the recording',
      );
    }
  });
  return parsed.data;
}

/**
 * Proves that a lesson fits the recording it is laid beside.
 * @throws WayscribeError `lesson.invalid` that names the place in the document
 */
export function proveLesson(lesson: Lesson, header: Header, lastSeq: number): void {
  if (lesson.recording !== header.id) {
    throw new WayscribeError(
      'lesson.invalid',
      'recording',
      `belongs to ${lesson.recording}, and this recording is ${header.id}`,
      'open the recording that the lesson was written for',
    );
  }
  const known = new Set(planFor(header.setup).stations.map(({ name }) => name));
  lesson.moments.forEach((moment, k) => {
    if (moment.at > lastSeq) {
      throw new WayscribeError(
        'lesson.invalid',
        placeOf(['moments', k, 'at']),
        `there is no event ${moment.at}`,
        `the recording ends with event ${lastSeq}`,
      );
    }
    moment.arrows.forEach(({ to }, n) => {
      if (!known.has(to)) {
        throw new WayscribeError(
          'lesson.invalid',
          placeOf(['moments', k, 'arrows', n, 'to']),
          `${to} is no station of this survey`,
          `write one of ${[...known].slice(0, 6).join(', ')} …`,
        );
      }
    });
  });
}
