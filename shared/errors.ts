/** Every error that a person may meet has one of these codes. Area first, reason second. */
export type ErrorCode =
  | 'sheet.invalid'
  | 'sheet.unknownStation'
  | 'sheet.notASheet'
  | 'sheet.tooLarge'
  | 'adjust.notTied'
  | 'adjust.notDetermined'
  | 'units.unknown'
  | 'recording.invalid'
  | 'recording.broken'
  | 'recording.locked'
  | 'recording.full'
  | 'recording.unwritable'
  | 'recording.notFound'
  | 'job.invalid'
  | 'job.broken'
  | 'job.notFound'
  | 'job.exists'
  | 'lesson.invalid'
  | 'instruments.invalid'
  | 'port.absent'
  | 'port.alike'
  | 'port.busy'
  | 'port.denied'
  | 'port.failed'
  | 'profile.invalid'
  | 'take.noSession'
  | 'take.silent'
  | 'take.unsteady'
  | 'take.state'
  | 'take.notReArmed'
  | 'take.place'
  | 'take.farOff'
  | 'take.swept'
  | 'take.reference'
  | 'take.bounced'
  | 'take.unitChanged'
  | 'command.invalid'
  | 'command.notPaired'
  | 'command.refused'
  | 'publish.broken'
  | 'settings.invalid'
  | 'service.failed';

/**
 * The one error class. `place` says where (a path in a document, a port, a station), `message` what is
 * wrong there, `remedy` what would be right. The printed text is `place: message; remedy`.
 */
export class WayscribeError extends Error {
  readonly code: ErrorCode;
  readonly place: string;
  /** What is wrong, without the place and the remedy. */
  readonly detail: string;
  readonly remedy: string;

  constructor(code: ErrorCode, place: string, message: string, remedy = '') {
    super([place && `${place}: `, message, remedy && `; ${remedy}`].join(''));
    this.name = 'WayscribeError';
    this.code = code;
    this.place = place;
    this.detail = message;
    this.remedy = remedy;
  }
}

/** True when `error` is ours and carries `code` (any code when left out). */
export function isWayscribeError(error: unknown, code?: ErrorCode): error is WayscribeError {
  return error instanceof WayscribeError && (code === undefined || error.code === code);
}
