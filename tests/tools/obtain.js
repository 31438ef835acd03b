// Makes sure of what the tests need beyond npm: socat for pseudo-terminals, Chromium for the page, Mosquitto for
// publishing.
// On Debian as root it installs them; elsewhere it prints the one line to run, and ends with status 1.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NEEDED = ['socat', 'chromium', 'mosquitto'];

/** Where a person's own path may not look, but services are. */
const SYSTEM_FOLDERS = ['/usr/sbin', '/usr/local/sbin'];

/** How to install on other systems, by the tool that they have. */
const INSTALLERS = { 'apt-get': 'install -y --no-install-recommends', dnf: 'install -y', brew: 'install' };

function has(program) {
  return [...(process.env.PATH ?? '').split(delimiter), ...SYSTEM_FOLDERS].some((folder) => {
    try {
      accessSync(join(folder, program), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

function isDebian() {
  try {
    return /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

function aptGet(...args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync('apt-get', args, { env, stdio: ['ignore', 'inherit', 'inherit'] }).status === 0;
}

function howToInstall(missing) {
  const tool = Object.keys(INSTALLERS).find(has);
  if (!tool) return 'Install them with the packages of this system.';
  const sudo = tool === 'brew' || process.getuid?.() === 0 ? '' : 'sudo ';
  return `Run: ${sudo}${tool} ${INSTALLERS[tool]} ${missing.join(' ')}`;
}

const missing = NEEDED.filter((program) => !has(program));
if (missing.length > 0 && isDebian() && process.getuid?.() === 0) {
  console.log(`The tests need ${missing.join(' and ')}: installing.`);
  const install = ['install', '-y', '--no-install-recommends', ...missing];
  // A fresh machine has no package lists yet, an old one has stale ones.
  aptGet('update') && aptGet(...install);
}
const stillMissing = missing.filter((program) => !has(program));
if (stillMissing.length > 0) {
  console.error(`The tests need ${stillMissing.join(' and ')}. ${howToInstall(stillMissing)}`);
  process.exitCode = 1;
}
