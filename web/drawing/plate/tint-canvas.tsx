import { useLayoutEffect, useRef } from 'preact/hooks';
import { useInk } from '../ink.ts';
import type { HeightField } from './height-field.ts';
import type { PlanView } from './plan-view.ts';
import { inkOf, stepOf, type TintSteps } from './tint-steps.ts';

interface TintCanvasProps {
  readonly view: PlanView;
  readonly field: HeightField;
  readonly steps: TintSteps;
}

/** The ink on the plate: what is high takes more of it. */
export function TintCanvas({ view, field, steps }: TintCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { print } = useInk();
  const { covered, pxPerMm } = view;
  const [width, height] = [Math.round(covered.width), Math.round(covered.height)];
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || width < 1 || height < 1) return;
    const image = context.createImageData(width, height);
    const [red, green, blue] = [1, 3, 5].map((k) => Number.parseInt(print.slice(k, k + 2), 16));
    for (let row = 0; row < height; row += 1) {
      for (let column = 0; column < width; column += 1) {
        const um = field((column + 0.5) / pxPerMm, (height - row - 0.5) / pxPerMm);
        if (um === null) continue;
        image.data.set(
          [red!, green!, blue!, Math.round(255 * inkOf(steps, stepOf(steps, um)))],
          4 * (row * width + column),
        );
      }
    }
    context.putImageData(image, 0, 0);
  }, [field, steps, print, width, height, pxPerMm]);
  return (
    <canvas
      ref={canvas}
      width={width}
      height={height}
      style={{ left: `${covered.x}px`, top: `${covered.y}px` }}
      role="img"
      aria-label="Ink by height; the heights stand in the table"
    />
  );
}
