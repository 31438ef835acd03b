import { useEffect, useRef, useState } from 'preact/hooks';
import type { Invite, PairedDevice } from '../../shared/api.ts';
import { askDevices, invite, revoke } from '../state/devices.ts';
import { usePage, usePick } from '../state/page.ts';
import { deviceWords } from '../words/device.ts';
import { dateText } from '../words/quantity.ts';
import { say } from '../words/say.ts';
import { Control, Row } from './control.tsx';

/** Devices in the network that may control, over the sheet: let one more in, or put one out. */
export function Devices() {
  const open = usePick((state) => state.devices);
  return open ? <DeviceList /> : null;
}

function DeviceList() {
  const page = usePage();
  const dialog = useRef<HTMLDialogElement>(null);
  const [devices, setDevices] = useState<readonly PairedDevice[] | null>([]);
  const [invited, setInvited] = useState<Invite | null>(null);
  useEffect(() => {
    dialog.current?.showModal();
    void askDevices().then(setDevices);
  }, []);
  // While a code is shown, the device that takes it appears by itself, and the code goes.
  useEffect(() => {
    if (!invited) return;
    const before = devices?.length ?? 0;
    const look = async () => {
      const now = await askDevices();
      setDevices(now);
      if ((now?.length ?? 0) > before) setInvited(null);
    };
    const asking = setInterval(() => void look(), 2000);
    return () => clearInterval(asking);
  }, [invited]);
  return (
    <dialog
      ref={dialog}
      class="devices"
      aria-labelledby="devices-title"
      data-testid="devices-list"
      onClose={() => page.change({ devices: false })}
    >
      <h2 id="devices-title">{say('Devices that may control')}</h2>
      {devices === null && <p class="wrong">{say('The list of devices could not be read.')}</p>}
      {devices?.length === 0 && <p class="soft">{say('None was paired. Every device may watch.')}</p>}
      <ul>
        {devices?.map(({ id, name, since }) => (
          <li key={id}>
            <span>
              {say('{device}, paired on {date}', { device: deviceWords(name), date: dateText(since) })}
            </span>
            <button type="button" class="small" onClick={() => void revoke(id).then(setDevices)}>
              {say('Take control away')}
            </button>
          </li>
        ))}
      </ul>
      {invited && <Invitation invited={invited} />}
      <Row>
        <Control
          word={say('Pair a device')}
          hint={say('one, within ten minutes')}
          kind="main"
          testId="invite"
          onClick={() => void invite().then(setInvited)}
        />
        <Control word={say('Close')} hint={say('escape')} apart onClick={() => dialog.current?.close()} />
      </Row>
    </dialog>
  );
}

function Invitation({ invited }: { invited: Invite }) {
  if (invited.invites.length === 0) {
    return <p class="wrong">{say('This computer has no address in a network.')}</p>;
  }
  return (
    <div class="invites" data-testid="invites">
      {invited.invites.map(({ url, qr }) => (
        <figure key={url}>
          <img
            src={`data:image/svg+xml,${encodeURIComponent(qr)}`}
            width="220"
            height="220"
            alt={say('Code to scan with the camera of the device')}
          />
          <figcaption>
            {say('Scan it with the device, or open there')} <code>{url}</code>
          </figcaption>
        </figure>
      ))}
      <p class="soft">
        {say('The code works once. Nothing is encrypted on the way: who can listen in can read along.')}
      </p>
    </div>
  );
}
