import { SerialPort } from 'serialport';
import { WayscribeError } from '../../shared/errors.ts';
import { systemPorts } from './hang-up.ts';
import { type OpenPort, type PortMaker, stampNow } from './port.ts';

/** What a real port is made of; a test puts the library's own mock here. */
type SerialPortClass = new (
  options: ConstructorParameters<typeof SerialPort>[0],
) => Pick<SerialPort, 'open' | 'on' | 'set' | 'flush' | 'write' | 'close' | 'isOpen'>;

/** Ports of this computer: the only place that knows the serial library's port class. */
export function realPort(path: string, Port: SerialPortClass = SerialPort): PortMaker {
  return {
    path,
    open: (line, listener) =>
      new Promise<OpenPort>((resolve, reject) => {
        const { baudRate, dataBits, parity, stopBits } = line;
        // Without hupcl the control lines are left alone: on some instruments they mean "reset".
        const port = new Port({
          ...(Port === SerialPort && { binding: systemPorts }),
          ...{ path, baudRate, dataBits, parity, stopBits, hupcl: false, autoOpen: false },
        });
        // What waited in the port before it was opened tells of no time that is known.
        let fresh = false;
        port.on('data', (bytes: Buffer) => void (fresh && listener.data(bytes, stampNow())));
        port.on('close', (error: Error | null) => listener.closed(error));
        // A fault of an open port also ends in `close`; without a listener it would end the process.
        port.on('error', () => {});
        port.open((error) => {
          if (error) return reject(openError(path, error));
          if (line.dtr !== undefined || line.rts !== undefined) {
            // The system raises both lines when it opens a port, and the library can only write both at once: one that
            // the profile does not name stays raised, as the system left it. Pseudo-terminals have no control lines;
            // an instrument that needs them stays silent and is seen so.
            port.set({ dtr: line.dtr ?? true, rts: line.rts ?? true }, () => {});
          }
          // A port that cannot be emptied is used all the same.
          port.flush(() => {
            fresh = true;
            resolve({
              write: (bytes) => void port.write(Buffer.from(bytes, 'latin1')),
              close: () => new Promise((done) => (port.isOpen ? port.close(() => done()) : done())),
            });
          });
        });
      }),
  };
}

/** The library tells open errors as text only; here they become codes with a remedy. */
export function openError(path: string, error: Error): WayscribeError {
  const text = error.message;
  if (/no such file|cannot find|not found|ENOENT|ENXIO|no such device/i.test(text)) {
    return new WayscribeError(
      'port.absent',
      path,
      'the port is not there',
      'plug the cable in; it is waited for',
    );
  }
  if (/permission denied|EACCES|access is denied/i.test(text)) {
    return new WayscribeError(
      'port.denied',
      path,
      'this user may not open the port',
      'on Linux: sudo usermod -aG dialout $USER, then log out and in again',
    );
  }
  if (/lock|busy|EBUSY|resource temporarily unavailable|access denied/i.test(text)) {
    return new WayscribeError(
      'port.busy',
      path,
      'another program holds the port',
      'close that program; it is tried again by itself',
    );
  }
  return new WayscribeError('port.failed', path, text, 'unplug the adapter and plug it in again');
}
