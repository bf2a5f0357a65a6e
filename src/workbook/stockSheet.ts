import { lengthText } from '../lengthText';
import { boardFeet } from '../lumber';
import { toCents } from '../rounding';
import type { Standards } from '../standards';
import type { BoardCut, BoardPlan } from '../takeoff/boardPlan';
import type { BoardNeeds } from '../takeoff/boards';
import { perInch, type Unit } from '../unit';
import { headingCell, unitCell } from './columnHeads';
import { columnFormat } from './format';
import { plainFormula } from './plain';
import type { Cell, Sheet } from './sheet';

const HEAD_ROWS = 4;

/** Longest line of cuts, in characters: what a printed page has room for beside the other columns. */
const CUTS_LINE = 76;

/** Headings of the boards to buy, with what stands in the unit row. */
const BUY_HEADINGS: readonly (readonly [heading: string, unit: (unit: Unit) => string, width: number])[] = [
  ['Species', () => '', 14],
  ['Quarters', () => 'of an inch', 13],
  ['Thickness', (unit) => unit, 11],
  ['Width', (unit) => unit, 9],
  ['Length', (unit) => unit, 9],
  ['Boards in the plan', () => '', 10],
  ['Boards with waste', () => '', 10],
  ['Price each', () => '$', 10],
  ['Cost', () => '$', 11],
  ['Board feet', () => 'bd ft', 11],
];
const CUT_HEADINGS = ['Species', 'Quarters', 'Thickness', 'Width', 'Length', 'Boards alike', 'Offcut', 'Cuts'];
const PROOF_HEADINGS = [
  'Species',
  'Quarters',
  'Thickness',
  'Width',
  'Boards',
  'Cost',
  'Least possible',
  'Wood used',
  'Proof',
];

const TEXT_HEADINGS: ReadonlySet<string> = new Set(['Species', 'Cuts', 'Proof']);

/** Boards of one size, over all plans. */
interface Buy {
  readonly plan: BoardPlan;
  readonly length: number;
  readonly price: number;
  count: number;
}

/** Boards to buy by species, thickness, width and length; below, how to cut them and the proof that fewer won't do. */
export function stockSheet(needs: BoardNeeds, standards: Standards, plain: boolean): Sheet {
  const { unit } = standards;
  const heading = (text: string) => headingCell(text, TEXT_HEADINGS.has(text) ? 'text' : 'figures');
  const written = writtenCell;
  const size = (value: number) => written(value, columnFormat('input length', unit, value));
  const board = (plan: BoardPlan) => [
    written(plan.species),
    written(plan.quarters, '0'),
    size(plan.thickness),
    size(plan.width),
  ];
  const buys = buysOf(needs);
  const rows: (Cell | null)[][] = [
    [{ value: 'Stock', style: 'title' }],
    [
      {
        value:
          'Boards to buy. What is in italics is worked out when the takeoff is filled: fill again after openings, blanks or ' +
          'the stock list change.',
        style: 'text',
      },
    ],
    BUY_HEADINGS.map(([text]) => heading(text)),
    BUY_HEADINGS.map(([text, unitText]) => unitCell(unitText(unit), TEXT_HEADINGS.has(text) ? 'text' : 'figures')),
    ...buys.map((buy, at) => [
      ...board(buy.plan),
      size(buy.length),
      ...buyFigures(buy, HEAD_ROWS + 1 + at, standards, plain),
    ]),
    totalRow(buys, standards),
  ];
  if (needs.problems.length > 0) {
    rows.push([], [{ value: 'Not in the plan', style: 'group' }]);
    for (const problem of needs.problems) rows.push([{ value: `${problem}.`, style: 'attention', format: '@' }]);
  }
  rows.push([], [{ value: 'Cutting plan', style: 'group' }], CUT_HEADINGS.map(heading));
  for (const plan of needs.plans) {
    for (const { count, length, cuts, offcut } of plan.cutting) {
      const [text, ...more] = linesOf(cutTexts(cuts, unit));
      const left = { ...written(lengthText(offcut, unit)), align: 'right' as const };
      rows.push([...board(plan), size(length), written(count, '0'), left, written(text!)]);
      for (const line of more) rows.push([...Array.from({ length: 7 }, () => null), written(line)]);
    }
  }
  rows.push([], [{ value: 'Proof', style: 'group' }], PROOF_HEADINGS.map(heading));
  for (const plan of needs.plans) {
    const money = columnFormat('money', unit);
    rows.push([
      ...board(plan),
      written(plan.boards, '0'),
      written(plan.cost, money),
      written(plan.lowerBound, money),
      written(plan.yield, '0.0%'),
      written(proofText(plan)),
    ]);
  }
  return {
    name: 'Stock',
    rows,
    widths: BUY_HEADINGS.map(([, , width]) => width),
    // The headings of the boards to buy are not those of the cutting plan below them.
    frozenRows: 1,
    frozenColumns: 1,
    repeatRows: [1, 1],
    landscape: true,
    home: `A${HEAD_ROWS + 1}`,
    locked: true,
  };
}

function writtenCell(value: string | number, format = '@'): Cell {
  return { value, style: 'fixed', format };
}

function buysOf({ plans }: BoardNeeds): Buy[] {
  const buys = new Map<string, Buy>();
  for (const plan of plans) {
    for (const { length, count, price } of plan.buys) {
      const key = [plan.species.toLowerCase(), plan.quarters, plan.thickness, plan.width, length].join('|');
      const buy = buys.get(key) ?? { plan, length, price, count: 0 };
      buy.count += count;
      buys.set(key, buy);
    }
  }
  return [...buys.values()].sort(
    (one, other) =>
      one.plan.species.localeCompare(other.plan.species, 'en') ||
      one.plan.thickness - other.plan.thickness ||
      one.plan.width - other.plan.width ||
      one.length - other.length,
  );
}

/** `8 × 18 7/8 (W1, W4)` for each kind of piece; parts alike in length and name are one kind to the person at the saw. */
function cutTexts(cuts: BoardCut['cuts'], unit: Unit): string[] {
  const pieces = new Map<string, number>();
  for (const cut of cuts) {
    const what = `${lengthText(cut.length, unit)} (${cut.part.for})`;
    pieces.set(what, (pieces.get(what) ?? 0) + cut.pieces);
  }
  return [...pieces].map(([what, count]) => `${count} × ${what}`);
}

/** A list in lines, broken between its items or, where one has many marks, between those. */
function linesOf(items: readonly string[]): string[] {
  const lines: string[] = [];
  for (const word of items.join(', ').split(/(?<=,) /)) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + word.length < CUTS_LINE) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Whole boards once the allowance for defects and waste is added; the sheet's formula takes off the same hair. */
function withWaste({ count }: Buy, standards: Standards): number {
  return Math.ceil(count * (1 + standards.waste) - 1e-9);
}

function feetOf({ plan, length }: Buy, { unit }: Standards): number {
  const inch = perInch(unit);
  const feet = boardFeet(plan.quarters / 4, plan.width / inch, length / inch);
  return feet.ok ? feet.value : 0;
}

function buyFigures(buy: Buy, row: number, standards: Standards, plain: boolean): Cell[] {
  const { unit } = standards;
  const live = (value: number, formula: string, format: string): Cell => ({
    value,
    formula: plain ? plainFormula(formula, () => 0).formula : formula,
    style: 'figure',
    format,
  });
  const count = withWaste(buy, standards);
  const feet = `ARCH.BOARDFEET(B${row}/4,D${row}/Shop_per_inch,E${row}/Shop_per_inch,1)`;
  const listed = `Stock_species,A${row},Stock_thickness,C${row},Stock_width,D${row},Stock_length,E${row}`;
  const money = columnFormat('money', unit);
  return [
    writtenCell(buy.count, '0'),
    live(count, `ROUNDUP(F${row}*(1+Shop_waste)-0.000000001,0)`, '0'),
    live(buy.price, `ROUND(${feet}*MINIFS(Stock_price,${listed}),2)`, money),
    live(toCents(count * buy.price), `ROUND(G${row}*H${row},2)`, money),
    live(count * feetOf(buy, standards), `G${row}*${feet}`, columnFormat('boardFeet', unit)),
  ];
}

function totalRow(buys: readonly Buy[], standards: Standards): (Cell | null)[] {
  const first = HEAD_ROWS + 1;
  const last = HEAD_ROWS + buys.length;
  const sum = (letter: string, of: (buy: Buy) => number, format: string): Cell => ({
    value: buys.reduce((total, buy) => total + of(buy), 0),
    formula: buys.length === 0 ? '0' : `SUM(${letter}${first}:${letter}${last})`,
    style: 'total',
    format,
  });
  const cost = (buy: Buy) => toCents(withWaste(buy, standards) * buy.price);
  return [
    { value: 'Total', style: 'total' },
    ...Array.from({ length: 4 }, () => null),
    sum('F', (buy) => buy.count, '0'),
    sum('G', (buy) => withWaste(buy, standards), '0'),
    null,
    sum('I', cost, columnFormat('money', standards.unit)),
    sum('J', (buy) => withWaste(buy, standards) * feetOf(buy, standards), columnFormat('boardFeet', standards.unit)),
  ];
}

/** Whether a cheaper plan can exist. */
function proofText({ proven, interrupted, cost, lowerBound }: BoardPlan): string {
  if (proven) return 'Proven: no plan for these pieces, laid this way, costs less.';
  const within = `Within $${(cost - lowerBound).toFixed(2)} of the least possible.`;
  return interrupted
    ? `${within} The search took too long and was cut short: filled again, it may come out otherwise.`
    : within;
}
