import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The inner size of an element in whole CSS px, kept up to date. */
export function useSize<T extends HTMLElement>() {
  const ref = useRef<T>(null);
  const [size, setSize] = useState({ widthPx: 0, heightPx: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => {
      const { clientWidth: widthPx, clientHeight: heightPx } = element;
      setSize((old) => (old.widthPx === widthPx && old.heightPx === heightPx ? old : { widthPx, heightPx }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, ...size };
}
