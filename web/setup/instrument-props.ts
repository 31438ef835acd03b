import type { ChosenPort } from '../parts/proving/alike-ports.ts';
import type { FieldsProps } from './entries.tsx';
import type { SetupForm } from './fields.ts';
import type { Plugged } from './plugged.ts';

/** What the fields of the instrument need beside the form. */
export interface InstrumentFieldsProps extends FieldsProps {
  readonly plugged: Plugged;
  /** Takes over many fields at once. */
  fill(part: Partial<SetupForm>): void;
  /** Adapters are alike: the person finds the instrument by moving it. */
  onFind(ports: readonly ChosenPort[]): void;
}
