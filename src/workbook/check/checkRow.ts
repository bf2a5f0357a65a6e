import type { LineCheck } from '../../check/quote/checkLine';
import { lacks, type Finding } from '../../check/quote/finding';
import type { LineFigures } from '../../check/rules/lineRules';
import { UNIT } from '../../check/rules/moneyRules';
import { reasonOf } from '../../check/rules/verdict';
import { roundTo, toCents } from '../../rounding';
import { capital } from '../../schedule/figure';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { columnFormat } from '../format';
import { sentences } from '../../takeoff/figures';
import type { Cell } from '../sheet';
import { atRow, CHECK_COLUMNS, type CheckKey, type Lines } from './columns';
import * as formulas from './formulas';
import { Comparisons, type AllSays } from './comparisons';
import { figure, written, type Content, type Value } from './content';
import { lineFigures } from './lineFigures';
import { moneyCells } from './moneyCells';

/** One line of the quote as a row of the Check sheet; `row` counts from 1, `lines` is where all lines stand. */
export function checkRow(check: LineCheck, takeoff: Takeoff, row: number, lines: Lines, plain: boolean): Cell[] {
  const cells = new RowCells(check, takeoff, plain).all();
  const { unit } = takeoff.standards;
  return CHECK_COLUMNS.map(({ key, measure }): Cell => {
    const { value, formula, style } = cells[key];
    // A count has no decimals, feet of molding may have some.
    const format = key === 'quantity' ? 'General' : columnFormat(measure, unit, value);
    const look = LOOKS[key] ?? {};
    if (formula === undefined) return { value, style, format, ...look };
    // Text format would keep Excel from calculating a formula typed over it.
    const liveFormat = format === '@' ? 'General' : format;
    return {
      value: value ?? '',
      formula: atRow(formula, row, lines, lacks(check.line.unread)),
      style,
      format: liveFormat,
      ...look,
    };
  });
}

/** What is folded away isn't wrapped: it would make its row as high as its text. */
const LOOKS: Readonly<Partial<Record<CheckKey, Pick<Cell, 'wrap' | 'align'>>>> = {
  reason: { wrap: true },
  description: { wrap: true },
  quantityRight: { align: 'right' },
  radiusRight: { align: 'right' },
  lengthRight: { align: 'right' },
  priceRight: { align: 'right' },
  extensionRight: { align: 'right' },
};

/** The quoted figure that each comparison is of, and ours. */
const BESIDE = {
  quantitySays: 'quantity',
  radiusSays: 'radius',
  lengthSays: 'length',
  priceSays: 'unit',
} as const satisfies Partial<Record<formulas.Compared, keyof LineFigures & CheckKey>>;
type BesideKey = keyof typeof BESIDE;
const OURS = {
  quantitySays: 'ourQuantity',
  radiusSays: 'ourRadius',
  lengthSays: 'ourLength',
  priceSays: 'ourPrice',
} as const satisfies Record<BesideKey, CheckKey>;

class RowCells {
  /** The one opening the line is for; null: none, or several. */
  private readonly opening: OpeningTakeoff | null;
  private readonly figures: LineFigures;
  private readonly compared: AllSays;
  private readonly live: boolean;
  private readonly openings: number;

  constructor(
    private readonly check: LineCheck,
    private readonly takeoff: Takeoff,
    private readonly plain: boolean,
  ) {
    const [place, ...more] = check.places;
    // An alternate or an extra takes no place: it would be counted with the opening's own lines.
    const single = place !== undefined && more.length === 0 && check.part !== 'alternate' && check.part !== 'extra';
    this.opening = single ? (takeoff.openings[place] ?? null) : null;
    this.openings = takeoff.openings.length;
    this.figures = lineFigures(check, this.opening, takeoff.standards.unit);
    const comparisons = new Comparisons(check, this.opening, this.figures, takeoff, plain);
    this.compared = comparisons.all();
    this.live = comparisons.live && formulas.VERDICT.of(this.words()) === check.verdict;
  }

  all(): Readonly<Record<CheckKey, Content>> {
    const { line, findings, stake } = this.check;
    const { figures, compared } = this;
    const quoted = (value: Value): Content => ({ value, style: 'input' });
    const text = (value: string): Content => ({ value, style: 'text' });
    const ours = (of: Parameters<typeof formulas.ours>[0], value: number | null): Content =>
      figure(value, formulas.ours(of, this.openings, this.plain));
    const priced = this.live && compared.priceSays.formula !== undefined;
    return {
      row: { value: line.row, style: 'text' },
      mark: quoted(this.opening?.opening.mark || line.mark),
      verdict: this.verdict(),
      reason: this.reason(),
      quantity: quoted(line.quantity),
      quantityRight: this.beside('quantity', 'quantitySays', figures.ourQuantity),
      radius: quoted(line.radius),
      radiusRight: this.beside('radius', 'radiusSays', figures.ourRadius),
      length: quoted(line.length),
      lengthRight: this.beside('length', 'lengthSays', figures.ourLength),
      unitPrice: quoted(line.unitPrice),
      priceRight: this.beside('unit price', 'priceSays', figures.ourPrice),
      extension: quoted(line.extension),
      ...moneyCells(this.check, { ...figures, ...this.words(), verdict: this.check.verdict }, this.live, priced),
      description: text(line.description),
      ...compared,
      ourQuantity: ours('quantity', figures.ourQuantity),
      ourRadius: ours(formulas.RADIUS_FIGURES[line.radiusOf], figures.ourRadius),
      ourLength: ours(formulas.LENGTH_FIGURES[line.lengthOf], figures.ourLength),
      ourPrice: ours('unit price', figures.ourPrice),
      place: this.place(),
      unit: figure(figures.unit, UNIT.formula),
      stake: written(toCents(stake)),
      found: written(sentences(findings.map(({ text: found }) => sentence(found)))),
    };
  }

  /** A mark is looked up where that finds the same opening; otherwise the place is written. */
  private place(): Content {
    if (this.opening === null) return written(null);
    const { mark } = this.opening.opening;
    const [place] = this.check.places;
    const findable = mark !== '' && firstOf(this.takeoff).get(mark.toLowerCase()) === place && !/[*?~]/.test(mark);
    return findable ? figure(place! + 1, formulas.placeFormula(this.openings)) : written(place! + 1);
  }

  private words(): Readonly<Record<formulas.Compared, string>> {
    const { openingSays, quantitySays, radiusSays, lengthSays, extensionSays, priceSays } = this.compared;
    return {
      openingSays: openingSays.value,
      quantitySays: quantitySays.value,
      radiusSays: radiusSays.value,
      lengthSays: lengthSays.value,
      extensionSays: extensionSays.value,
      priceSays: priceSays.value,
    };
  }

  private verdict(): Content<string> {
    const { verdict } = this.check;
    const style = verdict === 'agrees' ? 'text' : 'attention';
    return this.live ? { value: verdict, formula: formulas.VERDICT.formula, style } : { value: verdict, style };
  }

  private reason(): Content {
    const { verdict, findings } = this.check;
    const reason = formulas.REASON.of({ ...this.words(), verdict });
    if (this.live) return figure(reason, formulas.REASON.formula);
    const found = findings.filter((one) => one.verdict === verdict).map(({ text }) => reasonOf(text));
    return written(reason || found.join('; '));
  }

  /** "agrees", or the right figure, beside the quoted one. */
  private beside(about: Finding['about'], key: BesideKey, ours: number | null): Content {
    const { compared } = this;
    const quoted = BESIDE[key];
    const given = quoted === 'unit' ? this.figures.unit : this.figures[quoted];
    if (compared[key].formula !== undefined) {
      const right = ours === null ? '' : this.onTape(about, ours);
      const value = given === null ? '' : compared[key].value === 'agrees' ? 'agrees' : right;
      return figure(value, formulas.beside(quoted, key, OURS[key], this.takeoff.standards.unit));
    }
    const finding = this.finding(about);
    if (given === null || finding === undefined) return written(null);
    if (finding.verdict === 'agrees' || finding.right === null)
      return written(finding.verdict === 'agrees' ? 'agrees' : null);
    return written(this.onTape(about, finding.right));
  }

  /** A length in inches to the sixteenth, as the summary has it. */
  private onTape(about: Finding['about'], right: number): number {
    const isLength = about === 'radius' || about === 'length';
    return isLength && this.takeoff.standards.unit === 'in' ? roundTo(0, right * 16) / 16 : right;
  }

  private finding(about: Finding['about']): Finding | undefined {
    return this.check.findings.find((one) => one.about === about);
  }
}

const FIRST = new WeakMap<Takeoff, ReadonlyMap<string, number>>();

/** The first opening with each mark, as MATCH finds it: looked through once for all lines. */
function firstOf(takeoff: Takeoff): ReadonlyMap<string, number> {
  const known = FIRST.get(takeoff);
  if (known !== undefined) return known;
  const first = new Map<string, number>();
  takeoff.openings.forEach(({ opening }, place) => {
    const mark = opening.mark.toLowerCase();
    if (!first.has(mark)) first.set(mark, place);
  });
  FIRST.set(takeoff, first);
  return first;
}

function sentence(text: string): string {
  return capital(text) + (/[.!?]$/.test(text) ? '' : '.');
}
