import type { Proving } from '../../../shared/proving/proving.ts';
import { signOf } from '../../../shared/proving/sign.ts';
import { sigmaOf } from '../../../shared/proving/spread.ts';
import { anotherPort } from '../../setup/setup-form.ts';
import { recall, remember } from '../../state/preferences.ts';
import { type Kind, kindWords } from '../../words/kinds.ts';

/** Puts an instrument that was proved into the set-up forms of the surveys that it can do. */
export function putInSetups(proving: Proving): void {
  const { name, reads, source, port, profile, unit, graduation, by } = proving;
  const fields = {
    name,
    source,
    port: port === undefined ? '' : anotherPort,
    portPath: port ?? '',
    profile: profile ?? '',
    unit,
    graduation: String(graduation),
    sigma: String(sigmaOf(proving)?.value ?? ''),
    ...(reads === 'height' && { plus: signOf(proving) === -1 ? 'low' : 'high' }),
    ...(by && { operator: by }),
  };
  const { kind, forms = {} } = recall();
  const kinds = (Object.keys(kindWords) as Kind[]).filter((each) => kindWords[each].reads === reads);
  const changed = Object.fromEntries(kinds.map((each) => [each, { ...forms[each], ...fields }]));
  const fit = kinds.find((each) => each === kind) ?? kinds[0]!;
  remember({ kind: fit, forms: { ...forms, ...changed } });
}
