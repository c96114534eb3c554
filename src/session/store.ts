/** A value that changes over time and tells who listens: the whole of the session's plumbing. */
export interface Store<T> {
  get(): T;
  /** Replaces the value by what `step` makes of it; listeners hear only of a new object. */
  set(step: (now: T) => T): void;
  /** Returns the call that stops listening. */
  subscribe(listener: () => void): () => void;
}

export function createStore<T>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (step) => {
      const next = step(value);
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of [...listeners]) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
