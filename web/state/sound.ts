import type { PageState } from './page-state.ts';

export type Sound = 'steady' | 'taken' | 'refused';

export interface Sounds {
  play(sound: Sound): void;
}

/** Notes as [Hz, start s, length s]; told apart by number and direction, not by pitch alone. */
const notes: Record<Sound, readonly (readonly [number, number, number])[]> = {
  steady: [[880, 0, 0.05]],
  taken: [
    [660, 0, 0.09],
    [990, 0.1, 0.14],
  ],
  refused: [
    [220, 0, 0.16],
    [165, 0.18, 0.28],
  ],
};

/** What the step from one state to the next sounds like. A fast replay is silent. */
export function soundFor(before: PageState, after: PageState): Sound | null {
  if (after.replay && (!after.replay.playing || after.replay.speed > 5)) return null;
  const sameSession = before.session?.header.id === after.session?.header.id;
  if (sameSession && (after.session?.takes.length ?? 0) > (before.session?.takes.length ?? 0)) return 'taken';
  if (after.refusal !== null && after.refusal !== before.refusal) return 'refused';
  const steady = before.live?.steadiness !== 'steady' && after.live?.steadiness === 'steady';
  return steady && after.live?.armed ? 'steady' : null;
}

/** Silent until the first touch or key: browsers allow no sound before. */
export function createSounds(): Sounds {
  let audio: AudioContext | null = null;
  const wake = () => {
    audio ??= new AudioContext();
    void audio.resume();
  };
  for (const gesture of ['pointerdown', 'keydown']) addEventListener(gesture, wake, { once: true });
  return {
    play(sound) {
      if (audio?.state !== 'running') return;
      for (const [hz, start, length] of notes[sound]) note(audio, hz, audio.currentTime + start, length);
    },
  };
}

function note(audio: AudioContext, hz: number, start: number, length: number): void {
  const tone = audio.createOscillator();
  const gain = audio.createGain();
  tone.type = hz < 300 ? 'square' : 'triangle';
  tone.frequency.value = hz;
  gain.gain.setValueAtTime(0, start);
  gain.gain.linearRampToValueAtTime(hz < 300 ? 0.12 : 0.3, start + 0.01);
  gain.gain.linearRampToValueAtTime(0, start + length);
  tone.connect(gain).connect(audio.destination);
  tone.start(start);
  tone.stop(start + length);
}
