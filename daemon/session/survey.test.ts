import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { beforeEach, expect, test, vi } from 'vitest';
import { ProfileBook } from '../../protocols/book.ts';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { WayscribeError } from '../../shared/errors.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { fold } from '../../shared/session/fold.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { InstrumentStore } from '../proving/instrument-store.ts';
import { readRecording } from '../recording/reader.ts';
import { RecordingStore } from '../recording/store.ts';
import { verifyRecording } from '../recording/verify.ts';
import { RecordingWriter } from '../recording/writer.ts';
import { Stage } from './stage.ts';
import { Survey, type SurveyTools } from './survey.ts';

let tools: SurveyTools;
let id = '';
let path = '';

beforeEach(async () => {
  const folder = testFolder();
  const store = await RecordingStore.open(folder);
  tools = {
    store,
    program: 'p',
    demo: true,
    pace: 1,
    profiles: new ProfileBook([...shippedProfiles]),
    instruments: new InstrumentStore(folder),
    makePort: () => {
      throw new Error('no port is needed');
    },
  };
  const instrument = { name: 'L', source: 'typed', unit: 'um/m' };
  const survey = await Survey.start(setupSchema.parse({ ...demoSetups.way, instrument }), tools);
  id = survey.header.id;
  path = store.pathOf(id);
  for (const text of ['1', '2', '3']) await survey.keeper.obey({ do: 'type', text, again: false });
  await survey.close();
});

async function goOn(): Promise<Survey> {
  return Survey.resume(id, 'again', tools);
}
const valuesOf = (survey: Survey) => survey.keeper.session.takes.map(({ event }) => event.value);

test('a typed slip is asked back before it counts, and counts when it is sent again', async () => {
  const survey = await goOn();
  const type = (text: string, again = false) => survey.keeper.obey({ do: 'type', text, again });
  await expect(type('25')).rejects.toMatchObject({
    code: 'take.farOff',
    place: 'F3 – F4',
    detail: '25 lies far from what was read so far, 1 to 3',
    remedy: '3 would fit: see where its point stands, or send it again to take it as it is',
  });
  await expect(type('30000')).rejects.toMatchObject({
    detail: '30000 is more than a level on two feet can read',
  });
  expect(valuesOf(survey)).toEqual([1, 2, 3]);
  await type('25', true);
  await type('2.5', true);
  const sent = survey.keeper.session.takes.map(({ event }) => event.sentAgain ?? false);
  expect(sent).toEqual([false, false, false, true, false]);
  await survey.close();
  const { header, events } = await readRecording(path);
  expect(fold(header, events)).toEqual(survey.keeper.session);
});

test('goes on with what the file keeps, and with nothing that is cut off', async () => {
  writeFileSync(path, readFileSync(path, 'utf8').replace('"value":3', '"value":8'));
  const survey = await goOn();
  expect(valuesOf(survey)).toEqual([1, 2]);
  expect(survey.keeper.session.next?.at).toEqual(['F2', 'F3']);
  await survey.keeper.obey({ do: 'type', text: '4', again: false });
  await survey.close();
  const { events } = await readRecording(path);
  expect(events).toEqual(survey.kept);
  expect((await verifyRecording(path)).problems).toEqual([]);
});

/** What a power cut can leave of readings that were not synced: a hole, and the end of a line behind it. */
const lost = Buffer.concat([Buffer.alloc(700), Buffer.from(`,"value":12,"h":"${'0'.repeat(32)}"}\n`)]);

test('goes on after a hole at the end, which the list passes over', async () => {
  appendFileSync(path, lost);
  expect(await tools.store.list()).toMatchObject({ recordings: [{ id, takes: 3 }], unreadable: [] });
  expect((await tools.store.unfinished()).map((one) => one.id)).toEqual([id]);
  const survey = await goOn();
  expect(valuesOf(survey)).toEqual([1, 2, 3]);
  await survey.close();
  expect((await verifyRecording(path)).problems).toEqual([]);
});

test('is gone on with by itself after a power cut', async () => {
  appendFileSync(path, lost);
  const stage = new Stage(tools);
  await stage.resumeInterrupted();
  expect(stage.hello()).toMatchObject({ session: { header: { id } } });
  await stage.close();
});

test('closes the file when it can not be gone on with', async () => {
  const close = vi.spyOn(RecordingWriter.prototype, 'close');
  const append = vi
    .spyOn(RecordingWriter.prototype, 'append')
    .mockRejectedValue(new WayscribeError('recording.full', path, 'the disk is full'));
  await expect(goOn()).rejects.toThrow('the disk is full');
  expect(close).toHaveBeenCalledTimes(1);
  append.mockRestore();
  close.mockRestore();
});

test('refuses ends that can not be told apart, and any survey while another daemon writes', async () => {
  const instrument = { name: 'L', source: 'typed', unit: 'um/m' };
  const twins = setupSchema.parse({ ...demoSetups.way, instrument, startEnd: 'left', farEnd: 'Left' });
  await expect(Survey.start(twins, tools)).rejects.toMatchObject({ place: 'farEnd' });
  const stage = new Stage({ ...tools, readOnly: true });
  await expect(stage.obey({ do: 'resume', id })).rejects.toMatchObject({ code: 'recording.locked' });
  await stage.close();
});
