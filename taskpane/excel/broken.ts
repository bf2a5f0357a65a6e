import type { Result } from '../../src/result';

/**
 * While sheets are replaced the workbook carries copies of them, and a note of whose filling it is. The note goes with the
 * file: whoever opens it elsewhere meanwhile, or after the add-in was closed half-way, is told and asked. Nothing is put
 * back unasked.
 */
export const NOTE = 'archwright.filling';

/** A filling under way, or one that was broken off. */
export interface Filling {
  /** The browser or Excel that fills: a random text kept on that computer. */
  readonly whose: string;
  /** When it began, ISO 8601. */
  readonly when: string;
}

export function noteOf(filling: Filling): string {
  return JSON.stringify(filling);
}

/** Null where the note can't be read, as one that somebody has changed by hand. */
export function readNote(text: unknown): Filling | null {
  try {
    const { whose, when } = JSON.parse(String(text)) as Partial<Filling>;
    return typeof whose === 'string' && typeof when === 'string' ? { whose, when } : null;
  } catch {
    return null;
  }
}

/** A text of this computer's own, made when first asked for; where nothing can be kept, one for this session. */
export function thisComputer(keep: () => Pick<Storage, 'getItem' | 'setItem'> = () => localStorage): string {
  session ??= kept(keep);
  return session;
}

let session: string | null = null;

function kept(keep: () => Pick<Storage, 'getItem' | 'setItem'>): string {
  const KEY = 'archwright.computer';
  const made = crypto.randomUUID();
  try {
    const storage = keep();
    const known = storage.getItem(KEY);
    if (known !== null) return known;
    storage.setItem(KEY, made);
  } catch {
    // Storage switched off: the copy is then taken for another computer's after a restart, and asked about all the same.
  }
  return made;
}

/** "on this computer, 30 November at 1:12 PM" */
export function whoseAndWhen(filling: Filling | null, locale: string): string {
  if (filling === null) return 'at a time not known';
  const date = new Date(filling.when);
  const at = Number.isNaN(date.getTime())
    ? ''
    : `, ${date.toLocaleString(locale, { dateStyle: 'long', timeStyle: 'short' })}`;
  return `on ${filling.whose === thisComputer() ? 'this' : 'another'} computer${at}`;
}

export type BrokenOff = Result<{ readonly sheets: readonly string[]; readonly filling: Filling | null }>;
