import type { Language } from '../../phrasebook.ts';
import { daemon } from './daemon.ts';
import { job } from './job.ts';
import { notices } from './notices.ts';
import { page } from './page.ts';
import { practice } from './practice.ts';
import { profiles } from './profiles.ts';
import { proving } from './proving.ts';
import { refusals } from './refusals.ts';
import { result } from './result.ts';
import { setup } from './setup.ts';
import { survey } from './survey.ts';
import { turnedParts } from './turned-parts.ts';
import { verdicts } from './verdicts.ts';

/**
 * German, in files by where a text is met. The English text is the key. The words of the trade (Schaben, Führungsbahn,
 * Wasserwaage, Messuhr, Umschlag, Windschiefe, Tuschieren) are common practice, no source.
 */
export const de: Language = {
  ...daemon,
  ...refusals,
  ...page,
  ...setup,
  ...survey,
  ...result,
  ...notices,
  ...practice,
  ...profiles,
  ...proving,
  ...turnedParts,
  ...verdicts,
  ...job,
};
