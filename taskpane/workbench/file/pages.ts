const LOCK = 'archwright-page-';

/** Held as long as the page lives: a kept job whose page is gone was left. */
export function holdPage(id: string): void {
  void navigator.locks?.request(LOCK + id, () => new Promise<void>(() => undefined));
}

/** The jobs whose pages are open, in this browser. */
export async function openPages(): Promise<Set<string>> {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  return new Set(held.flatMap(({ name }) => (name?.startsWith(LOCK) ? [name.slice(LOCK.length)] : [])));
}
