import { useMemo } from 'preact/hooks';
import { usePick } from '../state/page.ts';

/** The colour tokens, for what is drawn on a canvas. */
export interface Ink {
  readonly ground: string;
  readonly ink: string;
  readonly soft: string;
  readonly faint: string;
  readonly print: string;
  readonly live: string;
}

/** The tokens of the theme in use. */
export function useInk(): Ink {
  const theme = usePick((state) => state.theme);
  return useMemo(() => {
    document.documentElement.dataset.theme = theme;
    const style = getComputedStyle(document.documentElement);
    const token = (name: string) => style.getPropertyValue(`--${name}`).trim();
    return {
      ground: token('ground'),
      ink: token('ink'),
      soft: token('soft'),
      faint: token('faint'),
      print: token('print'),
      live: token('live'),
    };
  }, [theme]);
}
