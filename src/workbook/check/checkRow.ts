import type { LineCheck } from '../../check/quote/checkLine';
import { lacks, type Finding } from '../../check/quote/finding';
import { hangs, priceOff } from '../../check/quote/stakes';
import { amountOf } from '../../quote/quote';
import { roundTo, toCents } from '../../rounding';
import { capital } from '../../schedule/figure';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { columnFormat } from '../format';
import { sentences } from '../../takeoff/figures';
import type { Cell, CellStyle } from '../sheet';
import { atRow, CHECK_COLUMNS, type CheckKey, type Lines } from './columns';
import * as formulas from './formulas';
import { lineFigures, type LineFigures } from './lineFigures';
import * as says from './says';

type Value = string | number | null;

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
      formula: atRow(formula.replaceAll('{lacks}', lacks(check.line.unread)), row, lines),
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

interface Content<Held extends Value = Value> {
  readonly value: Held;
  readonly formula?: string;
  readonly style: CellStyle;
}

/** What is said in the Opening column: anything that has no figure's column of its own. */
const OF_OPENING: ReadonlySet<Finding['about']> = new Set<Finding['about']>([
  'opening',
  'column',
  'species',
  'head',
  'ends',
  'width',
  'rise',
  'casing width',
  'thickness',
  'reveal',
  'leg',
  'leg count',
]);

type AllSays = Readonly<Record<formulas.Compared, Content<string>>>;

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
  /** The comparisons are formulas; otherwise what was found stands as written. */
  private readonly live: boolean;
  private readonly openings: number;
  private readonly figures: LineFigures;

  constructor(
    private readonly check: LineCheck,
    private readonly takeoff: Takeoff,
    private readonly plain: boolean,
  ) {
    const [place, ...more] = check.places;
    // An alternate takes no place: it would be counted with the lines that the quote comes to.
    const single = place !== undefined && more.length === 0 && check.part !== 'alternate';
    this.opening = single ? (takeoff.openings[place] ?? null) : null;
    this.live = this.opening !== null && check.count !== null;
    this.openings = takeoff.openings.length;
    this.figures = lineFigures(check.line, this.opening);
  }

  all(): Readonly<Record<CheckKey, Content>> {
    const { line, findings, part, stake } = this.check;
    const { figures } = this;
    const quoted = (value: Value): Content => ({ value, style: 'input' });
    const text = (value: string): Content => ({ value, style: 'text' });
    const ours = (of: Parameters<typeof formulas.ours>[0], value: number | null): Content =>
      figure(value, formulas.ours(of, this.openings, this.plain));
    const compared = {
      openingSays: written(this.openingText()),
      quantitySays: this.quantitySays(),
      radiusSays: this.radiusSays(),
      lengthSays: this.lengthSays(),
      extensionSays: this.extensionSays(),
      priceSays: this.priceSays(),
    };
    const verdict = this.verdict(compared);
    return {
      row: { value: line.row, style: 'text' },
      mark: quoted(this.opening?.opening.mark || line.mark),
      verdict,
      reason: this.reason(verdict.value, compared),
      quantity: quoted(line.quantity),
      quantityRight: this.beside('quantity', 'quantitySays', compared, figures.ourQuantity),
      radius: quoted(line.radius),
      radiusRight: this.beside('radius', 'radiusSays', compared, figures.ourRadius),
      length: quoted(line.length),
      lengthRight: this.beside('length', 'lengthSays', compared, figures.ourLength),
      unitPrice: quoted(line.unitPrice),
      priceRight: this.beside('unit price', 'priceSays', compared, figures.ourPrice),
      extension: quoted(line.extension),
      ...this.money(compared),
      description: text(line.description),
      ...compared,
      ourQuantity: ours('quantity', figures.ourQuantity),
      ourRadius: ours(formulas.RADIUS_FIGURES[line.radiusOf], figures.ourRadius),
      ourLength: ours(formulas.LENGTH_FIGURES[line.lengthOf], figures.ourLength),
      ourPrice: ours('unit price', figures.ourPrice),
      place: this.place(),
      unit: figure(figures.unit, formulas.UNIT_FORMULA),
      // An offer beside the quote is no part of what it comes to.
      amount: part === 'alternate' ? written(0) : figure(amountOf(line) ?? 0, formulas.AMOUNT_FORMULA),
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

  private verdict(compared: AllSays): Content<string> {
    const style = (verdict: string) => (verdict === 'agrees' ? 'text' : 'attention');
    if (!this.live) return { value: this.check.verdict, style: style(this.check.verdict) };
    const { quantitySays, radiusSays, lengthSays, priceSays } = compared;
    const value = says.verdictText(
      Object.values(compared).map((one) => one.value),
      [quantitySays, radiusSays, lengthSays, priceSays].map((one) => one.value),
    );
    return { value, formula: formulas.VERDICT_FORMULA, style: style(value) };
  }

  private reason(verdict: string, compared: AllSays): Content {
    const texts = Object.fromEntries(
      formulas.COMPARED.map((key) => [key, compared[key].value]),
    ) as unknown as says.Comparisons;
    const reason = says.reasonText(verdict, texts);
    if (this.live) return figure(reason, formulas.REASON_FORMULA);
    const found = this.check.findings.filter((one) => one.verdict === verdict).map(({ text }) => text);
    return written(reason || found.join('; ').replace(/^can't tell: /, ''));
  }

  /** "agrees", or the right figure, beside the quoted one. */
  private beside(about: Finding['about'], key: BesideKey, compared: AllSays, ours: number | null): Content {
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

  /** What the line comes to, what is off for certain, and what hangs on it. */
  private money(
    compared: AllSays,
  ): Readonly<Record<'rightAmount' | 'extensionRight' | 'off' | 'priceOff' | 'hangs', Content>> {
    const { line, corrected, count } = this.check;
    const plain = line.by === 'piece' && line.reckoning === null && line.quantity !== null;
    const live = this.live && plain && amountOf(line) !== null;
    const off = toCents(priceOff(this.check));
    const hanging = hangs(this.check) ? Math.abs(amountOf(line) ?? 0) : 0;
    const priced = this.live && compared.priceSays.formula !== undefined;
    const rest = {
      priceOff: priced ? figure(off, formulas.priceOff(count!.by)) : written(off),
      hangs: live ? figure(hanging, formulas.HANGS_FORMULA) : written(hanging),
    };
    if (corrected === null)
      return { rightAmount: written(null), extensionRight: written(null), off: written(null), ...rest };
    const same = line.extension !== null && Math.abs(line.extension - corrected) < 0.005;
    return {
      rightAmount: live ? figure(corrected, formulas.rightAmount(count!.by)) : written(corrected),
      extensionRight: figure(same ? 'agrees' : corrected, formulas.EXTENSION_BESIDE),
      off: figure(toCents((amountOf(line) ?? 0) - corrected), formulas.OFF_FORMULA),
      ...rest,
    };
  }

  private quantitySays(): Content<string> {
    if (!this.live || this.unread('quantity')) return this.found('quantity');
    const { by, pieces } = this.check.count!;
    const text = says.quantityText(this.figures, pieces ?? 0);
    const value = by === 'with the first' && text !== 'agrees' ? '' : text;
    return figure(value, formulas.quantitySays(by));
  }

  private radiusSays(): Content<string> {
    // Heads of several radii are judged against each of them, which a formula of this length can't.
    if (!this.live || this.unread('radius') || this.opening?.own?.haunch) return this.found('radius');
    return this.shapeSays('radius');
  }

  private lengthSays(): Content<string> {
    const { line } = this.check;
    const finding = this.finding('length');
    const open = finding?.verdict === "can't tell" && !finding.notGiven;
    const { lengthOf } = line;
    const runs =
      lengthOf === 'with legs' || (finding?.verdict === 'agrees' && finding.right !== this.figures.ourLength);
    const together = runs || (lengthOf === 'all pieces' && this.figures.ourLength !== null && line.length !== null);
    if (!this.live || this.unread('length') || open || together) return this.found('length');
    return this.shapeSays('length');
  }

  private shapeSays(about: 'radius' | 'length'): Content<string> {
    const { standards } = this.takeoff;
    const finding = this.finding(about);
    const text = says.shapeText(about, this.figures, finding);
    const mistake = text === null ? says.mistakeText(finding!, this.check, this.opening, standards) : null;
    if (about === 'length' && !this.plain && standards.unit === 'in' && this.check.line.lengthOf === 'outside')
      return figure(text ?? mistake!, formulas.lengthCheckSays(this.openings));
    const named =
      mistake === null
        ? null
        : { quoted: finding!.quoted!, right: finding!.right!, tolerance: standards.tolerance, text: mistake };
    return figure(text ?? mistake!, formulas.shapeSays(about, named, standards.unit));
  }

  private extensionSays(): Content<string> {
    const { line } = this.check;
    // It compares the quote's own figures, so it needs no opening.
    const finding = this.finding('extension');
    const open = finding?.verdict === "can't tell" && !finding.notGiven;
    if (
      line.by === 'lot' ||
      line.reckoning !== null ||
      open ||
      line.problems.some(({ field }) => field !== 'radius' && field !== 'length')
    )
      return this.found('extension');
    return figure(says.extensionText(this.figures), formulas.EXTENSION_SAYS);
  }

  private priceSays(): Content<string> {
    if (!this.live || this.unread('unitPrice') || this.check.line.footPrice !== null) return this.found('unit price');
    return figure(says.priceText(this.figures, this.takeoff.standards.priceBand), formulas.PRICE_SAYS);
  }

  private openingText(): string {
    return this.check.findings
      .filter(({ about, verdict }) => OF_OPENING.has(about) && verdict !== 'agrees')
      .map(({ text }) => text)
      .join('; ');
  }

  private finding(about: Finding['about']): Finding | undefined {
    return this.check.findings.find((one) => one.about === about);
  }

  /** The cell holds something that is no figure. */
  private unread(field: LineCheck['line']['problems'][number]['field']): boolean {
    return this.check.line.problems.some((problem) => problem.field === field);
  }

  /** What was found when it was checked. */
  private found(about: Finding['about']): Content<string> {
    const finding = this.finding(about);
    if (finding === undefined) return written('');
    // Its column says what it is of.
    const said = finding.text.startsWith(`${about} `) ? finding.text.slice(about.length + 1) : finding.text;
    return written(finding.verdict === 'agrees' ? 'agrees' : said);
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

function figure<Held extends Value>(value: Held, formula: string): Content<Held> {
  return { value, formula, style: 'figure' };
}

function written<Held extends Value>(value: Held): Content<Held> {
  return { value, style: 'fixed' };
}

function sentence(text: string): string {
  return capital(text) + (/[.!?]$/.test(text) ? '' : '.');
}
