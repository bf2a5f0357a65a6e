/** A value that changes only through a pure reducer, and tells those who asked. */
export interface Store<State, Action> {
  get(): State;
  send(action: Action): void;
  /** Gives back the way to stop listening. */
  listen(listener: () => void): () => void;
}

export function createStore<State, Action>(
  reduce: (state: State, action: Action) => State,
  initial: State,
): Store<State, Action> {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    send(action) {
      const next = reduce(state, action);
      if (next === state) return;
      state = next;
      for (const listener of [...listeners]) listener();
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
