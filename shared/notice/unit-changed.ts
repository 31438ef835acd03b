import type { Session } from '../session/fold.ts';
import type { Notice } from './notice.ts';

/** The instrument was switched to another unit: nothing is taken until somebody has said so. */
export function unitChanged({ unitAlarm, next }: Session): Notice[] {
  if (unitAlarm === null) return [];
  return [
    {
      code: 'unit-changed',
      text: `The instrument was switched to ${unitAlarm}. Switch it back, or say that you have seen it: its readings are converted.`,
      ...(next && { place: next }),
      warns: true,
    },
  ];
}
