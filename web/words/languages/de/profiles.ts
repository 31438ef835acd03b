import type { Language } from '../../phrasebook.ts';

/** How instruments talk: the titles of their profiles. */
export const profiles: Language = {
  'Answers one signed decimal with its unit when asked':
    'Antwortet auf Anfrage mit einer Dezimalzahl und ihrer Einheit',
  'Thirteen BCD half bytes of a gauge, as hex digits on a line':
    'Dreizehn BCD-Halbbytes eines Messgeräts, als Hex-Ziffern in einer Zeile',
  'Thirteen BCD half bytes of a gauge, packed into seven bytes':
    'Dreizehn BCD-Halbbytes eines Messgeräts, gepackt in sieben Bytes',
  'Columns on a line with a comma between: two slopes and a temperature':
    'Spalten einer Zeile mit Komma dazwischen: zwei Neigungen und eine Temperatur',
  'Columns on a line with a tab between: two slopes and a temperature':
    'Spalten einer Zeile mit Tabulator dazwischen: zwei Neigungen und eine Temperatur',
  'Signed decimal with a unit and a status letter': 'Dezimalzahl mit Vorzeichen, Einheit und Statusbuchstabe',
  'A JSON object a line, as home-built readouts send it':
    'Ein JSON-Objekt je Zeile, wie selbst gebaute Anzeigen es senden',
  'Several channels on a line, each behind its label':
    'Mehrere Kanäle in einer Zeile, jeder hinter seinem Kürzel',
  'Signed decimal, one a line, sent by itself':
    'Dezimalzahl mit Vorzeichen, eine je Zeile, von selbst gesendet',
  'Modbus RTU tilt sensor: two input registers, one 32-bit float in degrees':
    'Modbus-RTU-Neigungssensor: zwei Eingangsregister, eine 32-Bit-Gleitkommazahl in Grad',
  'Modbus RTU tilt sensor: two axes, one 16-bit input register each, 0.001 degree':
    'Modbus-RTU-Neigungssensor: zwei Achsen, je ein 16-Bit-Eingangsregister, 0.001 Grad',
  'NMEA 0183 transducer sentence: pitch and roll in degrees, with checksum':
    'NMEA-0183-Gebersatz: Nicken und Rollen in Grad, mit Prüfsumme',
  'Bench instrument asked for volts by SCPI, reading an analogue gauge':
    'Tischgerät, über SCPI nach Volt gefragt, an einem analogen Messgerät',
  'Fixed frame of characters between a start byte and an eight-bit sum':
    'Fester Zeichenblock zwischen Startbyte und Acht-Bit-Summe',
};
