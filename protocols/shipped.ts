import { ProfileBook } from './book.ts';
import { type Profile, profileSchema } from './profile.ts';
import askDecimal from './profiles/ask-decimal.json' with { type: 'json' };
import bcdNibbles from './profiles/bcd-nibbles.json' with { type: 'json' };
import bcdNibblesHex from './profiles/bcd-nibbles-hex.json' with { type: 'json' };
import columnsComma from './profiles/columns-comma.json' with { type: 'json' };
import columnsTab from './profiles/columns-tab.json' with { type: 'json' };
import decimalUnitStatus from './profiles/decimal-unit-status.json' with { type: 'json' };
import jsonLine from './profiles/json-line.json' with { type: 'json' };
import labelledChannels from './profiles/labelled-channels.json' with { type: 'json' };
import lineDecimal from './profiles/line-decimal.json' with { type: 'json' };
import modbusFloat from './profiles/modbus-float.json' with { type: 'json' };
import modbusInt16 from './profiles/modbus-int16.json' with { type: 'json' };
import nmeaXdr from './profiles/nmea-xdr.json' with { type: 'json' };
import scpiVolts from './profiles/scpi-volts.json' with { type: 'json' };
import sumFrame from './profiles/sum-frame.json' with { type: 'json' };

/** The profiles that come with the program. */
const shippedBook = new ProfileBook(
  [
    lineDecimal,
    askDecimal,
    decimalUnitStatus,
    labelledChannels,
    columnsComma,
    columnsTab,
    jsonLine,
    bcdNibbles,
    bcdNibblesHex,
    nmeaXdr,
    scpiVolts,
    modbusFloat,
    modbusInt16,
    sumFrame,
  ].map((data) => profileSchema.parse(data)),
);

/** The shipped profiles alone. */
export const shippedProfiles: readonly Profile[] = shippedBook.all;

/**
 * The shipped profile of that id.
 * @throws WayscribeError `profile.invalid` when there is none
 */
export function findProfile(id: string): Profile {
  return shippedBook.find(id);
}
