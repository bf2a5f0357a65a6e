import type { Unit } from '../unit';
import type { Choice, Draft } from './asked';
import { cellText } from './cell';
import { mayBeCentimeters } from './centimeters';
import { inWorkbookUnit, UNIT_NAMES, type ColumnUnit } from './columnUnit';
import { figure, quote } from './figure';
import type { MeaningKey } from './meanings';
import { isBare, readLength } from './readLength';
import { cellsOf, type RawOpening } from './rowCells';
import { straightMarks } from './straightMarks';

/** Inches that lengths of openings and casings usually have: far wider than any one list, narrow enough to tell units apart. */
const USUAL: Partial<Record<MeaningKey, readonly [number, number]>> = {
  width: [11, 200],
  roughWidth: [11, 204],
  height: [11, 146],
  roughHeight: [11, 150],
  headHeight: [20, 200],
  springHeight: [6, 160],
  leg: [4, 160],
  rise: [1.5, 190],
  radius: [5, 400],
  diameter: [11, 146],
};
/** A size has a width and a height. */
const OF_SIZE: Partial<Record<MeaningKey, readonly MeaningKey[]>> = {
  size: ['width', 'height'],
  roughSize: ['roughWidth', 'roughHeight'],
};
const KEYS = [...Object.keys(USUAL), ...Object.keys(OF_SIZE)] as MeaningKey[];
const UNITS: readonly ColumnUnit[] = ['in', 'ft', 'mm', 'cm', 'm'];
const SAMPLED = 3000;

/** A figure without a unit of its own; of a size, that of its width or its height. */
export interface Bare {
  readonly key: MeaningKey;
  readonly value: number;
  readonly text: string;
}

/** What the figures without any unit say about the unit they are in. */
export interface ListUnit {
  /** The unit to take them in; null: it has to be asked. */
  readonly unit: ColumnUnit | null;
  readonly draft: Draft | null;
}

/** A row's figures without a unit of their own, under headings without one. */
export function bareFigures(raw: RawOpening): readonly Bare[] {
  const found: Bare[] = [];
  for (const key of KEYS)
    for (const { column, cell } of cellsOf(raw, key)) {
      if (column.unit !== null) continue;
      const text = cellText(cell);
      const parts = key in OF_SIZE ? sizes(text) : [text];
      parts.forEach((part, index) => {
        if (!isBare(part)) return;
        const read = readLength(raw.commas ? part.replace(',', '.') : part, AS_INCHES);
        if (read.ok && read.value > 0) found.push({ key: OF_SIZE[key]?.[index] ?? key, value: read.value, text: part });
      });
    }
  return found;
}

const AS_INCHES = { name: '', column: 'in', unit: 'in', zero: true } as const;

/** Longer text is no size, and would only take time. */
const LONGEST_SIZE = 60;

function sizes(text: string): readonly string[] {
  if (text.length > LONGEST_SIZE) return [];
  const parts = straightMarks(text).split(/\s*[x×X*]\s*/);
  // 450 x 900 mm has its unit, of both.
  if (/(?:mm|cm|m|in\.?|inch(?:es)?|")$/i.test(parts.at(-1) ?? '')) return [];
  // 3/0 x 6/8 is a call-out, in feet and inches.
  return parts.length >= 2 &&
    parts.every((part) => /^\d/.test(part)) &&
    !parts.some((part) => /^\d+\s*[/-]\s*\d+$/.test(part))
    ? parts
    : [];
}

/** The unit of a list whose headings and notes give none to some of its figures: judged from all of them together. */
export function judgeUnit(raws: readonly RawOpening[], workbook: Unit, stated: ColumnUnit | null): ListUnit {
  const rows = raws.slice(0, SAMPLED).map((raw) => ({ raw, bare: bareFigures(raw) }));
  const all = rows.flatMap(({ bare }) => bare);
  if (all.length === 0) return { unit: workbook, draft: null };
  const scores = new Map(UNITS.map((unit) => [unit, score(all, unit)]));
  const own = scores.get(workbook) ?? 0;
  const best = Math.max(...scores.values());
  const fractions = workbook === 'in' && all.filter(({ text }) => /\d\/\d|[½¼¾⅛⅜⅝⅞]/.test(text)).length > 0;
  const others = stated !== null && stated !== workbook && stated !== 'ft-in';
  const sure = fractions ? own >= 0.5 : own >= 0.8 && own >= best - 0.1;
  const either = sure && workbook === 'in' && mayBeCentimeters(raws.slice(0, SAMPLED), all);
  if (sure && !others && !either) return { unit: workbook, draft: null };
  const shownRows = rows.filter(({ bare }) => bare.length > 0).slice(0, 2);
  const first = others && stated !== null ? stated : null;
  const choices = (['in', 'ft', 'mm', 'cm'] as const)
    .map((unit) => ({ unit, score: unit === first ? 2 : (scores.get(unit) ?? 0) }))
    .sort((one, other) => other.score - one.score)
    .map(({ unit }): Choice => ({
      label: UNIT_NAMES[unit],
      example: shownRows.map(({ raw, bare }) => `row ${raw.row}: ${readIn(unit, bare.slice(0, 3))}`).join('; '),
    }));
  const shown = shownRows.map(({ raw, bare }) => example(raw, bare.slice(0, 3)));
  const why = either && !others ? EITHER : `as ${UNIT_NAMES[workbook]} they would be unusual or mixed`;
  const lead = `Figures of this list have no unit, and ${why}; what are they in?`;
  return {
    unit: null,
    draft: {
      id: 'unit',
      about: 'units',
      text: `${lead} ${shown.join(' ')}`,
      lead,
      choices,
      field: 'span',
    },
  };
}

const EITHER = 'they may be inches as well as centimeters';

function score(figures: readonly Bare[], unit: ColumnUnit): number {
  let sum = 0;
  let weights = 0;
  for (const { key, value } of figures) {
    const weight = /width|diameter/i.test(key) ? 2 : 1;
    const inches = inWorkbookUnit(value, unit, 'in');
    const [least, most] = USUAL[key] ?? [0, Infinity];
    weights += weight;
    if (inches >= least && inches <= most) sum += weight;
  }
  return sum / weights;
}

function example(raw: RawOpening, bare: readonly Bare[]): string {
  const said = bare.map(({ text }) => text).join(' × ');
  const read = (['in', 'ft', 'mm', 'cm'] as const).map((unit) => `${readIn(unit, bare)} if ${UNIT_NAMES[unit]}`);
  return `Row ${raw.row}, ${quote(said)}: ${read.join(', ')}.`;
}

function readIn(unit: ColumnUnit, bare: readonly Bare[]): string {
  return bare.map(({ value }) => `${figure(Number(inWorkbookUnit(value, unit, 'in').toFixed(2)))}"`).join(' × ');
}

/** The unit that an answer, an option or a cell names; null for none. */
export function unitNamed(text: string): ColumnUnit | null {
  const found = UNITS.find(
    (unit) => unit === text.trim().toLowerCase() || UNIT_NAMES[unit] === text.trim().toLowerCase(),
  );
  return found ?? null;
}

/** Whether a figure of the casing can be this long. */
export function fitsCasing(key: MeaningKey, inches: number): boolean {
  const [least, most] = CASING[key] ?? [0, Infinity];
  return inches === 0 || (inches >= least && inches <= most);
}

const CASING: Partial<Record<MeaningKey, readonly [number, number]>> = {
  face: [0.7, 15],
  thickness: [0.2, 3.2],
  reveal: [0.05, 1.2],
  casingSize: [0.2, 15],
};
