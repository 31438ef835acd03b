import { isIdentity } from '../../shared/proving/identity.ts';
import type { ProvedInstrument } from '../../shared/proving/instruments.ts';
import { twoDigits } from '../../shared/proving/spread.ts';
import type { SetupForm } from './fields.ts';
import { anotherPort } from './setup-form.ts';

/** What the form takes over of an instrument that was proved. */
export function provedFields({ sign, sigma, proving }: ProvedInstrument): Partial<SetupForm> {
  const { name, reads, source, port = '', profile = '', unit, graduation, by } = proving;
  return {
    name,
    source,
    ...(port === '' || isIdentity(port) ? { port, portPath: '' } : { port: anotherPort, portPath: port }),
    profile,
    unit,
    graduation: String(graduation),
    sigma: String(twoDigits(sigma)),
    ...(reads === 'height' && { plus: sign === -1 ? 'low' : 'high' }),
    ...(by && { operator: by }),
  };
}
