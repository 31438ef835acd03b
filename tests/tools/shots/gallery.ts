import type { Shot } from './studio.ts';

/** One page with every picture, a row a screen, and how far each screen goes beyond its window. */
export function galleryOf(shots: readonly Shot[]): string {
  const rows = byScreen(shots);
  return `<!doctype html><meta charset="utf-8"><title>Every screen of Wayscribe</title>
<style>
  body { font: 14px sans-serif; margin: 16px; background: #888 }
  section { display: flex; gap: 12px; align-items: start; overflow-x: auto; padding-bottom: 12px }
  figure { margin: 0 } img { width: 420px; display: block } figcaption { padding: 2px 0 }
</style>
${[...rows].map(rowOf).join('\n')}
`;
}

function rowOf([screen, shots]: readonly [string, readonly Shot[]]): string {
  const figures = shots.map(({ look, file, below }) => {
    const further = below > 0 && look.media === 'screen' ? `, ${below} px below the window` : '';
    return `<figure><a href="${file}"><img loading="lazy" src="${file}" alt=""></a>
<figcaption>${look.name} ${look.width} × ${look.height}${further}</figcaption></figure>`;
  });
  return `<h2>${screen}</h2><section>${figures.join('\n')}</section>`;
}

function byScreen(shots: readonly Shot[]): Map<string, Shot[]> {
  const rows = new Map<string, Shot[]>();
  for (const shot of shots) rows.set(shot.screen, [...(rows.get(shot.screen) ?? []), shot]);
  return rows;
}
