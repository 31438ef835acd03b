import type { SessionEvent, TakeEvent } from '../../shared/session/events.ts';

type Reading = Extract<SessionEvent, { type: 'reading' }>;

const TOLERANCE = 1e-9;
/** A take averages the last few seconds; what lies further back is let go, so that memory stays bounded. */
const READINGS_KEPT = 1 << 16;

/** Computes every take anew from the readings that it names. */
export class TakeCheck {
  #readings: Reading[] = [];
  /** Readings before this number are in doubt. */
  #soundFrom = 0;
  #doubted = false;

  /** What is wrong with a take; null when nothing is known to be, and for every other event. */
  check(event: SessionEvent): string | null {
    if (this.#doubted) this.#soundFrom = event.seq;
    this.#doubted = false;
    if (event.type === 'reading') this.#keep(event);
    return event.type === 'take' && event.readings && event.readings[0] >= this.#soundFrom
      ? this.#checkTake(event, event.readings)
      : null;
  }

  /** Lines before this were changed or are missing: what the takes that rest on them say is not judged. */
  doubt(): void {
    this.#doubted = true;
  }

  #keep(reading: Reading): void {
    if (this.#readings.length === 2 * READINGS_KEPT) this.#readings = this.#readings.slice(READINGS_KEPT);
    this.#readings.push(reading);
  }

  #checkTake(take: TakeEvent, [first, last]: [number, number]): string | null {
    const values: number[] = [];
    for (let k = this.#readings.length - 1; k >= 0; k -= 1) {
      const reading = this.#readings[k]!;
      if (reading.seq < first) break;
      if (reading.seq > last || reading.from !== take.from || (reading.state ?? 'ok') !== 'ok') continue;
      if (reading.value !== null) values.push(reading.value);
    }
    if (values.length !== take.count) {
      return `the take says that it averages ${take.count} readings; numbers ${first} to ${last} hold ${values.length}`;
    }
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const scale = values.reduce((most, value) => Math.max(most, Math.abs(value)), Math.abs(take.value));
    if (Math.abs(mean - take.value) <= TOLERANCE * scale) return null;
    return `the take says ${take.value}; its readings ${first} to ${last} give ${mean}`;
  }
}
