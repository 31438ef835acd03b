import { Command } from 'commander';
import { type VerifyReport, verifyRecording } from '../recording/verify.ts';

/** `wayscribe verify FILE`: exit status 0 when nothing is wrong, 1 when something is. */
export function verifyCommand(): Command {
  return new Command('verify')
    .description('prove that a recording is as it was written')
    .argument('<file>', 'a recording')
    .action(async (file: string) => {
      const report = await verifyRecording(file);
      console.log(verifySentences(report).join('\n'));
      if (report.problems.length > 0) process.exitCode = 1;
    });
}

/** The report in plain sentences, one a line. */
export function verifySentences(report: VerifyReport): string[] {
  const { problems, more, lines, seq, closed, link } = report;
  const found = problems.map(({ line, seq, what }) => {
    return `Line ${line}${seq === undefined ? '' : ` (number ${seq})`}: ${what}.`;
  });
  if (more > 0) found.push(`${more} more lines are not as they were written.`);
  if (found.length === 0)
    found.push('Every line is as it was written, and every take is the mean of its readings.');
  const end = closed
    ? 'It is closed: its last line is the end of the session.'
    : 'It is open, not closed: whether lines were cut off at the end, nothing in the file can tell.';
  return [...found, `${lines} lines, ${seq} events. ${end}`, `Link of the last sound line: ${link}`];
}
