import { say } from './say.ts';

/** What the signs of the drawing and the words of the page mean. */
export function signs(): readonly (readonly [sign: string, meaning: string])[] {
  return [
    [
      say('HIGH, LOW'),
      say('Metal stands proud of the reference, or lies below it. HIGH is what can be scraped.'),
    ],
    [say('sure to'), say('The true value lies within so much, 95 times in 100.')],
    [
      say('Plus end'),
      say('The end of the level whose rise reads plus. It must point to where the page says.'),
    ],
    [say('Triangle'), say('Something is wrong or will be: its sentence says what to do.')],
    [say('Thick and thin'), say('Stations that were read are bold; those to come are thin.')],
    [say('Orange'), say('Where the instrument stands or is to be set next. Nothing else has this colour.')],
    [say('Shaded band'), say('Where the profile lies, 95 times in 100.')],
    [say('Chain line'), say('The reference: what the heights are told against.')],
    [say('Inked'), say('High ground takes the ink, low ground stays bare, as under blue.')],
    [say('Hatched box'), say('Less to take off than it is uncertain: leave it.')],
  ];
}
