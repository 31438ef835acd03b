import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import { languageOf } from '../../shared/lesson/lesson.ts';
import { textWidth } from '../drawing/text-width.ts';
import { usePick } from '../state/page.ts';

interface Placed {
  readonly to: string;
  readonly says: string;
  readonly x: number;
  readonly y: number;
  /** Comes from below, because the name of the station stands above it. */
  readonly rises: boolean;
}

/** How far the tail of an arrow lies from its head, px. */
const longPx = 54;

/** The teacher's arrows over whatever drawing there is: it marks its stations with `data-at`. */
export function LessonArrows({ room }: { room: RefObject<HTMLElement | null> }) {
  const arrows = usePick(({ replay }) => {
    if (!replay?.lesson) return null;
    return replay.lesson.moments[replay.moment]?.arrows ?? null;
  });
  const lang = usePick(({ replay }) => (replay?.lesson ? languageOf(replay.lesson) : 'en'));
  const place = usePick(({ replay }) => replay?.place ?? 0);
  const [placed, setPlaced] = useState<readonly Placed[]>([]);
  useLayoutEffect(() => {
    const element = room.current;
    if (!element || !arrows) return setPlaced([]);
    const find = () => setPlaced(arrows.flatMap((arrow) => placeOf(element, arrow)));
    find();
    const frame = requestAnimationFrame(find);
    addEventListener('resize', find);
    return () => {
      cancelAnimationFrame(frame);
      removeEventListener('resize', find);
    };
  }, [arrows, place, room]);
  if (placed.length === 0) return null;
  return (
    <svg
      class="arrows"
      lang={lang}
      data-testid="arrows"
      role="img"
      aria-label={placed.map(wordsOf).join(', ')}
    >
      {placed.map((arrow, k) => (
        <Arrow key={k} {...arrow} lang={lang} roomPx={room.current?.clientWidth ?? 0} />
      ))}
    </svg>
  );
}

function Arrow({ x, y, to, says, rises, roomPx, lang }: Placed & { roomPx: number; lang: string }) {
  const words = says || to;
  const half = textWidth(words, 13, true) / 2 + 8;
  const tail = Math.min(Math.max(x, half + 2), roomPx - half - 2);
  const down = rises ? -1 : 1;
  const end = y - down * longPx;
  const tip = y - down * 4;
  const boxPx = rises ? end - 2 : end - 21;
  return (
    <g class="arrow">
      <path class="casing" d={`M${tail} ${end}L${x} ${tip}`} />
      <path d={`M${tail} ${end}L${x} ${tip}m-6 ${-11 * down}l6 ${11 * down}l6 ${-11 * down}`} />
      <rect x={tail - half} y={boxPx} width={2 * half} height={23} />
      <text x={tail} y={boxPx + 16} text-anchor="middle" lang={lang}>
        {words}
      </text>
    </g>
  );
}

const wordsOf = ({ to, says }: Placed) => (says ? `${to}: ${says}` : to);

function placeOf(room: HTMLElement, { to, says }: { to: string; says: string }): Placed[] {
  const mark = room.querySelector(`[data-at="${CSS.escape(to)}"]`);
  if (!mark) return [];
  const [outer, box] = [room.getBoundingClientRect(), mark.getBoundingClientRect()];
  const name = [...room.querySelectorAll('svg text')].find(({ textContent }) => textContent === to);
  const rises = name !== undefined && name.getBoundingClientRect().y < box.y && mark.matches('.tick');
  const y = (rises ? box.bottom : box.y) - outer.y;
  return [{ to, says, x: box.x + box.width / 2 - outer.x, y, rises }];
}
