import { lengthText } from '../lengthText';
import type { Standards } from '../standards';
import { feetOf, type BoardCut, type BoardPlan } from '../takeoff/boardPlan';
import type { BoardNeeds } from '../takeoff/boards';
import { boardsToBuy, type BoardsToBuy } from '../takeoff/boardsToBuy';
import type { Layout } from '../takeoff/woodParts';
import type { Unit } from '../unit';
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
  const buys = boardsToBuy(needs, standards);
  const rows: (Cell | null)[][] = [
    [{ value: 'Stock', style: 'title' }],
    [
      {
        value:
          'Boards to buy; the allowance for waste is of all boards of a wood, rounded up once. What is in italics is worked out ' +
          'when the takeoff is filled: fill again after openings, blanks or the stock list change.',
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
      const [text, ...more] = linesOf(cutTexts(cuts, plan.parts, unit));
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

/**
 * `8 × 18 7/8, flipped in turn (W1, W4)` for each kind of piece; parts alike in length, name and the way they lie are one kind
 * to the person at the saw.
 */
function cutTexts(cuts: BoardCut['cuts'], parts: BoardPlan['parts'], unit: Unit): string[] {
  const layouts = new Map(parts.map(({ part, layout }) => [part, layout]));
  const pieces = new Map<string, number>();
  for (const cut of cuts) {
    const what = [lengthText(cut.length, unit), ...layWords(layouts.get(cut.part))].join(', ') + ` (${cut.part.for})`;
    pieces.set(what, (pieces.get(what) ?? 0) + cut.pieces);
  }
  return [...pieces].map(([what, count]) => `${count} × ${what}`);
}

/** How pieces lie on the board, where it is not one after the other: what lies abreast or interlocks takes less length. */
function layWords(layout: Layout | undefined): string[] {
  if (layout === undefined) return [];
  const { way, across } = layout;
  const turned = {
    straight: [],
    nested: ['nested'],
    'half-turn': ['each other one turned half round'],
    flipped: ['flipped in turn'],
  };
  return [...turned[way], ...(across > 1 ? [`${across} abreast`] : [])];
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

function buyFigures(buy: BoardsToBuy, row: number, standards: Standards, plain: boolean): Cell[] {
  const { unit } = standards;
  const live = (value: number, formula: string, format: string): Cell => ({
    value,
    formula: plain ? plainFormula(formula, () => 0).formula : formula,
    style: 'figure',
    format,
  });
  /** The column down to a row, as far as it is of this row's wood; from the unit row on, which holds no figures. */
  const upTo = (column: string, last: number) => {
    const range = (letter: string) => `${letter}$${HEAD_ROWS}:${letter}$${last}`;
    return `${range(column)},${range('A')},A${row},${range('C')},C${row}`;
  };
  const feet = `ARCH.BOARDFEET(B${row}/4,D${row}/Shop_per_inch,E${row}/Shop_per_inch,1)`;
  const listed = `Stock_species,A${row},Stock_thickness,C${row},Stock_width,D${row},Stock_length,E${row}`;
  const money = columnFormat('money', unit);
  return [
    writtenCell(buy.planned, '0'),
    live(
      buy.bought,
      `ROUNDUP(SUMIFS(${upTo('F', row)})*(1+Shop_waste)-0.000000001,0)-SUMIFS(${upTo('G', row - 1)})`,
      '0',
    ),
    live(buy.price, `ROUND(${feet}*MINIFS(Stock_price,${listed}),2)`, money),
    live(buy.cost, `ROUND(G${row}*H${row},2)`, money),
    live(
      buy.bought * feetOf({ ...buy.plan, length: buy.length }, standards.unit),
      `G${row}*${feet}`,
      columnFormat('boardFeet', unit),
    ),
  ];
}

function totalRow(buys: readonly BoardsToBuy[], standards: Standards): (Cell | null)[] {
  const first = HEAD_ROWS + 1;
  const last = HEAD_ROWS + buys.length;
  const sum = (letter: string, of: (buy: BoardsToBuy) => number, format: string): Cell => ({
    value: buys.reduce((total, buy) => total + of(buy), 0),
    formula: buys.length === 0 ? '0' : `SUM(${letter}${first}:${letter}${last})`,
    style: 'total',
    format,
  });
  return [
    { value: 'Total', style: 'total' },
    ...Array.from({ length: 4 }, () => null),
    sum('F', (buy) => buy.planned, '0'),
    sum('G', (buy) => buy.bought, '0'),
    null,
    sum('I', (buy) => buy.cost, columnFormat('money', standards.unit)),
    sum(
      'J',
      (buy) => buy.bought * feetOf({ ...buy.plan, length: buy.length }, standards.unit),
      columnFormat('boardFeet', standards.unit),
    ),
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
