import type { Standards } from '../standards';
import { inches, inWorkbook } from '../unit';
import { cellText } from './cell';
import { inWorkbookUnit, readUnit, UNIT_NAMES, type ColumnUnit } from './columnUnit';
import { figure, quote } from './figure';
import { agreement, type Findings, type Given, type GivenLengths } from './given';
import { fitsCasing } from './listUnit';
import { spokenName, type MeaningKey } from './meanings';
import type { Writings } from './manners';
import type { CellValue } from './opening';
import {
  dashedFeet,
  diameterOf,
  ofWords,
  plainFigure,
  sizeParts,
  widthAndWords,
  type PlainFigure,
} from './plainFigure';
import { inOtherSystem, METRIC } from './otherSystem';
import { isBare, MOST_OF_CASING, readLength, type LengthOptions } from './readLength';
import { readSection, readSize } from './readSize';
import { cellsOf, type NamedCell, type RawOpening } from './rowCells';

const WHOLE: ReadonlySet<MeaningKey> = new Set<MeaningKey>([
  'size',
  'roughSize',
  'width',
  'roughWidth',
  'height',
  'headHeight',
  'roughHeight',
  'diameter',
]);
/** A figure of an opening under its heading's unit is at least this long. */
const LEAST_MIXED = inches(8, 'in');
const OF_THE_CASING: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['reveal', 'face', 'thickness', 'casingSize']);
const MAY_BE_ZERO: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['reveal', 'rise', 'leg', 'otherLeg']);

const OF_ITS_SHAPE: readonly MeaningKey[] = [...WHOLE, 'springHeight', 'rise', 'radius', 'leg'];

/** What a cell begins with of a figure: `3/4 ` of `3/4 x 3 1/2`. */
const LEADING_FIGURE = /^[\d\s.,/\u2044\u00bc-\u00be\u2150-\u215e-]*/;

/** Whether a figure of the casing can be in this unit; what is no figure is refused where it is read. */
function fitsIn(unit: ColumnUnit, key: MeaningKey, cell: CellValue): boolean {
  const figure = typeof cell === 'number' ? cell : (LEADING_FIGURE.exec(cellText(cell))?.[0] ?? '');
  const read = readLength(figure, { name: '', column: 'in', unit: 'in', zero: true });
  return !read.ok || fitsCasing(key, inWorkbookUnit(read.value, unit, 'in'));
}

type Fault = Extract<Given, { readonly fault: string }>;

interface Casing {
  readonly face?: Given;
  readonly thickness?: Given;
}

/** The lengths that one opening's cells give, sizes taken apart. */
export class RowLengths {
  constructor(
    private readonly raw: RawOpening,
    private readonly standards: Standards,
    private readonly say: Findings,
    /** The unit of figures under headings without one. */
    list: ColumnUnit,
    private readonly writings: Writings = { answered: new Map(), asked: new Map() },
  ) {
    const [own] = cellsOf(raw, 'unit');
    const named = own === undefined ? null : readUnit(cellText(own.cell));
    if (own !== undefined && named === null)
      say.problem(
        'span',
        `Unit can't be read: the cell says ${quote(cellText(own.cell))}; in, ft, mm, cm and m are understood.`,
      );
    this.list = named ?? list;
    this.hasOwnUnit = named !== null;
    const [heads, ...others] = new Set(
      OF_ITS_SHAPE.flatMap((key) => cellsOf(raw, key)).map(({ column }) => column.unit),
    );
    this.inWords = named ?? (others.length === 0 ? heads : null) ?? list;
  }

  /** The unit of bare figures in the row's words: the row's own, that of all its headings, or the list's. */
  readonly inWords: ColumnUnit;
  private readonly list: ColumnUnit;
  private readonly hasOwnUnit: boolean;

  /** The length a row gives under one meaning; two columns of the same rank must agree, a better-named one wins over a lesser. */
  given(key: MeaningKey): Given | undefined {
    const [best, ...others] = cellsOf(this.raw, key).map((named) => ({
      column: named.column,
      given: this.read(key, named),
    }));
    if (best === undefined) return undefined;
    for (const { column, given } of others) {
      if (best.given.value === undefined || given.value === undefined || this.agree(best.given.value, given.value))
        continue;
      const both = `${quote(best.column.heading)} says ${figure(best.given.value)} and ${quote(column.heading)} says ${figure(given.value)}`;
      if (column.rank === best.column.rank)
        return {
          fault: `${spokenName(key)} is given twice: ${both}; please say which is right.`,
          choices: [best.given.value, given.value].map(figure),
        };
      this.say.note(`${both}; the first was used.`);
    }
    return best.given;
  }

  /** Every length that bears on the shape. */
  ofShape(): GivenLengths {
    const size = this.size('size');
    const rough = this.size('roughSize');
    const lengths: GivenLengths = {};
    const put = (key: keyof GivenLengths, given: Given | undefined) => {
      if (given !== undefined) lengths[key] = given;
    };
    const across = this.diameterInWidth();
    if (across !== undefined) put('diameter', across);
    else put('width', this.together('width', this.given('width'), size?.width));
    put('height', this.together('height', this.given('height'), size?.height));
    put('roughWidth', this.together('roughWidth', this.given('roughWidth'), rough?.width));
    put('roughHeight', this.together('roughHeight', this.given('roughHeight'), rough?.height));
    for (const key of ['headHeight', 'springHeight', 'leg', 'rise', 'radius', 'diameter'] as const)
      put(key, lengths[key] ?? this.given(key));
    put('rise', this.together('rise', lengths.rise, size?.rise));
    put('radius', this.together('radius', lengths.radius, size?.radius));
    put('diameter', lengths.diameter ?? size?.diameter);
    return lengths;
  }

  /** `Ø36` under Width is a diameter, which is the width of some heads only. */
  private diameterInWidth(): Given | undefined {
    const [named] = cellsOf(this.raw, 'width');
    const across = named === undefined ? null : diameterOf(named.cell);
    return named === undefined || across === null ? undefined : this.read('diameter', { ...named, cell: across });
  }

  /** A rise without a unit, in a list that is metric, as it would be in inches; null for any other. */
  riseInInches(): number | null {
    const [rise] = cellsOf(this.raw, 'rise');
    if (rise === undefined || rise.column.unit !== null || this.hasOwnUnit || !METRIC.has(this.list)) return null;
    if (!isBare(rise.cell)) return null;
    const read = readLength(rise.cell, { name: '', column: 'in', unit: this.standards.unit, zero: true });
    return read.ok ? read.value : null;
  }

  /** The casing's width and thickness, each from a column of its own or from the casing's size. */
  ofCasing(): Casing {
    const section = this.section();
    return {
      face: this.together('face', this.given('face'), section.face),
      thickness: this.together('thickness', this.given('thickness'), section.thickness),
    };
  }

  /** The casing's two figures where one cell gives both; the larger is the face. */
  private section(): Casing {
    const [first] = cellsOf(this.raw, 'casingSize');
    if (first === undefined) return {};
    const read = readSection(first.cell, { ...this.optionsFor('casingSize', first), most: MOST_OF_CASING.face });
    if (!read.ok) return { face: { fault: read.message } };
    const { width, height } = read.value;
    const [thickness, face] = width < height ? [width, height] : [height, width];
    this.say.note(`The casing is ${figure(thickness)} thick and ${figure(face)} wide, from its size.`);
    return { face: { value: face }, thickness: { value: thickness } };
  }

  private read(key: MeaningKey, named: NamedCell): Given {
    const more = key === 'face' ? widthAndWords(cellText(named.cell)) : null;
    const { cell, said, choices } = this.meant(
      named,
      more === null ? this.plain(key, named) : ofWords(named.cell, more.width),
    );
    const unfit = this.unfitCasing(key, { ...named, cell });
    if (unfit !== null) return unfit;
    const options = this.optionsFor(key, { ...named, cell });
    const read = readLength(cell, options);
    // What may be thousands is no figure as it stands.
    if (!read.ok)
      return choices !== null && choices.length > 1 ? { fault: said ?? '', choices } : { fault: read.message };
    const mixed = this.mixedUnits(key, cell, options.column) ?? this.besideAnother(key, { ...named, cell });
    if (mixed !== null) return mixed;
    if (choices !== null) return { fault: said ?? '', choices };
    if (said !== null) this.say.note(said);
    return { value: read.value };
  }

  private plain(key: MeaningKey, named: NamedCell): PlainFigure {
    const { column, unit } = this.optionsFor(key, named);
    const inInches = (column ?? unit) === 'in' && !OF_THE_CASING.has(key);
    const feet = inInches ? dashedFeet(named.cell, spokenName(key)) : null;
    return feet ?? plainFigure(named.cell, spokenName(key), this.raw.commas);
  }

  /** A figure in a manner that was answered for the list is what was chosen; else its question is noted. */
  private meant({ cell }: NamedCell, plain: PlainFigure): PlainFigure {
    const { manner, choices, said } = plain;
    if (manner === null || choices === null || said === null) return plain;
    const chosen = choices[this.writings.answered.get(manner) ?? -1];
    if (chosen !== undefined)
      return { cell: chosen, said: `${quote(cellText(cell))} is taken as ${chosen}.`, choices: null, manner: null };
    this.writings.asked.set(said, { manner, written: cellText(cell) });
    return plain;
  }

  private optionsFor(key: MeaningKey, { column, cell }: NamedCell): LengthOptions {
    return {
      name: spokenName(key),
      column: column.unit ?? this.unitOf(key, cell),
      unit: this.standards.unit,
      zero: MAY_BE_ZERO.has(key),
      whole: WHOLE.has(key),
      most: MOST_OF_CASING[key],
    };
  }

  /** A figure without a unit under a heading without one is in the list's; one of the casing only where it can be. */
  private unitOf(key: MeaningKey, cell: CellValue): ColumnUnit | null {
    const { unit } = this.standards;
    if (this.list === unit) return null;
    return OF_THE_CASING.has(key) && !fitsIn(this.list, key, cell) ? null : this.list;
  }

  /** Inch marks under a metric heading, on a figure that could be metric: one of the two is wrong. */
  private mixedUnits(key: MeaningKey, cell: CellValue, column: ColumnUnit | null): Given | null {
    if (column !== 'mm' && column !== 'cm' && column !== 'm') return null;
    const text = cellText(cell);
    const bare = /^(\d[\d ./-]*?)\s*(?:"|″|”|''|in\.?|inch(?:es)?)$/i.exec(text)?.[1];
    if (bare === undefined) return null;
    const read = readLength(bare, { name: '', column, unit: 'in', zero: true });
    // What is no length of an opening in the heading's unit can only be inches.
    if (!this.hasOwnUnit && (!read.ok || read.value < inWorkbook(LEAST_MIXED, 'in'))) return null;
    return {
      fault: `${spokenName(key)} is ${quote(text)} where the others are in ${UNIT_NAMES[column]}; please say which is meant.`,
      choices: [text, `${bare} ${column}`],
    };
  }

  /** A figure in the row's own unit beside one that is written in the other system: `in`, `914 mm` wide, rise `6`. */
  private besideAnother(key: MeaningKey, { column, cell }: NamedCell): Given | null {
    if (
      !this.hasOwnUnit ||
      OF_THE_CASING.has(key) ||
      column.unit !== null ||
      !isBare(cell) ||
      Number(cellText(cell)) === 0
    )
      return null;
    const taken = this.list;
    const other = inOtherSystem(this.raw, taken);
    if (other === null) return null;
    const text = cellText(cell);
    return {
      fault: `${spokenName(key)} ${text} has no unit beside ${quote(other.text)} in the same row; please say which unit is meant.`,
      choices: [`${text} ${taken}`, `${text} ${other.unit}`],
    };
  }

  /** A casing's figure that can't be in the list's unit: it may be in the workbook's, and nobody has said so. */
  private unfitCasing(key: MeaningKey, { column, cell }: NamedCell): Fault | null {
    return column.unit !== null || !OF_THE_CASING.has(key) ? null : this.unfit(key, cell, this.list);
  }

  /** The same of a casing's figure in the row's words. */
  unfitInWords(key: MeaningKey, said: string): Fault | null {
    return this.unfit(key, said, this.inWords);
  }

  private unfit(key: MeaningKey, cell: CellValue, taken: ColumnUnit): Fault | null {
    const { unit } = this.standards;
    if (taken === unit || !isBare(cell) || fitsIn(taken, key, cell)) return null;
    const text = cellText(cell);
    return {
      fault: `${spokenName(key)} ${text} has no unit, and can't be in ${UNIT_NAMES[taken]} as the rest of the list; is it ${text} ${unit}?`,
      choices: [`${text} ${unit}`],
    };
  }

  private size(
    key: 'size' | 'roughSize',
  ): { width?: Given; height?: Given; rise?: Given; radius?: Given; diameter?: Given } | undefined {
    const [named] = cellsOf(this.raw, key);
    if (named === undefined) return undefined;
    const parts = sizeParts(named.cell);
    const first = { ...named, cell: parts.size };
    const more = {
      ...(parts.rise === null ? {} : { rise: this.read('rise', { ...named, cell: parts.rise }) }),
      ...(parts.radius === null ? {} : { radius: this.read('radius', { ...named, cell: parts.radius }) }),
    };
    if (parts.ganged !== null) {
      const fault = `${spokenName(key)} ${quote(cellText(named.cell))} may be ${parts.ganged} units side by side; please give the width of one opening.`;
      return { width: { fault }, height: { fault } };
    }
    if (parts.diameter !== null) return { diameter: this.read('diameter', { ...named, cell: parts.diameter }) };
    const read = readSize(first.cell, this.optionsFor(key, first));
    if (!read.ok) return { width: { fault: read.message }, height: { fault: read.message } };
    return { width: { value: read.value.width }, height: { value: read.value.height }, ...more };
  }

  private together(key: MeaningKey, own: Given | undefined, size: Given | undefined): Given | undefined {
    if (own?.value === undefined || size?.value === undefined || this.agree(own.value, size.value)) return own ?? size;
    return {
      fault: `${spokenName(key)} is ${figure(own.value)}, but the size says ${figure(size.value)}; please say which is right.`,
      choices: [own.value, size.value].map(figure),
    };
  }

  private agree(a: number, b: number): boolean {
    return Math.abs(a - b) <= agreement(this.standards.unit);
  }
}
