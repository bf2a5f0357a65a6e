import { riseFollows } from '../head/shapes';

/**
 * The figures by which two openings are told apart, in the order they are reported. What a list need not give at all (`place`,
 * `remarks`) is compared only where both give it.
 */
export const COMPARED = [
  { key: 'quantity', kind: 'number' },
  { key: 'head', kind: 'word' },
  { key: 'span', kind: 'length' },
  { key: 'rise', kind: 'length' },
  { key: 'ends', kind: 'word' },
  { key: 'reveal', kind: 'length' },
  { key: 'face', kind: 'length' },
  { key: 'thickness', kind: 'length' },
  { key: 'species', kind: 'word' },
  { key: 'profile', kind: 'word' },
  { key: 'leg', kind: 'length' },
  { key: 'otherLeg', kind: 'length' },
  { key: 'sides', kind: 'number' },
  { key: 'arcs', kind: 'number' },
  { key: 'haunch', kind: 'length' },
  { key: 'segmentsWanted', kind: 'number' },
  { key: 'extras', kind: 'word' },
  { key: 'priceAgreed', kind: 'number' },
  { key: 'place', kind: 'aside' },
  { key: 'remarks', kind: 'aside' },
] as const;

type Compared = (typeof COMPARED)[number];
export type FigureKey = Compared['key'];
export type FigureValue = string | number | null;
export type Figures = Readonly<Record<FigureKey, FigureValue>>;

/** One figure of an opening that is another now. */
export interface FigureChange {
  readonly figure: FigureKey | 'mark';
  readonly from: FigureValue;
  readonly to: FigureValue;
}

/** Every figure of an opening that is another now, in the order of `COMPARED`. */
export function figureChanges(before: Figures, now: Figures): FigureChange[] {
  const follows = before.head === now.head && riseFollows(now.head);
  return COMPARED.flatMap(({ key, kind }): FigureChange[] => {
    const from = before[key];
    const to = now[key];
    if (key === 'rise' && follows) return [];
    if (kind === 'aside' && (isBlank(from) || isBlank(to))) return [];
    return isSame(from, to) ? [] : [{ figure: key, from, to }];
  });
}

/** Figures that two lists came to by different ways (mm and inches) differ by rounding alone. */
const ROUNDING = 1e-6;

function isSame(one: FigureValue, other: FigureValue): boolean {
  if (one === other) return true;
  if (typeof one === 'number' && typeof other === 'number')
    return Math.abs(one - other) <= ROUNDING * Math.max(1, Math.abs(one));
  return typeof one === typeof other ? folded(one) === folded(other) : isBlank(one) && isBlank(other);
}

function isBlank(value: FigureValue): boolean {
  return value === null || value === '';
}

function folded(value: FigureValue): string {
  return String(value ?? '')
    .trim()
    .replace(/\s+/g, ' ')
    .toLowerCase();
}

/** A text that is the same for openings that agree in these figures. */
export function figuresKey(figures: Figures, keys: readonly FigureKey[]): string {
  const parts = keys.map((key) => {
    const value = figures[key];
    if (key === 'rise' && riseFollows(figures.head)) return '';
    return typeof value === 'number' ? String(Math.round(value / ROUNDING) * ROUNDING) : folded(value);
  });
  return parts.join('\u0000');
}

export function markKey(mark: string): string {
  return folded(mark);
}
