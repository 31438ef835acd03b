import type { Language } from '../../phrasebook.ts';

/** What proving an instrument finds. */
export const verdicts: Language = {
  '{kind} {name} proved: {facts}': '{kind} {name} geprüft: {facts}',
  'Level {name} proved: {facts}': 'Wasserwaage {name} geprüft: {facts}',
  'Indicator {name} proved: {facts}': 'Messuhr {name} geprüft: {facts}',
  '1 graduation = {size}': '1 Teilstrich = {size}',
  '1 count = {size}': '1 Zählschritt = {size}',
  'zero {size}': 'Nullpunkt {size}',
  'spread {size}': 'Streuung {size}',
  'plus means far foot ({end}) HIGH': 'Plus heißt ferner Fuß ({end}) HOCH',
  'plus means far foot ({end}) LOW': 'Plus heißt ferner Fuß ({end}) TIEF',
  'plus means HIGH': 'Plus heißt HOCH',
  'plus means LOW': 'Plus heißt TIEF',
  'It went up, far beyond its noise: {what}.': 'Es ging hinauf, weit über sein Rauschen: {what}.',
  'It went down, far beyond its noise: {what}.': 'Es ging hinab, weit über sein Rauschen: {what}.',
  'It hardly moved: which way is plus can’t be told.':
    'Es bewegte sich kaum: Wohin Plus zeigt, lässt sich nicht sagen.',
  'Move it further, and see that it is this instrument that you move.':
    'Weiter bewegen, und sicherstellen, dass Sie dieses Gerät bewegen.',
  'The step is {size}': 'Die Stufe ist {size}',
  '{step} under one foot, {base} from the other, is {slope}':
    '{step} unter einem Fuß, {base} vom anderen, sind {slope}',
  '{step}; it read {times} times that, sure to {percent}':
    '{step}; es zeigte das {times}-fache, sicher auf {percent}',
  '{step}; it read {times} that, sure to {percent}': '{step}; es zeigte {times} davon, sicher auf {percent}',
  '{step}; it read {times} times that, sure to {percent}: the unit is right.':
    '{step}; es zeigte das {times}-fache, sicher auf {percent}: Die Einheit stimmt.',
  '{step}; it read {times} times that, sure to {percent}: that is no proof.':
    '{step}; es zeigte das {times}-fache, sicher auf {percent}: Das ist kein Beweis.',
  '{step}; it hardly moved.': '{step}; es bewegte sich kaum.',
  '{step}; it went the other way than before.': '{step}; es ging andersherum als vorher.',
  '{found}: the unit is right.': '{found}: Die Einheit stimmt.',
  '{found}: that is no proof.': '{found}: Das ist kein Beweis.',
  '{found}: none of the usual slips explains it.': '{found}: Keines der üblichen Versehen erklärt es.',
  'none of the usual slips explains it': 'keines der üblichen Versehen erklärt es',
  'the unit is right': 'die Einheit stimmt',
  'that is no proof': 'das ist kein Beweis',
  'See that the step lies where it should, or take a larger one.':
    'Sehen Sie nach, ob die Stufe richtig liegt, oder nehmen Sie eine größere.',
  'Put the step under the {end}.': 'Legen Sie die Stufe unter das {end}.',
  'Set the tip on the step.': 'Setzen Sie den Taster auf die Stufe.',
  'Take a larger step, or gauge blocks in place of a feeler.':
    'Nehmen Sie eine größere Stufe, oder Endmaße statt einer Fühlerlehre.',
  'See to the size of the step and the foot spacing.': 'Sehen Sie nach dem Maß der Stufe und dem Fußabstand.',
  'See to the size of the step, and whether the tip stands square to it.':
    'Sehen Sie nach dem Maß der Stufe, und ob der Taster rechtwinklig darauf steht.',
  'see to the size of the step and the foot spacing.': 'sehen Sie nach dem Maß der Stufe und dem Fußabstand.',
  'see to the size of the step, and whether the tip stands square to it.':
    'sehen Sie nach dem Maß der Stufe, und ob der Taster rechtwinklig darauf steht.',
  'The instrument itself says {unit}.': 'Das Gerät selbst sagt {unit}.',
  'In {unit} it would be right.': 'In {unit} stimmte es.',
  'Else: {look}': 'Sonst: {look}',
  'as if the decimal point stood {count} place too far to the left':
    'als stünde das Komma {count} Stelle zu weit links',
  'as if the decimal point stood {count} places too far to the left':
    'als stünde das Komma {count} Stellen zu weit links',
  'as if the decimal point stood {count} place too far to the right':
    'als stünde das Komma {count} Stelle zu weit rechts',
  'as if the decimal point stood {count} places too far to the right':
    'als stünde das Komma {count} Stellen zu weit rechts',
  'as if the decimal point stood {count} place too far to the {side}':
    'als stünde das Komma {count} Stelle zu weit {side}',
  'as if the decimal point stood {count} places too far to the {side}':
    'als stünde das Komma {count} Stellen zu weit {side}',
  'as if {finer} were taken for {coarser}': 'als wäre {finer} für {coarser} gehalten',
  'Set down five times it spreads by {size}, which is no reading any more.':
    'Fünfmal aufgesetzt streut es um {size}, das ist keine Anzeige mehr.',
  'Wipe its feet and the place, see that nothing is loose, and set it down again.':
    'Füße und Stelle abwischen, sehen, dass nichts lose ist, und neu aufsetzen.',
  'Set down five times it spreads by {size}, itself {sure}.':
    'Fünfmal aufgesetzt streut es um {size}, selbst {sure}.',
  'On level ground it reads {size}, {sure}.': 'Auf ebenem Grund zeigt es {size}, {sure}.',
  '{count} times': '{count}-mal',
  Else: 'Sonst',
};
