import { useEffect } from 'preact/hooks';
import type { ChosenPort } from '../parts/proving/alike-ports.ts';
import { WhichMoved } from '../parts/proving/which-moved.tsx';
import { usePage } from '../state/page.ts';
import { say } from '../words/say.ts';

interface FindByMovingProps {
  readonly ports: readonly ChosenPort[];
  readonly profile: string;
  readonly name: string;
  onFound(port: string): void;
  onBack(): void;
}

/** Adapters that are alike: the one whose instrument is moved is the one. */
export function FindByMoving({ ports, profile, name, onFound, onBack }: FindByMovingProps) {
  const page = usePage();
  useEffect(() => {
    void page.send({ do: 'bench', ports: ports.map(({ port }) => ({ port, profile })) });
    return () => void page.send({ do: 'bench', ports: [] });
  }, []);
  return (
    <main class="sheet proving" data-testid="find-by-moving">
      <WhichMoved
        ask={say('Adapters are alike: move {name}', { name })}
        back={say('Back to the set-up')}
        labelOf={(port) => ports.find((one) => one.port === port)?.label ?? port}
        onFound={({ port }) => onFound(port)}
        onBack={onBack}
      />
    </main>
  );
}
