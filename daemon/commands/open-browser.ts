import { spawn } from 'node:child_process';

/** Opens a page in the browser of the person who sits here, if there is a desktop. Never fails. */
export function openBrowser(url: string): void {
  const opener = openerOf(process.platform, process.env);
  if (!opener) return;
  const [program, ...args] = opener;
  const child = spawn(program, [...args, url], { detached: true, stdio: 'ignore' });
  child.on('error', () => {});
  child.unref();
}

/** The program that opens a page on this system; null where nobody would see it. */
function openerOf(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): [string, ...string[]] | null {
  if (env.CI) return null;
  if (platform === 'darwin') return ['open'];
  // `start` is part of the shell, and takes its first quoted argument for a title.
  if (platform === 'win32') return ['cmd', '/c', 'start', '""'];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ['xdg-open'] : null;
}
