import { Command } from 'commander';

/** `wayscribe ports`: what an instrument could hang on. */
export function portsCommand(): Command {
  return new Command('ports').description('list the serial ports of this computer').action(async () => {
    const { listPorts } = await import('../ports/list.ts');
    const ports = await listPorts();
    if (ports.length === 0) {
      console.log('No serial port is found. Plug in the instrument or its adapter and ask again.');
      return;
    }
    const width = Math.max(...ports.map(({ path }) => path.length));
    for (const { path, label, serial } of ports) {
      console.log(`${path.padEnd(width)}  ${label}${serial ? `  serial number ${serial}` : ''}`);
    }
  });
}
