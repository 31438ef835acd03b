import type { Pose, Proving } from '../../../shared/proving/proving.ts';

const widthPx = 560;
const heightPx = 190;
const groundPx = 150;
/** Feet of the level, or the tip: where they touch. */
const nearPx = 160;
const farPx = 400;
const tipPx = 280;
const stepPx = 14;

/** How the instrument stands in a pose: the level with its far foot marked, or the indicator with its tip. */
export function PoseDrawing({ proving, pose }: { proving: Proving; pose: Pose }) {
  return (
    <div class="drawing pose">
      <svg viewBox={`0 0 ${widthPx} ${heightPx}`} width={widthPx} height={heightPx} aria-hidden="true">
        <Ground />
        {proving.reads === 'tilt' ? <Level far={proving.far} pose={pose} /> : <Indicator pose={pose} />}
        {pose.startsWith('seat') && <Arrow xPx={tipPx} fromPx={48} toPx={10} both />}
      </svg>
    </div>
  );
}

function Ground() {
  const marks = Array.from({ length: 34 }, (_, k) => 40 + 14 * k);
  return (
    <>
      <path class="metal" d={`M30 ${groundPx}H${widthPx - 30}`} />
      {marks.map((xPx) => (
        <path key={xPx} class="hatch" d={`M${xPx + 14} ${groundPx + 2}l-14 18`} />
      ))}
    </>
  );
}

/** The near foot stays; the far one, which is marked, is lifted, stands on the step, or has changed places. */
function Level({ far, pose }: { far: string; pose: Pose }) {
  const turned = pose === 'turned';
  const raised = pose === 'moved' || pose === 'on-step';
  const span = farPx - nearPx;
  const degrees = raised ? (-180 / Math.PI) * Math.atan(stepPx / span) : 0;
  const markPx = turned ? nearPx : farPx;
  return (
    <>
      {pose === 'on-step' && <Step xPx={farPx} />}
      <g transform={`rotate(${degrees} ${nearPx} ${groundPx})`}>
        <path
          class="level"
          d={`M${nearPx - 26} ${groundPx - 56}H${farPx + 26}v40h-16l-10 16-10-16H${nearPx + 10}l-10 16-10-16h-16z`}
        />
        <circle class="arrow" cx={markPx} cy={groundPx - 36} r="5" />
        <text x={markPx + (turned ? 14 : -14)} y={groundPx - 32} text-anchor={turned ? 'start' : 'end'}>
          {far}
        </text>
      </g>
      {pose === 'moved' && <Arrow xPx={farPx + 44} fromPx={groundPx - 4} toPx={groundPx - 44} />}
    </>
  );
}

/** The tip stands on the metal or on the step; pushed in, the body comes nearer and the tip stays. */
function Indicator({ pose }: { pose: Pose }) {
  const touchPx = groundPx - (pose === 'on-step' ? stepPx : 0);
  const bodyPx = 56 + (pose === 'moved' ? stepPx : 0);
  return (
    <>
      {pose === 'on-step' && <Step xPx={tipPx} />}
      <path class="level" d={`M${tipPx - 4} ${bodyPx + 34}V${touchPx - 8}l4 8 4-8V${bodyPx + 34}`} />
      <circle class="level" cx={tipPx} cy={bodyPx} r="36" />
      {pose === 'moved' && <Arrow xPx={tipPx + 62} fromPx={bodyPx - 24} toPx={bodyPx + 20} />}
    </>
  );
}

function Step({ xPx }: { xPx: number }) {
  return <path class="metal" d={`M${xPx - 22} ${groundPx}v${-stepPx}h70v${stepPx}`} />;
}

/** From where to where it is moved. */
function Arrow({ xPx, fromPx, toPx, both }: { xPx: number; fromPx: number; toPx: number; both?: boolean }) {
  const head = (yPx: number, down: boolean) => `M${xPx} ${yPx}l-4 ${down ? -10 : 10}h8z`;
  return (
    <>
      <path class="thin" d={`M${xPx} ${fromPx}V${toPx}`} />
      <path class="arrow" d={head(toPx, toPx > fromPx)} />
      {both && <path class="arrow" d={head(fromPx, fromPx > toPx)} />}
    </>
  );
}
