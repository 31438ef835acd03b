import { WayscribeError } from '../../shared/errors.ts';
import type { Command } from '../../shared/messages.ts';
import { saidOf } from '../../shared/session/conditions.ts';
import { linesThatTellDrift } from '../../shared/session/drift-choice.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';

/** Commands by which a person says something of the survey, and nothing is read. */
export type SayingCommand = Extract<
  Command,
  {
    do:
      | 'void'
      | 'aim'
      | 'skip'
      | 'note'
      | 'print'
      | 'conditions'
      | 'hands-free'
      | 'run'
      | 'take-drift-off'
      | 'turned'
      | 'acknowledge-unit';
  }
>;

/**
 * The event by which what was said goes on record; null when there is nothing to record.
 * @throws WayscribeError `take.place` for what is not in the survey, `command.refused` for what makes no sense now
 */
export function eventOf(command: SayingCommand, session: Session): NewEvent | null {
  switch (command.do) {
    case 'void': {
      const take = session.takes.find(({ event }) => event.seq === command.take);
      if (take && take.out === undefined) return { type: 'void', take: command.take, reason: command.reason };
      throw new WayscribeError('take.place', `take ${command.take}`, 'there is no such take that counts');
    }
    case 'aim':
      return { type: 'aim', place: planned(command.place, session) };
    case 'skip':
      return { type: 'skip', place: planned(command.place, session), reason: command.reason };
    case 'note': {
      const { text, place } = command;
      return { type: 'note', text, ...(place && { place }) };
    }
    case 'print': {
      const { do: _, ...print } = command;
      const names = new Set(session.plan.stations.map(({ name }) => name));
      const unknown = Object.keys(print.stations).find((name) => !names.has(name));
      if (unknown === undefined) return { type: 'print', ...print };
      throw new WayscribeError('take.place', unknown, 'is no station of this survey');
    }
    case 'conditions':
      return { type: 'conditions', ...saidOf(command) };
    case 'take-drift-off':
      if (!command.off || linesThatTellDrift(session).length > 0) return { type: 'drift', off: command.off };
      throw new WayscribeError(
        'command.refused',
        'drift',
        'a drift can’t be told from a bow here',
        'walk a line out and back with the level facing alike',
      );
    case 'turned': {
      const run = session.next && session.runs.find(({ id }) => id === session.next!.run);
      if (run?.reads === 'tilt') return { type: 'turned', run: run.id, on: session.turnedRun !== run.id };
      throw new WayscribeError('command.refused', 'level', 'no level is walked now', 'read on');
    }
    case 'hands-free':
      return { type: 'hands-free', on: command.on };
    case 'run': {
      const { run, on } = command;
      if (session.plan.runs.some(({ id }) => id === run)) return { type: 'run', run, on };
      throw new WayscribeError('take.place', run, 'is no run of this survey');
    }
    case 'acknowledge-unit': {
      const { unitAlarm: unit, setup } = session;
      return unit === null ? null : { type: 'unit', from: setup.instrument.name, unit, acknowledged: true };
    }
  }
}

function planned(place: Placement, session: Session): Placement {
  const key = placementKey(place);
  if (session.placements.some((other) => placementKey(other) === key)) return place;
  throw new WayscribeError('take.place', key, 'is no placement of this survey');
}
