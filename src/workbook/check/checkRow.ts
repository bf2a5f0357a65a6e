import { checkLength } from '../../check/length';
import type { LineCheck } from '../../check/quote/checkLine';
import type { Finding } from '../../check/quote/finding';
import { amountOf } from '../../check/quote/quote';
import { extensionTolerance } from '../../check/quote/moneyFindings';
import { dollars } from '../../check/quote/money';
import { lengthText } from '../../lengthText';
import { roundTo, toCents } from '../../rounding';
import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';
import { columnFormat } from '../format';
import { sentences } from '../needsFormula';
import type { Cell, CellStyle } from '../sheet';
import { atRow, CHECK_COLUMNS, type CheckKey } from './columns';
import * as formulas from './formulas';

type Value = string | number | null;

/** One line of the quote as a row of the Check sheet; `row` counts from 1. */
export function checkRow(check: LineCheck, takeoff: Takeoff, row: number, plain: boolean): Cell[] {
  const cells = new RowCells(check, takeoff, plain).all();
  const { unit } = takeoff.standards;
  return CHECK_COLUMNS.map(({ key, measure }): Cell => {
    const { value, formula, style } = cells[key];
    // A count has no decimals, feet of molding may have some.
    const format = key === 'quantity' ? 'General' : columnFormat(measure, unit, value);
    const wrap = key.endsWith('Says') || key === 'found' || key === 'description' ? { wrap: true } : {};
    if (formula === undefined) return { value, style, format, ...wrap };
    // Text format would keep Excel from calculating a formula typed over it.
    return {
      value: value ?? '',
      formula: atRow(formula, row),
      style,
      format: format === '@' ? 'General' : format,
      ...wrap,
    };
  });
}

interface Content {
  readonly value: Value;
  readonly formula?: string;
  readonly style: CellStyle;
}

class RowCells {
  private readonly opening: OpeningTakeoff | null;
  /** All comparisons are live; otherwise what was found stands as written. */
  private readonly live: boolean;
  private readonly openings: number;

  constructor(
    private readonly check: LineCheck,
    private readonly takeoff: Takeoff,
    private readonly plain: boolean,
  ) {
    const [place, ...more] = check.places;
    this.opening = place === undefined || more.length > 0 ? null : (takeoff.openings[place] ?? null);
    this.live = this.opening !== null && check.alone;
    this.openings = takeoff.openings.length;
  }

  all(): Readonly<Record<CheckKey, Content>> {
    const { line, findings, stake } = this.check;
    const quoted = (value: Value): Content => ({ value, style: 'input' });
    const text = (value: string): Content => ({ value, style: 'text' });
    const quantitySays = this.says('quantity', this.quantityText(), formulas.QUANTITY_SAYS);
    const radiusSays = this.radiusSays();
    const lengthSays = this.lengthSays();
    const extensionSays = this.extensionSays();
    const priceSays = this.says('unit price', this.priceText(), formulas.PRICE_SAYS);
    const said = [quantitySays, radiusSays, lengthSays, priceSays].map(({ value }) => value);
    const openingSays = this.openingText();
    return {
      row: { value: line.row, style: 'text' },
      mark: quoted(this.opening?.opening.mark || line.mark),
      description: text(line.description),
      verdict: this.live
        ? {
            value: verdictOf([openingSays, extensionSays.value, ...said], said),
            formula: formulas.VERDICT_FORMULA,
            style: 'attention',
          }
        : { value: this.check.verdict, style: 'attention' },
      off: this.live
        ? { value: this.off(), formula: formulas.OFF_FORMULA, style: 'figure' }
        : { value: toCents(findings.reduce((sum, one) => sum + (one.dollars ?? 0), 0)), style: 'fixed' },
      quantity: quoted(line.quantity),
      radius: quoted(line.radius),
      length: quoted(line.length),
      unitPrice: quoted(line.unitPrice),
      extension: quoted(line.extension),
      openingSays: { value: openingSays, style: 'fixed' },
      quantitySays,
      radiusSays,
      lengthSays,
      extensionSays,
      priceSays,
      ourQuantity: this.ours('quantity', this.ourQuantity),
      ourRadius: this.ours(formulas.RADIUS_KEYS[line.radiusOf], this.ourRadius),
      ourLength: this.ours(formulas.LENGTH_KEYS[line.lengthOf], this.ourLength),
      ourPrice: this.ours('unitPrice', this.ourPrice),
      place: this.place(),
      unit: { value: this.unit, formula: formulas.UNIT_FORMULA, style: 'figure' },
      amount: { value: amountOf(line) ?? 0, formula: formulas.AMOUNT_FORMULA, style: 'figure' },
      stake: { value: toCents(stake), style: 'fixed' },
      found: { value: sentences(findings.map(({ text: found }) => capital(found))), style: 'fixed' },
    };
  }

  private get ourQuantity(): number | null {
    return this.opening?.known.quantity ?? null;
  }

  private get ourRadius(): number | null {
    const ring = this.opening?.own?.crown?.ring;
    if (!ring) return null;
    const { radiusOf } = this.check.line;
    return radiusOf === 'inside' ? ring.inside : radiusOf === 'outside' ? ring.outside : ring.radius;
  }

  private get ourLength(): number | null {
    const curve = this.opening?.own?.curve;
    if (!curve) return null;
    const { lengthOf } = this.check.line;
    return lengthOf === 'inside' ? curve.insideLength : lengthOf === 'center' ? curve.centerLength : curve.length;
  }

  private get ourPrice(): number | null {
    return this.opening?.cost?.unitPrice ?? null;
  }

  private get unit(): number | null {
    const { unitPrice, extension, quantity } = this.check.line;
    if (unitPrice !== null) return unitPrice;
    return extension !== null && quantity !== null ? extension / quantity : null;
  }

  private finding(about: Finding['about']): Finding | undefined {
    return this.check.findings.find((one) => one.about === about);
  }

  /** A mark is looked up where that finds the same opening; otherwise the place is written. */
  private place(): Content {
    if (this.opening === null) return { value: null, style: 'fixed' };
    const { mark } = this.opening.opening;
    const [place] = this.check.places;
    const first = this.takeoff.openings.findIndex((one) => one.opening.mark.toLowerCase() === mark.toLowerCase());
    const value = place! + 1;
    const findable = mark !== '' && first === place && !/[*?~]/.test(mark);
    return findable
      ? { value, formula: formulas.placeFormula(this.openings), style: 'figure' }
      : { value, style: 'fixed' };
  }

  private ours(key: string, value: number | null): Content {
    return { value, formula: formulas.ours(key, this.openings), style: 'figure' };
  }

  /** Live where every part of the comparison is; else the sentence that was found. */
  private says(about: Finding['about'], value: string, formula: string): Content {
    const finding = this.finding(about);
    const field = about === 'unit price' ? 'unitPrice' : about;
    const unread = this.check.line.problems.some((problem) => problem.field === field);
    if (this.live && !unread) return { value, formula, style: 'figure' };
    return { value: finding ? shortText(finding) : '', style: 'fixed' };
  }

  private quantityText(): string {
    const { quantity } = this.check.line;
    const right = this.ourQuantity;
    if (quantity === null) return "can't tell: no quantity given";
    if (right === null) return "can't tell: no quantity in the takeoff";
    if (quantity === right) return 'agrees';
    if (quantity * 2 === right) return `one piece counted for a pair${quantity === 1 ? ' or quantity of one' : ''}`;
    if (quantity === right * 2) return 'a pair counted for one piece';
    if (quantity === 1) return 'quantity of one';
    return `${Math.abs(quantity - right)} ${quantity < right ? 'too few' : 'too many'}`;
  }

  private radiusSays(): Content {
    // Heads of several radii are judged against each of them, which a formula of this length can't.
    if (this.opening?.own?.haunch) return this.fixed('radius');
    const { written, text } = this.shape('radius', this.check.line.radius, this.ourRadius);
    return this.says('radius', text, formulas.shapeSays('radius', written, this.takeoff.standards.unit));
  }

  private lengthSays(): Content {
    const { line } = this.check;
    const finding = this.finding('length');
    if (finding?.verdict === "can't tell" && !finding.notGiven) return this.fixed('length');
    if (line.lengthOf === 'all pieces' && this.ourLength !== null && line.length !== null) return this.fixed('length');
    const { unit } = this.takeoff.standards;
    const { written, text } = this.shape('length', line.length, this.ourLength);
    const byFunction = !this.plain && unit === 'in' && line.lengthOf === 'outside';
    return this.says(
      'length',
      text,
      byFunction ? formulas.lengthCheckSays(this.openings) : formulas.shapeSays('length', written, unit),
    );
  }

  private shape(
    about: 'radius' | 'length',
    quoted: number | null,
    right: number | null,
  ): { written: formulas.Written | null; text: string } {
    if (quoted === null) return { written: null, text: `can't tell: no ${about} given` };
    if (right === null) return { written: null, text: `can't tell: no ${about} in the takeoff` };
    const finding = this.finding(about);
    if (finding?.verdict !== 'differs') return { written: null, text: 'agrees' };
    const text = this.mistakeText(about, finding);
    return { written: { quoted, right, tolerance: this.takeoff.standards.tolerance, text }, text };
  }

  /** The words of ARCH.LENGTHCHECK, so that both kinds of workbook say the same. */
  private mistakeText(about: 'radius' | 'length', finding: Finding): string {
    const { unit, tolerance } = this.takeoff.standards;
    const { inputs } = this.opening!;
    if (about === 'length' && unit === 'in' && this.check.line.lengthOf === 'outside' && inputs) {
      const { head, span, rise, face, reveal, ends } = inputs;
      const judged = checkLength({ quoted: finding.quoted!, head, span, rise, face, reveal, ends, tolerance });
      if (judged.ok) return judged.value.text;
    }
    if (finding.mistakes.length > 0) return finding.mistakes.join(' or ');
    const off = finding.quoted! - finding.right!;
    return `unexplained: ${lengthText(Math.abs(off), unit)} ${off < 0 ? 'short' : 'long'}`;
  }

  private extensionSays(): Content {
    const { line } = this.check;
    const { quantity, unitPrice, extension } = line;
    if (line.by === 'lot' || line.problems.some(({ field }) => field !== 'radius' && field !== 'length'))
      return this.fixed('extension');
    const missing =
      extension === null ? 'extension' : unitPrice === null ? 'unit price' : quantity === null ? 'quantity' : null;
    if (missing !== null)
      return { value: `can't tell: no ${missing} given`, formula: formulas.EXTENSION_SAYS, style: 'figure' };
    const off = extension! - quantity! * unitPrice!;
    const value =
      Math.abs(off) <= extensionTolerance(quantity!)
        ? 'agrees'
        : `${dollars(Math.abs(off))} ${off < 0 ? 'too little' : 'too much'}`;
    return { value, formula: formulas.EXTENSION_SAYS, style: 'figure' };
  }

  private priceText(): string {
    const { unit, ourPrice: ours } = this;
    if (unit === null) return "can't tell: no price given";
    if (ours === null) return "can't tell: no price in the takeoff";
    if (ours === 0) return "can't tell: our own price is 0";
    const off = unit / ours - 1;
    if (Math.abs(off) <= this.takeoff.standards.priceBand + 1e-9) return 'agrees';
    return `${roundTo(1, Math.abs(off) * 100).toFixed(1)}% ${unit < ours ? 'below' : 'above'} ours`;
  }

  private openingText(): string {
    return this.check.findings
      .filter(({ about, verdict }) => (about === 'opening' || about === 'width') && verdict !== 'agrees')
      .map(({ text }) => text)
      .join('; ');
  }

  private fixed(about: Finding['about']): Content {
    const finding = this.finding(about);
    return { value: finding ? shortText(finding) : '', style: 'fixed' };
  }

  private off(): number {
    const own = this.check.findings.filter(({ about }) => about !== 'opening' && about !== 'width');
    return roundTo(
      2,
      own.reduce((sum, { dollars: money }) => sum + (money ?? 0), 0),
    );
  }
}

function shortText({ verdict, text }: Finding): string {
  return verdict === 'agrees' ? 'agrees' : text;
}

/** The verdict formula's reckoning. */
function verdictOf(all: readonly Value[], figures: readonly Value[]): string {
  const texts = all.map(String);
  const open = (text: string) => text.startsWith("can't tell");
  if (texts.some((text) => text !== '' && text !== 'agrees' && !open(text))) return 'differs';
  if (texts.some((text) => open(text) && !text.endsWith(' given'))) return "can't tell";
  return figures.includes('agrees') ? 'agrees' : "can't tell";
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
}
