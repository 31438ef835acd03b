import { appendFileSync, copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { recordingListSchema } from '../../shared/api.ts';
import { headerSchema } from '../../shared/session/events.ts';
import { sampleHeader, stampOf, take, writeSample } from '../../tests/tools/sample-recording.ts';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { reopenRecording } from './reopen.ts';
import { RecordingStore } from './store.ts';
import { RecordingWriter } from './writer.ts';

let store: RecordingStore;

beforeEach(async () => {
  store = await RecordingStore.open(join(testFolder(), 'made', 'on', 'opening'));
});

async function begin(id: string, t: number): Promise<RecordingWriter> {
  return RecordingWriter.create(store.pathOf(id), { ...sampleHeader, id, t });
}

describe('an id', () => {
  const at = new Date(2025, 2, 9, 23, 30).getTime();

  it('tells the day, the part and the surface', async () => {
    const id = await store.newId({ part: 'Müller-Lathe No. 3', surface: 'Front way' }, at);
    expect(id).toBe('2025-03-09-muller-lathe-no-3-front-way');
  });

  it.each(['床面', '../../etc/passwd', 'x'.repeat(120), '-- --', 'CON'])('is safe for %j', async (name) => {
    const id = await store.newId({ part: name, surface: name }, at);
    expect(headerSchema.shape.id.parse(id)).toBe(id);
    expect(store.pathOf(id)).toBe(join(store.folder, `${id}.jsonl`));
  });

  it('is free', async () => {
    const name = { part: 'a', surface: 'b' };
    const ids: string[] = [];
    for (let k = 0; k < 3; k += 1) {
      const id = await store.newId(name, at);
      await (await begin(id, at)).close();
      ids.push(id);
    }
    expect(ids).toEqual(['2025-03-09-a-b', '2025-03-09-a-b-2', '2025-03-09-a-b-3']);
  });

  it.each(['..', '../a', 'a/b', 'a\\b', 'A', '', 'a.b', 'a\0', 'x'.repeat(81)])('is not %j', async (id) => {
    expect(() => store.pathOf(id)).toThrow('there is no such recording');
    await expect(store.find(id)).rejects.toMatchObject({ code: 'recording.notFound' });
  });

  it('finds its recording, or says that there is none', async () => {
    await (await begin('here', 1)).close();
    expect(await store.find('here')).toBe(store.pathOf('here'));
    await expect(store.find('gone')).rejects.toMatchObject({ code: 'recording.notFound' });
  });
});

describe('the list', () => {
  it('is newest first, and told apart from what cannot be read', async () => {
    await writeSample(store.pathOf('sample'));
    const later = await begin('later', sampleHeader.t + 1);
    await later.append(take(0, 1, 1, 1), stampOf(1), { durable: true });
    await later.append(take(0, 2, 1, 1), stampOf(2), { durable: true });
    await later.close();
    writeFileSync(store.pathOf('broken'), 'not a recording\n');
    copyFileSync(store.pathOf('sample'), store.pathOf('copied'));
    writeFileSync(join(store.folder, 'notes.txt'), 'left alone');

    const { recordings, unreadable } = await store.list();
    expect(recordingListSchema.parse(recordings)).toEqual(recordings);
    expect(recordings).toMatchObject([
      { id: 'later', takes: 1, planned: 6, ended: false, simulated: false },
      { id: 'sample', takes: 6, planned: 6, ended: true, part: 'Sample', surface: 'front way' },
    ]);
    expect(unreadable.map(({ file }) => file)).toEqual(['broken.jsonl', 'copied.jsonl']);
    expect(unreadable[0]!.reason).toContain('is not the header of a recording');
    expect(unreadable[1]!.reason).toBe('holds the recording sample');
    expect((await store.unfinished()).map(({ id }) => id)).toEqual(['later']);
  });

  it('follows what is written meanwhile', async () => {
    await writeSample(store.pathOf('sample'));
    expect((await store.list()).recordings).toMatchObject([{ ended: true }]);
    const { writer } = await reopenRecording(store.pathOf('sample'));
    await writer.append({ type: 'resumed', why: 'test' }, stampOf(1), { durable: true });
    expect((await store.list()).recordings).toMatchObject([{ ended: false }]);
    await writer.close();
    appendFileSync(store.pathOf('sample'), 'torn');
    expect((await store.list()).recordings).toMatchObject([{ ended: false, takes: 6 }]);
  });
});
