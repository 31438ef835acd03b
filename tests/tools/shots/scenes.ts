import { demoSetups } from '../../../shared/session/demo-setups.ts';
import type { Studio } from './studio.ts';

/** Walks the program as far as some screens and takes them. It begins before an empty desk. */
export type Scene = (studio: Studio) => Promise<void>;

/** Scenes of the demo, by the name under which one is asked for. */
export const scenes: Readonly<Record<string, Scene>> = {
  start: async (studio) => {
    await studio.shoot('start', { print: true });
    await studio.press('?', '[data-testid="help-panel"]');
    await studio.shoot('help');
  },
  'set-up': async (studio) => {
    await studio.click('set-up', '[data-testid="setup"]');
    for (const kind of Object.keys(demoSetups)) {
      await studio.page.getByTestId(`kind-${kind}`).check();
      await studio.shoot(`set-up ${kind}`, { few: true });
    }
    await studio.page.locator('[name="part"]').fill('');
    await studio.click('start', '[aria-invalid="true"]');
    await studio.shoot('set-up wrong', { few: true });
  },
  ...Object.fromEntries(Object.keys(demoSetups).map((kind) => [kind, survey(kind)])),
  questions: async (studio) => {
    await studio.click('demo-by-hand', '[data-testid="beforehand"]');
    await studio.shoot('question beforehand');
    await studio.click('beforehand-away', '[data-view="survey"]');
    await studio.walk(0.4);
    await studio.press('z', '[data-testid="reasons"]');
    await studio.shoot('question why undone', { few: true });
    await studio.page.keyboard.press('Escape');
    await studio.press('f', '[data-testid="finish-question"]');
    await studio.shoot('question finish', { few: true });
  },
  lesson: async (studio) => {
    await studio.click('lesson-chip', '[data-testid="lesson-begin"]');
    await studio.shoot('lesson beginning');
    const asks = studio.page.getByTestId('lesson-asks');
    for (let n = 0; n < 60 && !(await asks.isVisible()); n += 1)
      await studio.page.keyboard.press('ArrowRight');
    await asks.waitFor();
    await studio.shoot('lesson question');
    await studio.press('w', 'section[data-testid="working"]');
    await studio.click('height-F4', '[data-testid="why"]');
    await studio.shoot('replay working');
    await studio.press('l', '[data-testid="lesson-editor"]');
    await studio.shoot('lesson editor', { few: true });
    await studio.press('o', '[data-testid="compare"]');
    await studio.shoot('compare', { print: true });
  },
  job: async (studio) => {
    await studio.click('open-job-rebuild', '[data-testid="rounds"]');
    await studio.shoot('job', { print: true });
    for (const [key, name] of Object.entries({ b: 'compare', s: 'plan', i: 'blue', o: 'papers' })) {
      await studio.press(key, `main[data-sheet="${name}"]`);
      await studio.shoot(`job ${name}`, { print: true });
    }
    for (const [key, name] of Object.entries({ n: 'next-round', l: 'passes', p: 'print', a: 'surface' })) {
      await studio.press(key, `main[data-sheet="${name}"]`);
      await studio.shoot(`job ${name}`, { few: true });
      await studio.press('Escape', 'main[data-sheet="papers"]');
    }
    const opened = studio.page.context().waitForEvent('page');
    await studio.page.getByTestId('job-report').click();
    const report = await opened;
    await report.waitForLoadState();
    await studio.shootOther('report', report);
    await report.close();
  },
};

/** Scenes of the daemon with real instruments, of which there are none here. */
export const scenesOfServe: Readonly<Record<string, Scene>> = {
  shop: async (studio) => {
    await studio.shoot('shop start');
    await studio.click('prove', '[data-testid="proving"]');
    await studio.shoot('shop instrument');
  },
};

/** A survey half way, its result, and how that comes about. */
function survey(kind: string): Scene {
  return async (studio) => {
    await studio.click(kind === 'way' ? 'demo' : `demo-${kind}`, '[data-view="survey"]');
    await studio.walk(0.6);
    await studio.shoot(`survey ${kind}`);
    await studio.walk(1);
    await studio.do('finish');
    await studio.page.locator('[data-view="result"]').waitFor();
    await studio.shoot(`result ${kind}`, { print: true });
    await studio.press('w', 'section[data-testid="working"]');
    await studio.shoot(`working ${kind}`, { few: true, print: true });
  };
}
