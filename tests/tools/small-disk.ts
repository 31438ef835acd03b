import { spawnSync } from 'node:child_process';
import { onTestFinished } from 'vitest';

/** Mounts a disk in memory on a folder until the test is over; false where that is not allowed (only root on Linux may). */
export function mountSmallDisk(folder: string, options: string): boolean {
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder]).status === 0;
  if (mounted) onTestFinished(() => void spawnSync('umount', ['-l', folder]));
  return mounted;
}
