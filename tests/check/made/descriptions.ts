import type { QuoteCheck } from '../../../src/check/quote';
import { checkTable } from '../../../src/check/quote';
import { blankOpening, type CellValue, type Opening } from '../../../src/schedule/opening';
import { defaultStandards, withSettings } from '../../../src/standards';
import { takeoff } from '../../../src/takeoff/takeoff';
import { valueOf } from '../../value';
import { WORDINGS, type Wording } from './wordings';

export const DESCRIPTIONS: readonly Wording[] = WORDINGS.filter(({ kind }) => kind === 'description');

type Inputs = Partial<Opening>;

const ARCH: Inputs = { head: 'segmental', span: 36, rise: 6 };
const LARGE: Inputs = { head: 'segmental', span: 72, rise: 12 };

/** The opening that a description is right for, where it isn't a 36 × 6 segmental head in 3-1/2 casing. */
const OPENINGS: readonly (readonly [RegExp, Inputs])[] = [
  [/81-15\/16|6'-10"/, LARGE],
  [/Half rd/, { head: 'half round', span: 48, rise: null }],
  [/Eyebrow/, { ...ARCH, span: 42, rise: 7 }],
  [/ID 36/, { head: 'half round', span: 36, rise: null }],
  [/legs/, { head: 'half round', span: 36, rise: null, ends: 'legs', leg: 60 }],
  [/cut level/, { ...ARCH, ends: 'level' }],
  [/Full circle/, { head: 'round', span: 24, rise: null }],
  [/Ellipse/, { head: 'elliptical', span: 72, rise: 18 }],
  [/Gothic/, { head: 'pointed', span: 30, rise: 30 }],
  [/Qtr rd/, { head: 'quarter round', span: 24, rise: null }],
  [/Three-centered/, { head: 'three-centered', span: 60, rise: 15 }],
  [/11\/16\s?x/i, { ...ARCH, thickness: 0.6875 }],
  [/1-1\/16/, { ...ARCH, thickness: 1.0625 }],
];

/** What a figure is called in `reads`, and the figure of ours that is another one when the description must not agree. */
const OTHERS: readonly (readonly [string, Inputs])[] = [
  ['casing', { face: 4.5 }],
  ['casing mm', { face: 4.5 }],
  ['thickness', { thickness: 0.5 }],
  ['span', { span: 31 }],
  ['rise', { rise: 4 }],
  ['length', { span: 31, rise: 5 }],
  ['length mm', { span: 31, rise: 5 }],
  ['total length', { span: 31, rise: 5 }],
  ['radius', { span: 40 }],
  ['radius mm', { rise: 7 }],
  ['inside radius', { rise: 7 }],
  ['outside radius', { rise: 7 }],
  ['diameter inside', { span: 40 }],
  ['leg', { leg: 48 }],
  ['legs', { ends: 'radial', leg: null }],
  ['ends', { ends: 'radial' }],
  ['species', { species: 'Red oak' }],
  ['head', { head: 'segmental', rise: 5 }],
];

/** The other openings of ours under which the description is wrong, each in one figure that it names. */
export function wronglyFor({ reads = {} }: Wording): readonly (readonly [string, Inputs])[] {
  return OTHERS.filter(([figure]) => figure in reads);
}

/** A quote of that one line, or of the lines its marks are of, checked against the opening it is right for; `but` changes that. */
export function described(wording: Wording, but: Inputs = {}): QuoteCheck {
  const { text, reads = {} } = wording;
  const standards = valueOf(withSettings(defaultStandards(), { priceBand: 10 }));
  const marks = (reads.marks as readonly string[] | undefined) ?? ['W7'];
  const count = Number(reads.count ?? 1);
  const opening = OPENINGS.find(([pattern]) => pattern.test(text))?.[1] ?? ARCH;
  const rows = marks.map((mark, at) => ({ ...blankOpening(at + 2), mark, quantity: count, ...opening, ...but }));
  const metric = 'radius mm' in reads;
  const cells: CellValue[][] = [
    ...(metric ? [['All dimensions in mm']] : []),
    ['Mark', 'Qty', 'Description', 'Amount'],
    [marks.length > 1 ? null : marks[0]!, count * marks.length, text, 240],
  ];
  return valueOf(checkTable({ name: 'quote', firstRow: 1, rows: cells }, takeoff(rows, standards)));
}
