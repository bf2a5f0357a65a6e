import { riseFollows } from '../head/shapes';

/**
 * The figures by which two openings are told apart, in the order they are reported. What a list need not give at all (`place`,
 * `remarks`) is compared only where both give it.
 */
export const COMPARED = [
  { key: 'quantity', label: 'quantity', kind: 'number' },
  { key: 'head', label: 'head', kind: 'word' },
  { key: 'span', label: 'span', kind: 'length' },
  { key: 'rise', label: 'rise', kind: 'length' },
  { key: 'ends', label: 'ends', kind: 'word' },
  { key: 'reveal', label: 'reveal', kind: 'length' },
  { key: 'face', label: 'casing width', kind: 'length' },
  { key: 'thickness', label: 'thickness', kind: 'length' },
  { key: 'species', label: 'species', kind: 'word' },
  { key: 'profile', label: 'profile', kind: 'word' },
  { key: 'leg', label: 'leg', kind: 'length' },
  { key: 'otherLeg', label: 'other leg', kind: 'length' },
  { key: 'sides', label: 'sides', kind: 'number' },
  { key: 'arcs', label: 'arcs', kind: 'number' },
  { key: 'haunch', label: 'haunch', kind: 'length' },
  { key: 'segmentsWanted', label: 'segments wanted', kind: 'number' },
  { key: 'extras', label: 'extras', kind: 'word' },
  { key: 'priceAgreed', label: 'price agreed', kind: 'number' },
  { key: 'place', label: 'place', kind: 'aside' },
  { key: 'remarks', label: 'remarks', kind: 'aside' },
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
