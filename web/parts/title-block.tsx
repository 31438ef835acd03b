import { surveying } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { titleBlock } from '../words/title-block.ts';

/** The title block: also the place to tap when conditions have changed. */
export function TitleBlock() {
  const page = usePage();
  const session = usePick((state) => state.session);
  const replay = usePick((state) => state.replay !== null);
  const open = usePick(surveying);
  if (!session) return null;
  const cells = titleBlock(session, replay);
  return (
    <details class="title-fold" open={!matchMedia('(max-width: 520px)').matches}>
      <summary translate={false}>{`${session.setup.part}, ${session.setup.surface}`}</summary>
      <button
        type="button"
        class="title-block"
        disabled={!open}
        title={open ? 'Press to change the conditions' : undefined}
        data-testid="title-block"
        onClick={() => page.point({ at: 'conditions' })}
      >
        {cells.map(({ caption, value, own }) => (
          <span key={caption}>
            <span class="caption">{`${caption} `}</span>
            <span class="value" title={value} {...(own && { translate: false })}>
              {value}
            </span>
          </span>
        ))}
      </button>
    </details>
  );
}
