import type { Standards } from '../standards';
import { figure, quote } from './figure';
import { agreement, type Findings, type Given, type GivenLengths } from './given';
import { spokenName, type MeaningKey } from './meanings';
import { readLength, type LengthOptions } from './readLength';
import { readSection, readSize } from './readSize';
import { cellsOf, type NamedCell, type RawOpening } from './rowCells';

/** No casing is wider or thicker, no reveal larger: a reveal of 5 is in millimeters. */
const MOST_INCHES: Partial<Record<MeaningKey, number>> = { reveal: 2, face: 24, thickness: 6 };

const WHOLE: ReadonlySet<MeaningKey> = new Set<MeaningKey>([
  'size',
  'roughSize',
  'width',
  'roughWidth',
  'height',
  'headHeight',
  'roughHeight',
]);
const MAY_BE_ZERO: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['reveal', 'rise', 'leg']);

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
  ) {}

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
        return { fault: `${spokenName(key)} is given twice: ${both}; please say which is right.` };
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
    put('width', this.together('width', this.given('width'), size?.width));
    put('height', this.together('height', this.given('height'), size?.height));
    put('roughWidth', this.together('roughWidth', this.given('roughWidth'), rough?.width));
    put('roughHeight', this.together('roughHeight', this.given('roughHeight'), rough?.height));
    for (const key of ['headHeight', 'springHeight', 'leg', 'rise', 'radius'] as const) put(key, this.given(key));
    return lengths;
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
    const read = readSection(first.cell, { ...this.optionsFor('casingSize', first), most: MOST_INCHES.face });
    if (!read.ok) return { face: { fault: read.message } };
    const { width, height } = read.value;
    const [thickness, face] = width < height ? [width, height] : [height, width];
    this.say.note(`The casing is ${figure(thickness)} thick and ${figure(face)} wide, from its size.`);
    return { face: { value: face }, thickness: { value: thickness } };
  }

  private read(key: MeaningKey, named: NamedCell): Given {
    const read = readLength(named.cell, this.optionsFor(key, named));
    return read.ok ? { value: read.value } : { fault: read.message };
  }

  private optionsFor(key: MeaningKey, { column }: NamedCell): LengthOptions {
    return {
      name: spokenName(key),
      column: column.unit,
      unit: this.standards.unit,
      zero: MAY_BE_ZERO.has(key),
      whole: WHOLE.has(key),
      doubtful: column.unitInDoubt,
      most: MOST_INCHES[key],
    };
  }

  private size(key: 'size' | 'roughSize'): { width: Given; height: Given } | undefined {
    const [first] = cellsOf(this.raw, key);
    if (first === undefined) return undefined;
    const read = readSize(first.cell, this.optionsFor(key, first));
    if (!read.ok) return { width: { fault: read.message }, height: { fault: read.message } };
    return { width: { value: read.value.width }, height: { value: read.value.height } };
  }

  private together(key: MeaningKey, own: Given | undefined, size: Given | undefined): Given | undefined {
    if (own?.value === undefined || size?.value === undefined || this.agree(own.value, size.value)) return own ?? size;
    return {
      fault: `${spokenName(key)} is ${figure(own.value)}, but the size says ${figure(size.value)}; please say which is right.`,
    };
  }

  private agree(a: number, b: number): boolean {
    return Math.abs(a - b) <= agreement(this.standards.unit);
  }
}
