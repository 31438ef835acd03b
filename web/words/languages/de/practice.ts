import type { Language } from '../../phrasebook.ts';

/** Surveys with a fault in them, to be found. */
export const practice: Language = {
  'What was wrong with this survey?': 'Was stimmte an dieser Messung nicht?',
  'Found: {what}': 'Gefunden: {what}',
  'It was: {what}': 'Es war: {what}',
  'Lay the true shape over it to see what it cost.':
    'Legen Sie die wahre Form darüber, um zu sehen, was es gekostet hat.',
  Nothing: 'Nichts',
  'A chip under a foot': 'Ein Span unter einem Fuß',
  'A steady drift': 'Eine gleichmäßige Drift',
  'A warm hand': 'Eine warme Hand',
  'Turned in mid-walk': 'Mitten im Gang umgeschlagen',
  'A station skipped': 'Eine Station übersprungen',
  'A station doubled': 'Eine Station doppelt',
  'The sign inverted': 'Das Vorzeichen verkehrt',
  'Nothing was planted: every reading was done well. To see that is worth as much.':
    'Nichts war eingebaut: Jede Ablesung war gut. Das zu sehen ist ebenso viel wert.',
  'One step of the way out was read with a chip under a foot. The walk back disagrees at that step alone.':
    'Ein Schritt des Hinwegs wurde mit einem Span unter dem Fuß abgelesen. Der Rückweg widerspricht nur an diesem Schritt.',
  'The zero drifted steadily. On one walk it is a bow; out and back together cancel it.':
    'Der Nullpunkt driftete gleichmäßig. In einem Gang ist das ein Bogen; hin und zurück zusammen heben ihn auf.',
  'The zero crept fast at first, then came to rest. Out and back differ most where the walk began, and do not cancel.':
    'Der Nullpunkt kroch erst schnell und kam dann zur Ruhe. Hin und zurück unterscheiden sich am meisten, wo der Gang begann, und heben sich nicht auf.',
  'In the middle of the way out the level was turned end for end. From there on, out and back go contrary ways.':
    'Mitten auf dem Hinweg wurde die Wasserwaage umgeschlagen. Von da an laufen hin und zurück gegeneinander.',
  'On the way out one station was passed over, and all behind was read one step ahead. Only the walk back, or counting marks, shows it.':
    'Auf dem Hinweg wurde eine Station übersprungen, und alles dahinter ein Schritt zu weit vorn abgelesen. Nur der Rückweg oder das Zählen der Marken zeigt es.',
  'On the way out one place was read twice, and all behind was read one step late. Only the walk back, or counting marks, shows it.':
    'Auf dem Hinweg wurde eine Stelle zweimal abgelesen, und alles dahinter ein Schritt zu spät. Nur der Rückweg oder das Zählen der Marken zeigt es.',
  'The sign of the level was inverted throughout. No reading disagrees: only a strip of paper under the far foot shows it.':
    'Das Vorzeichen der Wasserwaage war durchweg verkehrt. Keine Ablesung widerspricht: Nur ein Streifen Papier unter dem fernen Fuß zeigt es.',
  'You walk a simulated instrument. One of the faults ticked here is planted, unseen; in the end you say which, and are told when it could be seen. Who teaches ticks one and hands over.':
    'Sie messen mit einem simulierten Gerät. Einer der hier angekreuzten Fehler ist unsichtbar eingebaut; am Ende sagen Sie, welcher, und erfahren, wann er zu sehen war. Wer lehrt, kreuzt einen an und gibt weiter.',
  'Practise on': 'Üben an',
  'What may be wrong': 'Was falsch sein darf',
  'walk it yourself, or let it walk': 'selbst messen, oder laufen lassen',
  'A chip underneath': 'Ein Span darunter',
  'Something moved': 'Etwas hat sich bewegt',
  'One reading was made with a chip under it. What was read there a second time disagrees at that place alone.':
    'Eine Ablesung hatte einen Span darunter. Was dort ein zweites Mal abgelesen wurde, widerspricht nur an dieser Stelle.',
  'The zero drifted steadily from the first reading to the last. On one walk it is a bow, on one sweep a taper; out and back together cancel it.':
    'Der Nullpunkt driftete gleichmäßig von der ersten bis zur letzten Ablesung. In einem Gang ist das ein Bogen, in einer Fahrt ein Keil; hin und zurück zusammen heben ihn auf.',
  'In the middle of the first walk the level was turned end for end. From there on, that walk and another over the same steps go contrary ways.':
    'Mitten im ersten Gang wurde die Wasserwaage umgeschlagen. Von da an laufen dieser Gang und ein anderer über dieselben Schritte gegeneinander.',
  'One station was passed over, and all behind it was read one station ahead. Only reading it a second time, or counting marks, shows it.':
    'Eine Station wurde übersprungen, und alles dahinter eine Station zu weit vorn abgelesen. Nur zweites Ablesen oder das Zählen der Marken zeigt es.',
  'One place was read twice, and all behind it was read one station late. Only reading it a second time, or counting marks, shows it.':
    'Eine Stelle wurde zweimal abgelesen, und alles dahinter eine Station zu spät. Nur zweites Ablesen oder das Zählen der Marken zeigt es.',
  'In the middle of the first walk or sweep something moved: the zero, the stand or the part. From there on every reading of it is off by the same amount.':
    'Mitten im ersten Gang oder in der ersten Fahrt hat sich etwas bewegt: der Nullpunkt, das Stativ oder das Teil. Von da an ist jede Ablesung um dasselbe Maß falsch.',
  'The sign of the instrument was inverted throughout. No reading disagrees: only a strip of paper under one foot, or under the tip, shows it.':
    'Das Vorzeichen des Geräts war durchweg verkehrt. Keine Ablesung widerspricht: Nur ein Streifen Papier unter einem Fuß oder unter dem Taster zeigt es.',
  'It was at {place}.': 'Es war bei {place}.',
  'And yet, after reading {nth}, it was said: “{text}”': 'Und doch hieß es nach Ablesung {nth}: „{text}“',
  'It could be seen from reading {nth} of {all} on ({place}), when it was said: “{text}”':
    'Zu sehen war es ab Ablesung {nth} von {all} ({place}), als es hieß: „{text}“',
  'No reading of this survey shows it: nothing that was read a second time disagrees.':
    'Keine Ablesung dieser Messung zeigt es: Nichts, was ein zweites Mal abgelesen wurde, widerspricht.',
};
