import { ReadlineParser } from '@serialport/parser-readline';
import { SerialPort } from 'serialport';
import { WebSocketServer } from 'ws';

/** The least that could be done, to compare with: port → lines → WebSocket, nothing checked, nothing kept. */
const [, , path = ''] = process.argv;
const port = new SerialPort({ path, baudRate: 9600, autoOpen: false });
const lines = port.pipe(new ReadlineParser({ delimiter: '\r\n', encoding: 'latin1' }));
const server = new WebSocketServer({ port: 0, host: '127.0.0.1' }, () => {
  const address = server.address();
  port.open(() => console.log(`ws://127.0.0.1:${typeof address === 'object' && address?.port}/`));
});
lines.on('data', (raw: string) => {
  const text = JSON.stringify({ raw, value: Number(raw), t: Date.now(), m: performance.now() });
  for (const page of server.clients) page.send(text);
});
