/** A value that can be watched. Watchers are told at most once per animation frame. */
export interface Store<T> {
  get(): T;
  set(change: (value: T) => T): void;
  watch(watcher: () => void): () => void;
}

export function createStore<T>(
  initial: T,
  schedule: (tell: () => void) => void = (tell) => requestAnimationFrame(tell),
): Store<T> {
  let value = initial;
  let due = false;
  const watchers = new Set<() => void>();
  const tell = () => {
    due = false;
    for (const watcher of watchers) watcher();
  };
  return {
    get: () => value,
    set(change) {
      const next = change(value);
      if (Object.is(next, value)) return;
      value = next;
      if (due) return;
      due = true;
      schedule(tell);
    },
    watch(watcher) {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
  };
}
