import type { Language } from '../../phrasebook.ts';

/** What a survey notices about itself, the notes of a result, and what proving an instrument finds. */
export const notices: Language = {
  'Wipe the feet and the metal': 'Füße und Metall abwischen',
  'Wipe the tip and the metal': 'Taster und Metall abwischen',
  'The survey was broken off. Last good was {place} ({run}); repeat it first: it tells whether anything has moved.':
    'Die Messung wurde unterbrochen. Zuletzt gut war {place} ({run}); wiederholen Sie das zuerst: Es sagt, ob sich etwas bewegt hat.',
  '{place} reads {size} {unit} more than before the break: the part or the zero has moved. Take "{run}" again from its start.':
    '{place} zeigt {size} {unit} mehr als vor der Unterbrechung: Das Teil oder der Nullpunkt hat sich bewegt. „{run}“ von Anfang an neu aufnehmen.',
  '{place} reads {size} {unit} less than before the break: the part or the zero has moved. Take "{run}" again from its start.':
    '{place} zeigt {size} {unit} weniger als vor der Unterbrechung: Das Teil oder der Nullpunkt hat sich bewegt. „{run}“ von Anfang an neu aufnehmen.',
  'At {station} the lines miss each other by {size}, where {usual} would be usual. "{line}" fits worst: repeat it. If another fails then, the temperature is moving.':
    'Bei {station} verfehlen sich die Linien um {size}, üblich wären {usual}. „{line}“ passt am schlechtesten: wiederholen. Fällt dann eine andere aus, wandert die Temperatur.',
  '{line}: the zero drifted by {size} from one end to the other; on one walk alone that would look like {false} of bow.':
    '{line}: Der Nullpunkt driftete von einem Ende zum anderen um {size}; in einem Gang allein sähe das aus wie {false} Bogen.',
  '{line}: the zero drifted by {size} from one end to the other; on one walk alone that would look like at least {false} of bow.':
    '{line}: Der Nullpunkt driftete von einem Ende zum anderen um {size}; in einem Gang allein sähe das aus wie mindestens {false} Bogen.',
  '{line}: the zero drifted by {size} from one end to the other; on one sweep alone that would look like {false} of taper.':
    '{line}: Der Nullpunkt driftete von einem Ende zum anderen um {size}; in einer Fahrt allein sähe das aus wie {false} Keil.',
  '{line}: the zero drifted by {size} from one end to the other; on one sweep alone that would look like at least {false} of taper.':
    '{line}: Der Nullpunkt driftete von einem Ende zum anderen um {size}; in einer Fahrt allein sähe das aus wie mindestens {false} Keil.',
  '{line}: the zero drifted by {size} from one end to the other; {fake}.':
    '{line}: Der Nullpunkt driftete von einem Ende zum anderen um {size}; {fake}.',
  'on one walk alone that would look like {false} of {what}':
    'in einem Gang allein sähe das aus wie {false} {what}',
  'on one walk alone that would look like at least {false} of {what}':
    'in einem Gang allein sähe das aus wie mindestens {false} {what}',
  'on one sweep alone that would look like {false} of {what}':
    'in einer Fahrt allein sähe das aus wie {false} {what}',
  'on one sweep alone that would look like at least {false} of {what}':
    'in einer Fahrt allein sähe das aus wie mindestens {false} {what}',
  bow: 'Bogen',
  'It is taken off, as you chose.': 'Sie ist abgezogen, wie Sie es wählten.',
  'Out and back together cancel a steady drift.':
    'Hin und zurück zusammen heben eine gleichmäßige Drift auf.',
  'It was not steady, so out and back do not cancel it: warm hands, sun or a draught. Let it stand, then go over it again.':
    'Sie war nicht gleichmäßig, also heben hin und zurück sie nicht auf: warme Hände, Sonne oder Zugluft. Stehen lassen, dann noch einmal messen.',
  '{line}: with the level turned for the walk back, a steady drift looks just like a bow. Read {place} once more, facing as on the way out: what has changed there is drift.':
    '{line}: Ist die Wasserwaage für den Rückweg umgeschlagen, sieht eine gleichmäßige Drift genau wie ein Bogen aus. Lesen Sie {place} noch einmal ab, gerichtet wie auf dem Hinweg: Was sich dort geändert hat, ist Drift.',
  '{steps} steps of {base} are {walked}, and {length} were measured. Count the stations and measure the foot spacing: a wrong spacing makes every height wrong by as much.':
    '{steps} Schritte von {base} sind {walked}, und gemessen wurden {length}. Zählen Sie die Stationen und messen Sie den Fußabstand: Ein falscher Abstand macht jede Höhe um ebenso viel falsch.',
  '{steps} steps of {base} are {walked}': '{steps} Schritte von {base} sind {walked}',
  '{steps}, and {length} were measured. Count the stations and measure the foot spacing: a wrong spacing makes every height wrong by as much.':
    '{steps}, und gemessen wurden {length}. Zählen Sie die Stationen und messen Sie den Fußabstand: Ein falscher Abstand macht jede Höhe um ebenso viel falsch.',
  'no foot stands on {length} of every step': 'auf {length} jedes Schritts steht kein Fuß',
  "the steps overlap by {length}; with feet longer than the step they can't stand on its marks":
    'die Schritte überlappen um {length}; mit einem Fußabstand über dem Schritt können die Füße nicht auf seinen Marken stehen',
  '{where}: the steps are {step} and the feet stand {base} apart, so {what}. Set the feet to {new} for these lines, or choose another foot spacing.':
    '{where}: Die Schritte sind {step}, und die Füße stehen {base} auseinander: {what}. Stellen Sie die Füße für diese Linien auf {new}, oder wählen Sie einen anderen Fußabstand.',
  '{place} reads {size} {unit} more than its neighbours on both sides, a step of {step} over {base}. That is dirt or a burr until proved: {wipe}, repeat it.':
    '{place} zeigt {size} {unit} mehr als die Nachbarn auf beiden Seiten, eine Stufe von {step} auf {base}. Das ist bis zum Beweis Schmutz oder ein Grat: {wipe}, wiederholen.',
  '{place} reads {size} {unit} less than its neighbours on both sides, a step of {step} over {base}. That is dirt or a burr until proved: {wipe}, repeat it.':
    '{place} zeigt {size} {unit} weniger als die Nachbarn auf beiden Seiten, eine Stufe von {step} auf {base}. Das ist bis zum Beweis Schmutz oder ein Grat: {wipe}, wiederholen.',
  '{place} reads {size} {unit} more than its neighbours on both sides{step}. That is dirt or a burr until proved: {wipe}, repeat it.':
    '{place} zeigt {size} {unit} mehr als die Nachbarn auf beiden Seiten{step}. Das ist bis zum Beweis Schmutz oder ein Grat: {wipe}, wiederholen.',
  '{place} reads {size} {unit} less than its neighbours on both sides{step}. That is dirt or a burr until proved: {wipe}, repeat it.':
    '{place} zeigt {size} {unit} weniger als die Nachbarn auf beiden Seiten{step}. Das ist bis zum Beweis Schmutz oder ein Grat: {wipe}, wiederholen.',
  '{place} reads {size} {unit} more than its neighbours on both sides. That is dirt or a burr until proved: {wipe}, repeat it.':
    '{place} zeigt {size} {unit} mehr als die Nachbarn auf beiden Seiten. Das ist bis zum Beweis Schmutz oder ein Grat: {wipe}, wiederholen.',
  '{place} reads {size} {unit} less than its neighbours on both sides. That is dirt or a burr until proved: {wipe}, repeat it.':
    '{place} zeigt {size} {unit} weniger als die Nachbarn auf beiden Seiten. Das ist bis zum Beweis Schmutz oder ein Grat: {wipe}, wiederholen.',
  'a step of {size} over {base}': 'eine Stufe von {size} auf {base}',
  "This instrument can't see what is asked: its last digit of {digit} alone leaves {doubt} of doubt over {length}, and the limit is {limit}. Take a finer one, or a longer foot spacing.":
    'Dieses Gerät kann nicht sehen, was verlangt ist: Schon seine letzte Stelle von {digit} lässt {doubt} Unsicherheit auf {length}, und der Grenzwert ist {limit}. Nehmen Sie ein feineres, oder einen längeren Fußabstand.',
  'The readings scatter {times} times as much as one reading is known to. Something moves: warm hands, a draught, feet that rock, the floor. Find it, then repeat.':
    'Die Ablesungen streuen {times}-mal so stark, wie es von einer Ablesung bekannt ist. Etwas bewegt sich: warme Hände, Zugluft, wackelnde Füße, der Boden. Finden Sie es, dann wiederholen.',
  '{place}, read again, shows {size} more than at first: the zero or the part has moved meanwhile.':
    '{place}, noch einmal abgelesen, zeigt {size} mehr als zuerst: Der Nullpunkt oder das Teil hat sich inzwischen bewegt.',
  '{place}, read again, shows {size} less than at first: the zero or the part has moved meanwhile.':
    '{place}, noch einmal abgelesen, zeigt {size} weniger als zuerst: Der Nullpunkt oder das Teil hat sich inzwischen bewegt.',
  'Spread evenly over the walk that would make a false bow of {size}.':
    'Gleichmäßig über den Gang verteilt gäbe das einen falschen Bogen von {size}.',
  'Let it come to rest and repeat "{run}".': 'Zur Ruhe kommen lassen und „{run}“ wiederholen.',
  '{line}: out and back go contrary ways: the level was turned end for end between them or in mid-walk. Finish the walk back, and it will show where.':
    '{line}: Hin und zurück laufen gegeneinander: Die Wasserwaage wurde dazwischen oder mitten im Gang umgeschlagen. Beenden Sie den Rückweg, dann zeigt sich, wo.',
  '{line}: out and back stand one step apart: in one of them a station was read twice or passed over. Finish the walk back, and it will show where.':
    '{line}: Hin und zurück stehen einen Schritt auseinander: In einem davon wurde eine Station zweimal abgelesen oder übersprungen. Beenden Sie den Rückweg, dann zeigt sich, wo.',
  '{line}: out and back {what}. Finish the walk back, and it will show where.':
    '{line}: Hin und zurück {what}. Beenden Sie den Rückweg, dann zeigt sich, wo.',
  'go contrary ways: the level was turned end for end between them or in mid-walk':
    'laufen gegeneinander: Die Wasserwaage wurde dazwischen oder mitten im Gang umgeschlagen',
  'stand one step apart: in one of them a station was read twice or passed over':
    'stehen einen Schritt auseinander: In einem davon wurde eine Station zweimal abgelesen oder übersprungen',
  'From {place} on, out and back go contrary ways: the level was turned end for end in mid-walk. Turn it back and repeat "{run}" from there.':
    'Ab {place} laufen hin und zurück gegeneinander: Die Wasserwaage wurde mitten im Gang umgeschlagen. Zurückdrehen und „{run}“ von dort wiederholen.',
  'From {place} on, "{run}" stands one step behind the other walk: a station was read twice. Repeat it from there.':
    'Ab {place} liegt „{run}“ einen Schritt hinter dem anderen Gang: Eine Station wurde zweimal abgelesen. Von dort wiederholen.',
  'From {place} on, "{run}" stands one step ahead of the other walk: a station was passed over. Repeat it from there.':
    'Ab {place} liegt „{run}“ einen Schritt vor dem anderen Gang: Eine Station wurde übersprungen. Von dort wiederholen.',
  'From {place} on, out and back differ by {size} {unit} more than before it: in one of the two walks the zero or the part has moved there, or the unit was switched. Repeat that walk.':
    'Ab {place} unterscheiden sich hin und zurück um {size} {unit} mehr als davor: In einem der beiden Gänge hat sich dort der Nullpunkt oder das Teil bewegt, oder die Einheit wurde umgestellt. Diesen Gang wiederholen.',
  'The instrument fell silent between {before} and {after}. If it was switched off its zero may have moved: repeat {again}.':
    'Das Gerät verstummte zwischen {before} und {after}. Wurde es ausgeschaltet, kann sein Nullpunkt gewandert sein: {again} wiederholen.',
  "{place} was read twice, {size} apart; which one is wrong can't be told. {wipe}, repeat both.":
    '{place} wurde zweimal abgelesen, mit {size} Unterschied; welche falsch ist, lässt sich nicht sagen. {wipe}, beide wiederholen.',
  '{wipe} and repeat {place} ({run}): it reads {size} more than the others agree with.':
    '{wipe} und {place} wiederholen ({run}): Es zeigt {size} mehr, als zu den anderen passt.',
  '{wipe} and repeat {place} ({run}): it reads {size} less than the others agree with.':
    '{wipe} und {place} wiederholen ({run}): Es zeigt {size} weniger, als zu den anderen passt.',
  'It may as well be {names}, or {count} more that nothing tells from it: repeat them all.':
    'Es kann ebenso {names} sein, oder {count} weitere, die nichts davon unterscheidet: alle wiederholen.',
  'It may as well be {names}.': 'Es kann ebenso {names} sein.',
  '{length} long and {depth} deep': '{length} lang und {depth} hoch',
  '{length} long and {depth} deep (taken as a tenth of its length)':
    '{length} lang und {depth} hoch (als ein Zehntel der Länge angenommen)',
  'The top is {degrees} warmer than the bottom: {size}, that bows iron {bow} {way}. Nothing is taken off for it; let it come to rest and repeat.':
    'Die Oberseite ist {degrees} wärmer als die Unterseite: {size}, das biegt Eisen um {bow} {way}. Dafür wird nichts abgezogen; zur Ruhe kommen lassen und wiederholen.',
  'The top is {degrees} colder than the bottom: {size}, that bows iron {bow} {way}. Nothing is taken off for it; let it come to rest and repeat.':
    'Die Oberseite ist {degrees} kälter als die Unterseite: {size}, das biegt Eisen um {bow} {way}. Dafür wird nichts abgezogen; zur Ruhe kommen lassen und wiederholen.',
  'The air is {degrees} warmer than the part. If that stands between its top and its bottom, {size}, it bows up to {bow}. Nothing is taken off for it; let it come to rest.':
    'Die Luft ist {degrees} wärmer als das Teil. Liegt das zwischen Ober- und Unterseite, {size}, biegt es sich bis zu {bow}. Dafür wird nichts abgezogen; zur Ruhe kommen lassen.',
  'The air is {degrees} colder than the part. If that stands between its top and its bottom, {size}, it bows up to {bow}. Nothing is taken off for it; let it come to rest.':
    'Die Luft ist {degrees} kälter als das Teil. Liegt das zwischen Ober- und Unterseite, {size}, biegt es sich bis zu {bow}. Dafür wird nichts abgezogen; zur Ruhe kommen lassen.',
  proud: 'nach oben',
  'Nothing checks these readings yet.': 'Noch prüft nichts diese Ablesungen.',
  'Nothing checks {names}.': '{names} prüft nichts.',
  'What is still to be read will.': 'Was noch abzulesen ist, wird es tun.',
  'Walk back over them.': 'Gehen Sie darüber zurück.',
  'Repeat the first station of each sweep at its end.':
    'Wiederholen Sie die erste Station jeder Fahrt an deren Ende.',
  'Sweep once more.': 'Fahren Sie noch einmal.',
  'The instrument was switched to {unit}. Switch it back, or say that you have seen it: its readings are converted.':
    'Das Gerät wurde auf {unit} umgestellt. Stellen Sie es zurück, oder sagen Sie, dass Sie es gesehen haben: Seine Ablesungen werden umgerechnet.',
  'Taken before it was steady: {names}. Repeat when it is quiet.':
    'Übernommen, bevor es ruhig war: {names}. Wiederholen, wenn Ruhe ist.',
  'Nobody has read {place}: read it, or a place that joins them.':
    '{place} hat niemand abgelesen: Lesen Sie es ab, oder eine Stelle, die sie verbindet.',
  'Read a place that joins them.': 'Lesen Sie eine Stelle ab, die sie verbindet.',
  "{names} can't be tied to the rest and is left out.":
    '{names} lässt sich nicht mit dem Rest verbinden und bleibt weg.',
  "{names} can't be tied to the rest and are left out.":
    '{names} lassen sich nicht mit dem Rest verbinden und bleiben weg.',
  'The straightedge was read in one position only: its own error is in these figures. Turn it and sweep again.':
    'Das Lineal wurde nur in einer Lage abgelesen: Sein eigener Fehler steckt in diesen Zahlen. Wenden und noch einmal fahren.',
  'The square was read in one position only: its own error is in these figures. Turn it and sweep again.':
    'Der Winkel wurde nur in einer Lage abgelesen: Sein eigener Fehler steckt in diesen Zahlen. Drehen und noch einmal fahren.',
  'The bar was read in one position only: its own error is in these figures. Turn it and sweep again.':
    'Der Prüfdorn wurde nur in einer Lage abgelesen: Sein eigener Fehler steckt in diesen Zahlen. Drehen und noch einmal fahren.',
  'The {name} was read in one position only: its own error is in these figures. Turn it and sweep again.':
    'Nur in einer Lage abgelesen ({name}): Der eigene Fehler steckt in diesen Zahlen. Drehen und noch einmal fahren.',

  // What a typed reading is doubted for
  '{text}, or send it again to take it as it is': '{text}, oder noch einmal senden, um sie so zu übernehmen',
  'see its point and its unit': 'Komma und Einheit ansehen',
  '{value} lies far from what was read so far, {from} to {to}':
    '{value} liegt weit von dem, was bisher abgelesen wurde, {from} bis {to}',
  'see where its point stands': 'ansehen, wo das Komma steht',
  'see whether it is inch or mm': 'ansehen, ob es Zoll oder mm ist',
  'see its sign': 'Vorzeichen ansehen',
  '{value} would fit: {cure}': '{value} würde passen: {cure}',
  'look at it again': 'noch einmal hinsehen',
  'less than the pins alone': 'weniger als die Stifte allein',
  'more than a level on two feet can read': 'mehr, als eine Wasserwaage auf zwei Füßen zeigen kann',
  'more than the tip can travel': 'mehr, als der Taster sich bewegen kann',

  // Notes of a result
  'Not tied to the rest yet and left out: {names}.':
    'Noch nicht mit dem Rest verbunden und weggelassen: {names}.',
  'The straightedge has not been turned yet: its own error is still in these figures.':
    'Das Lineal wurde noch nicht gewendet: Sein eigener Fehler steckt noch in diesen Zahlen.',
  'The square has not been turned yet: its own error is still in these figures.':
    'Der Winkel wurde noch nicht gedreht: Sein eigener Fehler steckt noch in diesen Zahlen.',
  'The bar has not been turned yet: its own error is still in these figures.':
    'Der Prüfdorn wurde noch nicht gedreht: Sein eigener Fehler steckt noch in diesen Zahlen.',
  'The {name} has not been turned yet: its own error is still in these figures.':
    'Noch nicht gedreht ({name}): Der eigene Fehler steckt noch in diesen Zahlen.',
  'A steady drift of the zero is taken off, by choice: {names}.':
    'Eine gleichmäßige Drift des Nullpunkts ist abgezogen, wie gewählt: {names}.',
  'Read with the level turned in mid-walk: {names}.':
    'Mit mitten im Gang umgeschlagener Wasserwaage abgelesen: {names}.',
  'The bar hangs down by {size} at its far station: the readings on top are corrected for that.':
    'Der Prüfdorn hängt an der fernen Station um {size} durch: Die Ablesungen oben sind dafür berichtigt.',
  'zero of {run}': 'Nullpunkt von {run}',
  'How far the reference level {name} went since the first take is taken off {count} readings, at matched times.':
    'Was die Bezugswaage {name} seit der ersten Ablesung gewandert ist, ist von {count} Ablesungen abgezogen, zu gleichen Zeiten.',
  'The {count} readings that lie across it stay as they are.':
    'Die {count} Ablesungen quer dazu bleiben, wie sie sind.',
  'No target was named: flat, lying as it likes, {bite} a pass was taken for the metal to scrape.':
    'Kein Ziel war genannt: Für die Schabarbeit gilt eben, frei liegend, {bite} je Durchgang.',
  'The target of fixed tilt is parallel to the motion.':
    'Das Ziel mit fester Neigung liegt parallel zur Bewegung.',
  'The target is flat, so its crown of {size} was left out of account.':
    'Das Ziel ist eben, also blieb seine Balligkeit von {size} außer Betracht.',
  '{name} needs over {count} passes: that is work for a machine, so no plan was made.':
    '{name} braucht über {count} Durchgänge: Das ist Arbeit für eine Maschine, darum wurde kein Plan gemacht.',
  'one reading of {names}': 'einer Ablesung von {names}',
  'one reading': 'einer Ablesung',
  'The standard deviation of {what} was not given; {unit} was assumed.':
    'Die Standardabweichung {what} war nicht angegeben; angenommen wurde {unit}.',
  'The readings agree to the last digit, so their scatter says nothing of their uncertainty.':
    'Die Ablesungen stimmen bis zur letzten Stelle überein, also sagt ihre Streuung nichts über ihre Unsicherheit.',
  'All uncertainties were scaled by s0 = {factor}, as the readings scatter with {count} degrees of freedom.':
    'Alle Unsicherheiten wurden mit s0 = {factor} skaliert, wie die Ablesungen mit {count} Freiheitsgraden streuen.',
  'there are fewer than {count} degrees of freedom to tell': 'es gibt weniger als {count} Freiheitsgrade',
  'some standard deviations are known': 'manche Standardabweichungen sind bekannt',
  'The uncertainties rest on that assumption and were not scaled: {why}.':
    'Die Unsicherheiten beruhen auf dieser Annahme und wurden nicht skaliert: {why}.',
  'The readings scatter {times} times as much as was assumed.':
    'Die Ablesungen streuen {times}-mal so stark wie angenommen.',
  'The readings scatter {times} times as much as their standard deviation says (χ² test, 95 %): there is a blunder among them, or it was taken too small. The uncertainties were not scaled.':
    'Die Ablesungen streuen {times}-mal so stark, wie ihre Standardabweichung sagt (χ²-Test, 95 %): Ein grober Fehler ist darunter, oder sie war zu klein angesetzt. Die Unsicherheiten wurden nicht skaliert.',
  'The curve of the horizon was taken out of the tilts: over {length} it is {size}, and it {why}.':
    'Die Erdkrümmung wurde aus den Neigungen herausgenommen: Auf {length} sind es {size}; Grund: {why}.',
  'reaches 1 µm here': 'sie erreicht hier 1 µm',
  'was asked for': 'sie war verlangt',
  'One reading was skipped.': 'Eine Ablesung wurde ausgelassen.',
  '{count} readings were skipped.': '{count} Ablesungen wurden ausgelassen.',
  'The slope of {names} runs away from its first station to both sides: begin a sweep at an end of the line.':
    'Die Neigung von {names} läuft von der ersten Station nach beiden Seiten weg: Beginnen Sie eine Fahrt an einem Ende der Linie.',
  'Nothing checks these readings: a wrong one would not show. Walk back, sweep again, or add readings that cross.':
    'Diese Ablesungen prüft nichts: Eine falsche fiele nicht auf. Gehen Sie zurück, fahren Sie noch einmal, oder fügen Sie kreuzende Ablesungen hinzu.',
  'Nothing checks these readings: {names}.': 'Diese Ablesungen prüft nichts: {names}.',
  'station {from} → {to}, walk "{walk}"': 'Station {from} → {to}, Gang „{walk}“',
  'station {station}, sweep "{sweep}"': 'Station {station}, Fahrt „{sweep}“',
  '{reading} reads {size} {unit} more than its neighbours agree with: wipe, repeat.':
    '{reading} zeigt {size} {unit} mehr, als zu den Nachbarn passt: abwischen, wiederholen.',
  '{reading} reads {size} {unit} less than its neighbours agree with: wipe, repeat.':
    '{reading} zeigt {size} {unit} weniger, als zu den Nachbarn passt: abwischen, wiederholen.',
  '{reading} reads {amount} than its neighbours agree with: wipe, repeat.':
    '{reading} zeigt {amount}, als zu den Nachbarn passt: abwischen, wiederholen.',
  'It may as well be {names}: the readings check only each other there.':
    'Es kann ebenso {names} sein: Die Ablesungen prüfen dort nur einander.',
  "The zero of {names} can't be told from a tilt of the whole surface: how level it lies stays open, its shape does not.":
    'Der Nullpunkt von {names} ist nicht von einer Neigung der ganzen Fläche zu trennen: Wie waagrecht sie liegt, bleibt offen, ihre Form nicht.',
  'The level was turned end for end, but each walk has a zero of its own: if it stayed the same, naming it as shared would tell.':
    'Die Wasserwaage wurde umgeschlagen, aber jeder Gang hat seinen eigenen Nullpunkt: Blieb er gleich, so wäre er als gemeinsamer zu nennen.',
  'A walk that shares this zero with the level turned end for end would tell.':
    'Ein Gang mit demselben Nullpunkt und umgeschlagener Wasserwaage würde es zeigen.',
  'No reading ties the lines to each other: each stands against its own reference.':
    'Keine Ablesung verbindet die Linien miteinander: Jede gilt gegen ihren eigenen Bezug.',
  'The heights of all stations are over their least-squares plane.':
    'Die Höhen aller Stationen gelten über ihrer ausgleichenden Ebene.',
  'The heights of all stations are over their minimum-zone plane.':
    'Die Höhen aller Stationen gelten über der Ebene ihrer kleinsten Zone.',
  'The heights of all stations are over their {what} plane; each line by itself has its own reference.':
    'Die Höhen aller Stationen gelten über ihrer Ebene ({what}); jede Linie für sich hat ihren eigenen Bezug.',
  'The heights of all stations are over their {what} plane.':
    'Die Höhen aller Stationen gelten über ihrer Ebene ({what}).',
  'least-squares': 'kleinste Quadrate',
  'minimum-zone': 'kleinste Zone',
  'each line by itself has its own reference': 'jede Linie für sich hat ihren eigenen Bezug',
  'Wind: corner {corner} stands in the plane of the other three, sure to {size}.':
    'Windschiefe: Ecke {corner} steht in der Ebene der anderen drei, sicher auf {size}.',
  'Wind: corner {corner} stands in the plane of the other three, {sure}.':
    'Windschiefe: Ecke {corner} steht in der Ebene der anderen drei, {sure}.',
  'Wind: corner {corner} stands {size} HIGH of the plane of the other three, {sure}.':
    'Windschiefe: Ecke {corner} steht {size} HOCH über der Ebene der anderen drei, {sure}.',
  'Wind: corner {corner} stands {size} LOW of the plane of the other three, {sure}.':
    'Windschiefe: Ecke {corner} steht {size} TIEF unter der Ebene der anderen drei, {sure}.',
  'Wind: corner {corner} stands {size} µm {where} of the plane of the other three, {sure}.':
    'Windschiefe: Ecke {corner} steht {size} µm {where} zur Ebene der anderen drei, {sure}.',
  'The sizes tell how parallel the two flanks are; they cannot tell which flank is at fault.':
    'Die Maße sagen, wie parallel die beiden Flanken sind; sie können nicht sagen, welche Flanke schuld ist.',
  'The width across the sharp corners is the size over the pins less {size}.':
    'Die Breite über die scharfen Kanten ist das Maß über die Stifte weniger {size}.',
  'The width across the sharp corners is the size between the pins plus {size}.':
    'Die Breite über die scharfen Kanten ist das Maß zwischen den Stiften plus {size}.',
  'The width across the sharp corners is the size {where} the pins less {size}.':
    'Die Breite über die scharfen Kanten ist das Stiftmaß ({where}) weniger {size}.',
  'The width across the sharp corners is the size {where} the pins plus {size}.':
    'Die Breite über die scharfen Kanten ist das Stiftmaß ({where}) plus {size}.',
  'By hand columns (Moody): the centre line along {along}, the one across {across}, and the plate is {size} over the plane of its diagonals. There the centre lines only check; the joint adjustment takes every reading into the heights, and so is surer.':
    'Von Hand gerechnet (Moody): die Mittellinie längs {along}, die quer {across}, und die Platte liegt um {size} über der Ebene ihrer Diagonalen. Dort prüfen die Mittellinien nur; die gemeinsame Ausgleichung nimmt jede Ablesung in die Höhen und ist darum sicherer.',
  'closes {size} HIGH': 'schließt {size} HOCH',
  'closes {size} LOW': 'schließt {size} TIEF',
  'closes {size} level': 'schließt {size} eben',
  'closes {size} {where}': 'schließt {size} {where}',
  'edge droop': 'hängende Kanten',
  'raised edge': 'aufgeworfene Kanten',
  saddle: 'sattelförmig',
  twisted: 'verwunden',
  dished: 'gemuldet',
  domed: 'gewölbt',
  'Shape: flat, nothing stands out of the plane by more than its own uncertainty.':
    'Form: eben, nichts steht um mehr als seine eigene Unsicherheit aus der Ebene.',
  'Shape: uneven, no simple shape explains half of it.':
    'Form: uneben, keine einfache Form erklärt die Hälfte davon.',
  'Shape: {word}, the border stands {size} µm {where} of the inside.':
    'Form: {word}, der Rand steht {size} µm {where} gegen das Innere.',
  'Shape: {word}, the border stands {size} {where} of the inside.':
    'Form: {word}, der Rand steht {size} {where} gegen das Innere.',
  'Shape: {word}; the middle stands {along} {first} along and {across} {second} across, the corners wind by {wind}.':
    'Form: {word}; die Mitte steht längs {along} {first} und quer {across} {second}, die Ecken sind um {wind} windschief.',
  'Shape: {word}; the middle stands {along} µm {first} along and {across} µm {second} across, the corners wind by {wind}.':
    'Form: {word}; die Mitte steht längs {along} µm {first} und quer {across} µm {second}, die Ecken sind um {wind} windschief.',
  'The stations lie on one line in plan, so this is a line and no plate, and has no grade.':
    'Die Stationen liegen im Grundriss auf einer Geraden, also ist das eine Linie und keine Platte, und hat keine Güte.',
  'Grade: none for certain ({flatness}; B allows {limit}) by GGG-P-463c / ASME B89.3.7, on the {diagonal} diagonal of the stations.':
    'Güte: keine sicher ({flatness}; B erlaubt {limit}) nach GGG-P-463c / ASME B89.3.7, auf der {diagonal}-Diagonale der Stationen.',
  'Grade: {grade} ({flatness}; it allows {limit}) by GGG-P-463c / ASME B89.3.7, on the {diagonal} diagonal of the stations.':
    'Güte: {grade} ({flatness}; erlaubt sind {limit}) nach GGG-P-463c / ASME B89.3.7, auf der {diagonal}-Diagonale der Stationen.',
  'by GGG-P-463c / ASME B89.3.7, on the {diagonal} diagonal of the stations':
    'nach GGG-P-463c / ASME B89.3.7, auf der {diagonal}-Diagonale der Stationen',
  'Grade: none for certain ({flatness}; B allows {limit}) {by}.':
    'Güte: keine sicher ({flatness}; B erlaubt {limit}) {by}.',
  'Grade: {grade} ({flatness}; it allows {limit}) {by}.':
    'Güte: {grade} ({flatness}; erlaubt sind {limit}) {by}.',
  'minimum zone {size}': 'kleinste Zone {size}',
  'Out of square by {size} over {length} ({seconds} arc seconds), {sure}.':
    'Abweichung vom rechten Winkel {size} auf {length} ({seconds} Bogensekunden), {sure}.',
  '"{run}": the level was turned in mid-walk and no place was read both ways, so its zero can\'t be told from a kink there. Read {place} once more as the level faces now, or walk back.':
    '„{run}“: Die Wasserwaage wurde mitten im Gang umgeschlagen und keine Stelle in beiden Lagen abgelesen, also ist ihr Nullpunkt nicht von einem Knick dort zu trennen. Lesen Sie {place} noch einmal ab, wie die Wasserwaage jetzt liegt, oder gehen Sie zurück.',
  'Swept on without a stop: {names}.': 'Ohne Halt durchgefahren: {names}.',
  'Each station is the mean of the readings around the moment at which it was passed, and as uncertain as these scatter.':
    'Jede Station ist das Mittel der Ablesungen um den Augenblick, in dem sie passiert wurde, und so unsicher, wie diese streuen.',
};
