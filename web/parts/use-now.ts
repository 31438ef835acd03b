import { useEffect, useState } from 'preact/hooks';

/** The page's clock in ms, read anew every `everyMs` while `running`. */
export function useNow(running: boolean, everyMs: number): number {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    if (!running) return;
    setNow(performance.now());
    const timer = setInterval(() => setNow(performance.now()), everyMs);
    return () => clearInterval(timer);
  }, [running, everyMs]);
  return now;
}
