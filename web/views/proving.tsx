import { useEffect, useState } from 'preact/hooks';
import type { BenchStream, WantedPort } from '../../shared/messages.ts';
import { progressOf } from '../../shared/proving/progress.ts';
import { again, type Proving, stepsOf } from '../../shared/proving/proving.ts';
import { redeclared } from '../../shared/proving/redeclared.ts';
import { ActionStrip } from '../parts/action-strip.tsx';
import type { ChosenPort } from '../parts/proving/alike-ports.ts';
import { ChoosePorts } from '../parts/proving/choose-ports.tsx';
import { Declare } from '../parts/proving/declare.tsx';
import type { Declared } from '../parts/proving/declared.ts';
import { Outcome } from '../parts/proving/outcome.tsx';
import { ProveSteps } from '../parts/proving/prove-steps.tsx';
import { WatchPorts } from '../parts/proving/watch-ports.tsx';
import { WhichMoved } from '../parts/proving/which-moved.tsx';
import { usePage } from '../state/page.ts';

interface ProvingViewProps {
  /** The instrument was proved and is remembered: a survey may begin with it. */
  onUse(proving: Proving): void;
  onLeave(): void;
}

type Stage =
  | { readonly at: 'choose' | 'watch' | 'moved' }
  | { readonly at: 'find'; readonly proving: Proving }
  | { readonly at: 'declare'; readonly stream: BenchStream | null; readonly before: Said | null }
  | ({ readonly at: 'steps'; readonly stream: BenchStream | null } & Said);

/** What was said of an instrument as it was typed, and the proving that it began. */
interface Said {
  readonly form: Declared;
  readonly proving: Proving;
}

/** Getting to know an instrument, from its cable to its first trusted reading. */
export function ProvingView({ onUse, onLeave }: ProvingViewProps) {
  const page = usePage();
  const [stage, setStage] = useState<Stage>({ at: 'choose' });
  const [wanted, setWanted] = useState<readonly WantedPort[]>([]);
  const [chosen, setChosen] = useState<readonly ChosenPort[]>([]);
  const labelOf = (port: string) => chosen.find((one) => one.port === port)?.label ?? port;
  const listen = async (ports: readonly WantedPort[]) => {
    if (await page.send({ do: 'bench', ports: [...ports] })) return false;
    setWanted(ports);
    return true;
  };
  useEffect(() => () => void page.send({ do: 'bench', ports: [] }), []);

  const watch = async (ports: readonly ChosenPort[]) => {
    setChosen(ports);
    if (await listen(ports.map(({ port }) => ({ port })))) setStage({ at: 'watch' });
  };
  const assign = (port: string, profile: string) =>
    void listen(wanted.map((one) => (one.port === port ? { port, profile } : one)));
  const goFromWatch = async () => {
    const heard = page.store.get().bench?.ports ?? [];
    const assigned = heard.flatMap(({ port, profile, fits }): WantedPort[] => {
      const best = profile ?? fits[0]?.profile;
      return best === undefined ? [] : [{ port, profile: best }];
    });
    if (await listen(assigned)) setStage({ at: 'moved' });
  };
  /** An instrument that was proved, on one of several ports that are alike. */
  const find = async (proving: Proving, ports: readonly ChosenPort[]) => {
    setChosen(ports);
    const { profile } = proving;
    const asIts = profile === undefined ? {} : { profile };
    if (await listen(ports.map(({ port }) => ({ port, ...asIts })))) setStage({ at: 'find', proving });
  };
  const bind = async ({ name }: Proving, { port }: BenchStream) => {
    if (!(await page.send({ do: 'bind-instrument', name, port }))) await anew();
  };
  const profileOf = (stream: BenchStream | null) =>
    stream ? wanted.find(({ port }) => port === stream.port)?.profile : undefined;
  /** From now on only its own port is listened to, and it is steady when it is as quiet as it was at rest. */
  const begin = async ({ form, proving }: Said, stream: BenchStream | null) => {
    if (stream && !(await listen([wantedFor(proving, stream)]))) return;
    setStage({ at: 'steps', stream, form, proving });
  };
  const keep = async (proving: Proving) => (await page.send({ do: 'keep-instrument', proving })) === null;
  const anew = async () => {
    await listen([]);
    setStage({ at: 'choose' });
  };
  return (
    <>
      <main class="sheet proving" data-testid="proving" data-stage={stage.at}>
        {stage.at === 'choose' && (
          <ChoosePorts
            onListen={(ports) => void watch(ports)}
            onTyped={() => setStage({ at: 'declare', stream: null, before: null })}
            onUse={onUse}
            onMove={(proving, ports) => void find(proving, ports)}
            onLeave={onLeave}
          />
        )}
        {stage.at === 'watch' && (
          <WatchPorts
            labelOf={labelOf}
            onAssign={assign}
            onGo={() => void goFromWatch()}
            onBack={() => void anew()}
          />
        )}
        {stage.at === 'moved' && (
          <WhichMoved
            labelOf={labelOf}
            onFound={(stream) => setStage({ at: 'declare', stream, before: null })}
            onBack={() => setStage({ at: 'watch' })}
          />
        )}
        {stage.at === 'find' && (
          <WhichMoved
            labelOf={labelOf}
            onFound={(stream) => void bind(stage.proving, stream)}
            onBack={() => void anew()}
          />
        )}
        {stage.at === 'declare' && (
          <Declare
            stream={stage.stream}
            profile={profileOf(stage.stream)}
            by=""
            before={stage.before?.form ?? null}
            onDeclared={(said, form) => {
              const proving = stage.before ? redeclared(stage.before.proving, said) : said;
              void begin({ form, proving }, stage.stream);
            }}
            onBack={() => {
              if (stage.before) void begin(stage.before, stage.stream);
              else if (stage.stream) setStage({ at: 'moved' });
              else void anew();
            }}
          />
        )}
        {stage.at === 'steps' &&
          (progressOf(stage.proving).step ? (
            <ProveSteps
              proving={stage.proving}
              stream={stage.stream}
              onChange={(proving) => setStage({ ...stage, proving })}
              onBack={() => setStage({ at: 'declare', stream: stage.stream, before: stage })}
            />
          ) : (
            <Outcome
              proving={stage.proving}
              onUse={() => void keep(stage.proving).then((kept) => kept && onUse(stage.proving))}
              onKeep={() => void keep(stage.proving).then((kept) => (kept ? anew() : undefined))}
              onAgain={() =>
                setStage({ ...stage, proving: again(stage.proving, stepsOf(stage.proving).at(-1)!) })
              }
            />
          ))}
      </main>
      <ActionStrip />
    </>
  );
}

function wantedFor({ profile }: Proving, { port, unitOpen, quiet }: BenchStream): WantedPort {
  return { port, ...(profile !== undefined && { profile }), ...(unitOpen && { quiet }) };
}
