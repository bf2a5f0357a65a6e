import { lengthText } from '../lengthText';
import { roundTo, toCents } from '../rounding';
import type { Standards } from '../standards';
import { SAWING_RULES, type BoardNeeds, type WoodBoards } from '../takeoff/boards';
import { feetOf } from '../takeoff/woodPlanning';
import { boardsToBuy, type BoardsToBuy } from '../takeoff/boardsToBuy';
import { boardWords, proofWords } from '../takeoff/boardWords';
import { savingWords, type SegmentSavings } from '../takeoff/segmentChange';
import type { Unit } from '../unit';
import { lettersOf } from './address';
import { addBoardPictures } from './boardPictures';
import { headingCell, unitCell } from './columnHeads';
import { columnFormat } from './format';
import { plainFormula } from './formulas/plain';
import type { Cell, Sheet } from './sheet';
import { titleRow } from './titleRow';

const HEAD_ROWS = 4;

/** Longest line of cuts, in characters: what a printed page has room for beside the other columns. */
const CUTS_LINE = 76;

/** Headings of the boards to buy, with what stands in the unit row. */
const BUY_HEADINGS = [
  ['Species', () => '', 14],
  ['Quarters', () => 'of an inch', 13],
  ['Thickness', (unit) => unit, 11],
  ['Width', (unit) => unit, 9],
  ['Length', (unit) => unit, 9],
  ['Boards', () => '', 10],
  ['On hand', () => '', 10],
  ['Price each', () => '$', 10],
  ['Cost', () => '$', 11],
  ['Board feet', () => 'bd ft', 11],
] as const satisfies readonly (readonly [heading: string, unit: (unit: Unit) => string, width: number])[];
type BuyHeading = (typeof BUY_HEADINGS)[number][0];
const BUY = lettersOf<BuyHeading>(BUY_HEADINGS.map(([heading]) => heading));
const COST_COLUMN = BUY_HEADINGS.findIndex(([heading]) => heading === 'Cost');
const CUT_HEADINGS = ['Species', 'Quarters', 'Thickness', 'Width', 'Length', 'Boards alike', 'Left over', 'Cuts'];
const PROOF_HEADINGS = [
  'Species',
  'Quarters',
  'Thickness',
  'Boards',
  'For defects',
  'Wood used',
  'Cost',
  'Least possible',
  'Proof',
];

const TEXT_HEADINGS: ReadonlySet<string> = new Set(['Species', 'Cuts', 'Proof']);

export interface StockSheetOptions {
  readonly plain: boolean;
  /** With the cutting plan drawn: for files, the only ones that show drawings. */
  readonly pictures: boolean;
  /** Where other numbers of segments cost less; null: nobody asked. */
  readonly savings?: SegmentSavings | null;
}

/** Boards to buy by wood, width and length; below, the rules of sawing, how good the plan is, and how to cut each board. */
export function stockSheet(needs: BoardNeeds, standards: Standards, options: StockSheetOptions): Sheet {
  const { plain, pictures, savings = null } = options;
  const { unit } = standards;
  const heading = (text: string) => headingCell(text, TEXT_HEADINGS.has(text) ? 'text' : 'figures');
  const written = writtenCell;
  const size = (value: number) => written(value, columnFormat('input length', unit, value));
  const money = columnFormat('money', unit);
  const wood = ({ species, quarters, thickness }: WoodBoards) => [
    written(species),
    written(quarters, '0'),
    size(thickness),
  ];
  const buys = boardsToBuy(needs, standards);
  const rows: (Cell | null)[][] = [
    titleRow('Stock'),
    [
      {
        value:
          'Boards to buy, with the pieces for defects and waste in them. What is in italics is planned as a whole: with the ' +
          'pane open it is renewed after an edit, else the top of each page says when it is older than the rows.',
        style: 'text',
      },
    ],
    BUY_HEADINGS.map(([text]) => heading(text)),
    BUY_HEADINGS.map(([text, unitText]) => unitCell(unitText(unit), TEXT_HEADINGS.has(text) ? 'text' : 'figures')),
    ...buys.map((buy, at) => [
      ...wood(buy.plan),
      size(buy.board.width),
      size(buy.board.length),
      ...buyFigures(buy, HEAD_ROWS + 1 + at, standards, plain),
    ]),
    totalRow(buys, standards),
  ];
  if (needs.problems.length > 0) {
    rows.push([], [{ value: 'Not in the plan', style: 'group' }]);
    for (const problem of needs.problems) rows.push([{ value: `${problem}.`, style: 'attention', format: '@' }]);
  }
  rows.push([], [{ value: 'Proof', style: 'group' }], PROOF_HEADINGS.map(heading));
  for (const plan of needs.plans) {
    rows.push([
      ...wood(plan),
      written(
        plan.boards.reduce((sum, { count }) => sum + count, 0),
        '0',
      ),
      written(
        plan.parts.reduce((sum, { extra }) => sum + extra, 0),
        '0',
      ),
      written(plan.yield, '0.0%'),
      written(plan.cost, money),
      written(plan.lowerBound, money),
      written(proofWords(plan)),
    ]);
  }
  if (savings !== null) rows.push(...savingsRows(savings, money));
  rows.push([], [{ value: 'Rules of sawing', style: 'group' }]);
  SAWING_RULES.forEach((rule, at) => rows.push([{ value: `${at + 1}. ${rule}`, style: 'text', format: '@' }]));
  rows.push([{ value: wasteWords(needs, standards), style: 'text', format: '@' }]);
  rows.push([], [{ value: 'Cutting plan', style: 'group' }], CUT_HEADINGS.map(heading));
  for (const plan of needs.plans) {
    for (const alike of plan.boards) {
      const { width, length } = plan.sale[alike.board]!;
      const lines = boardWords(alike, plan, unit).flatMap(({ where, items }) =>
        linesOf(where === '' ? items : [`${where}: ${items[0] ?? ''}`, ...items.slice(1)]),
      );
      const left = { ...written(lengthText(alike.left, unit)), align: 'right' as const };
      const board = [...wood(plan), size(width), size(length), written(alike.count, '0'), left];
      lines.forEach((line, at) => rows.push([...(at === 0 ? board : board.map(() => null)), written(line)]));
    }
  }
  const widths = BUY_HEADINGS.map(([, , width]) => width);
  return {
    name: 'Stock',
    rows,
    widths,
    ...(pictures ? { pictures: addBoardPictures(rows, needs, standards, widths) } : {}),
    // The headings of the boards to buy are not those of the cutting plan below them.
    frozenRows: 1,
    frozenColumns: 1,
    repeatRows: [1, 1],
    landscape: true,
    home: `A${HEAD_ROWS + 1}`,
    locked: true,
  };
}

/** What other numbers of segments would save, in the column of costs, and for which openings. */
function savingsRows({ changes, saved }: SegmentSavings, money: string): (Cell | null)[][] {
  const words = changes.length === 0 ? 'No other number costs less' : 'They would save';
  const blanks = Array.from({ length: COST_COLUMN - 1 }, () => null);
  return [
    [],
    [{ value: 'Other numbers of segments', style: 'group' }],
    [writtenCell(`${words}, boards and gluing together`), ...blanks, writtenCell(toCents(saved), money)],
    ...changes.map((change) => [writtenCell(savingWords(change))]),
  ];
}

function wasteWords({ plans }: BoardNeeds, { waste }: Standards): string {
  const extra = plans.reduce((sum, { parts }) => sum + parts.reduce((pieces, one) => pieces + one.extra, 0), 0);
  if (extra === 0) return 'Nothing is planned for defects and waste.';
  const pieces = extra === 1 ? '1 piece is' : `${extra} pieces are`;
  return `For defects and waste ${pieces} planned over what the openings, spare and test pieces need: ${roundTo(1, waste * 100)}% of their wood.`;
}

function writtenCell(value: string | number, format = '@'): Cell {
  return { value, style: 'fixed', format };
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

function buyFigures(
  { board, bought, price, cost }: BoardsToBuy,
  row: number,
  standards: Standards,
  plain: boolean,
): Cell[] {
  const { unit } = standards;
  const live = (value: number, formula: string, format: string): Cell => ({
    value,
    formula: plain ? plainFormula(formula, () => 0).formula : formula,
    style: 'figure',
    format,
  });
  const at = (heading: BuyHeading) => `${BUY[heading]}${row}`;
  const feet = `ARCH.BOARDFEET(${at('Quarters')}/4,${at('Width')}/Shop_per_inch,${at('Length')}/Shop_per_inch,1)`;
  const money = columnFormat('money', unit);
  return [
    writtenCell(bought, '0'),
    board.onHand === null ? writtenCell('') : writtenCell(board.onHand, '0'),
    writtenCell(price, money),
    live(cost, `ROUND(${at('Boards')}*${at('Price each')},2)`, money),
    live(bought * feetOf(board, unit), `${at('Boards')}*${feet}`, columnFormat('boardFeet', unit)),
  ];
}

function totalRow(buys: readonly BoardsToBuy[], standards: Standards): (Cell | null)[] {
  const first = HEAD_ROWS + 1;
  const last = HEAD_ROWS + buys.length;
  const sum = (heading: BuyHeading, of: (buy: BoardsToBuy) => number, format: string): Cell => ({
    value: buys.reduce((total, buy) => total + of(buy), 0),
    formula: buys.length === 0 ? '0' : `SUM(${BUY[heading]}${first}:${BUY[heading]}${last})`,
    style: 'total',
    format,
  });
  return [
    { value: 'Total', style: 'total' },
    ...Array.from({ length: 4 }, () => null),
    sum('Boards', (buy) => buy.bought, '0'),
    null,
    null,
    sum('Cost', (buy) => buy.cost, columnFormat('money', standards.unit)),
    sum(
      'Board feet',
      (buy) => buy.bought * feetOf(buy.board, standards.unit),
      columnFormat('boardFeet', standards.unit),
    ),
  ];
}
