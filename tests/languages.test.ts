import { expect, test } from 'vitest';
import { languageFor, nextLanguage, textsOf } from '../web/words/languages/languages.ts';
import { textsIn } from './tools/page-texts.ts';

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
