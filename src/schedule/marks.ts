import { straightMarks } from './straightMarks';

/** What a mark says beyond its name. */
export interface MarkFacts {
  /** The mark without a footnote's sign or a count behind it. */
  readonly mark: string;
  /** How many openings it stands for by its own words, and by which of them. */
  readonly several: { readonly count: number; readonly said: string } | null;
  /** A footnote's sign, such as `*` or `†`. */
  readonly footnote: string | null;
}

const LONGEST_MARK = 60;
const FOOTNOTE = /\s*(\*{1,3}|[†‡§¹²³⁴⁵])\s*$/;
/** `W2-W5`, `W2 thru W5`, `W2–5`. */
const RANGE = /^([a-z]+[ -]?)?(\d{1,4})\s*(?:-|\.\.|\bto\b|\bthru\b|\bthrough\b)\s*([a-z]+[ -]?)?(\d{1,4})$/i;
/** `W1A-W1D`, `A-D` are left alone: letters may be anything. */
const LIST = /\s*(?:,|;|&|\+|\band\b|\/(?=\s*[a-z]+\d))\s*/i;
/** `W1 (3)`, `W13 x4`, `W13 ×4`, `(3) W1`, `3x W1`. */
const COUNT_BEHIND =
  /^(.*?\S)\s*(?:\(\s*[x×]?\s*(\d{1,3})\s*(?:x|ea|each|req'?d|total|thus|pcs?|units?)?\.?\s*\)|\s[x×]\s?(\d{1,3}))$/i;
const COUNT_BEFORE = /^(?:\(\s*(\d{1,3})\s*\)\s*|(\d{1,3})\s?[x×]\s+)(\S.*)$/i;

/** A mark's name, the count in it and its footnote; `scheme`: this list's marks are written like ranges (`1-2`, `1-3`, `2-1`). */
export function readMark(text: string, scheme: boolean): MarkFacts {
  if (text.length > LONGEST_MARK) return { mark: text, several: null, footnote: null };
  const footnote = FOOTNOTE.exec(text)?.[1] ?? null;
  const bare = footnote === null ? text : text.replace(FOOTNOTE, '');
  const plain = straightMarks(bare).trim();
  const behind = COUNT_BEHIND.exec(plain);
  const before = behind === null ? COUNT_BEFORE.exec(plain) : null;
  if (behind !== null || before !== null) {
    const count = Number(behind?.[2] ?? behind?.[3] ?? before?.[1] ?? before?.[2]);
    const mark = (behind?.[1] ?? before?.[3] ?? '').trim();
    return { mark, several: count >= 1 ? { count, said: plain } : null, footnote };
  }
  const count = countOf(plain, scheme);
  return { mark: bare.trim(), several: count > 1 ? { count, said: plain } : null, footnote };
}

function countOf(plain: string, scheme: boolean): number {
  const parts = plain.split(LIST).filter((part) => part !== '');
  const isList = /^[a-z\d]/i.test(plain) && (/[a-z]/i.test(parts[0] ?? '') || !/[+/]/.test(plain));
  if (isList && parts.length > 1 && parts.every((part) => /\d/.test(part) || part.length <= 2))
    return parts.reduce((sum, part) => sum + Math.max(1, range(part, scheme)), 0);
  return range(plain, scheme);
}

function range(text: string, scheme: boolean): number {
  const match = RANGE.exec(text);
  if (match === null) return 0;
  const [, before = '', from = '', again = '', to = ''] = match;
  const same = again === '' || again.toLowerCase() === before.toLowerCase();
  const count = Number(to) - Number(from) + 1;
  if (!same || count < 2 || count > 200) return 0;
  return again === '' && scheme ? 0 : count;
}

/** Whether the marks of a list are written with a hyphen between figures throughout, so that it parts no range. */
export function isHyphenScheme(marks: readonly string[]): boolean {
  const said = marks.filter((mark) => mark !== '');
  const hyphened = said.filter((mark) => /^[a-z]*\d+-\d+$/i.test(straightMarks(mark)));
  const backward = hyphened.some((mark) => {
    const [from = 0, to = 0] = (straightMarks(mark).match(/\d+/g) ?? []).map(Number);
    return to <= from;
  });
  return hyphened.length * 2 > said.length && said.length > 2 && (backward || hyphened.length === said.length);
}
