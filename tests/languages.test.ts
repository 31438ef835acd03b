import { join } from 'node:path';
import { expect, test } from 'vitest';
import { shippedProfiles } from '../protocols/shipped.ts';
import { languageCodes, languageFor, nextLanguage, textsOf } from '../web/words/languages/languages.ts';
import { phrasebook } from '../web/words/phrasebook.ts';
import { pageTexts, textsIn } from './tools/page-texts.ts';

const placesIn = (text: string) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort();

test('a translation puts the same values in its own places, and leaves nothing empty', async () => {
  const texts = Object.entries((await textsOf('de')) ?? {});
  expect(texts.filter(([from, to]) => `${placesIn(from)}` !== `${placesIn(to)}`)).toEqual([]);
  expect(texts.filter(([, to]) => to.trim() === '')).toEqual([]);
});

test('the check itself finds texts in calls, tables, tags and templates', () => {
  const said = "say('One'); const t = { word: 'Two', id: 'no-text' };";
  const template = ['const s = `Three of $', '{n} $', "{up ? 'went up' : 'fell'}, to be told`;"].join('');
  const tags = 'const x = <p class="not this">Four {n} <b title="Five">six</b></p>;';
  expect(textsIn('a.tsx', [said, template, tags].join(' ')).map(({ text }) => text)).toEqual([
    'One',
    'Two',
    'Three of 0 went up, to be told',
    'Three of 0 fell, to be told',
    'Four 0',
    'Five',
    'six',
  ]);
});

test('a browser gets the first of its languages that the page speaks', () => {
  expect(languageFor(['de-AT', 'en'])).toBe('de');
  expect(languageFor(['fr', 'en-GB', 'de'])).toBe('en');
  expect(languageFor(['fr'])).toBe('en');
  expect(languageFor([])).toBe('en');
});

test('the languages follow one another round and round', () => {
  expect(nextLanguage('en')).toBe('de');
  expect(nextLanguage('de')).toBe('en');
});

/** The titles of the instrument profiles, which stand in the set-up. */
const profileTitles = () => shippedProfiles.map(({ title }) => ({ text: title, file: 'protocols/profiles' }));

/** What is no text of any language: units, and what tells parts of the page apart. */
const noWords =
  /^[\d.,×% ]*(?:µm(?:\/m)?|mm|°C|m|SHA-256.*|contour true|xMinYMin meet|svg text|503 Service Unavailable|HTTP.*|close|0,name|0\.straightness|color-mix.*|var.*|transparent)?$/;

test.each(languageCodes.filter((code) => code !== 'en'))(
  'every text that may come to the page is known in %s',
  async (code) => {
    const translate = phrasebook((await textsOf(code))!);
    const all = [...pageTexts(join(import.meta.dirname, '..')), ...profileTitles()];
    expect(all.length).toBeGreaterThan(1000);
    const unknown = all.flatMap(({ text, file }) => {
      const left: string[] = [];
      translate(text, (piece) => {
        if (/\p{L}/u.test(piece) && !noWords.test(piece)) left.push(piece);
        return piece;
      });
      return left.length > 0 ? [`${file}: ${text} (${left.join(' | ')})`] : [];
    });
    expect(unknown).toEqual([]);
  },
);
