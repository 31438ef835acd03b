import { provedOf } from '../../../shared/proving/instruments.ts';
import type { Proving } from '../../../shared/proving/proving.ts';
import { provedFields } from '../../setup/proved-fields.ts';
import { recall, remember } from '../../state/preferences.ts';
import { type Kind, kindWords } from '../../words/kinds.ts';

/** Puts an instrument that was proved into the set-up forms of the surveys that it can do. */
export function putInSetups(proving: Proving): void {
  const fields = provedFields(provedOf(proving, 0, ''));
  const { kind, forms = {} } = recall();
  const kinds = (Object.keys(kindWords) as Kind[]).filter((each) => kindWords[each].reads === proving.reads);
  const changed = Object.fromEntries(kinds.map((each) => [each, { ...forms[each], ...fields }]));
  const fit = kinds.find((each) => each === kind) ?? kinds[0]!;
  remember({ kind: fit, forms: { ...forms, ...changed } });
}
