import { lengthText } from '../lengthText';
import { boardFeet } from '../lumber';
import { toCents } from '../rounding';
import { perInch } from '../unit';
import type { BoardPlan } from '../takeoff/boardPlan';
import type { BoardNeeds } from '../takeoff/boards';
import type { Standards } from '../standards';
import { columnFormat } from './format';
import { plainFormula } from './plain';
import type { Cell, Sheet } from './sheet';

const HEAD_ROWS = 4;
const HEADINGS = [
  'Species',
  'Quarters',
  'Thickness',
  'Width',
  'Length',
  'Boards in the plan',
  'Boards with waste',
  'Price each',
  'Cost',
  'Board feet',
  'Used',
  'Proof',
];

/** Boards to buy by species, thickness and width; below, how to cut them. */
export function stockSheet(needs: BoardNeeds, standards: Standards, plain: boolean): Sheet {
  const { unit } = standards;
  const length = columnFormat('input length', unit);
  const written = (value: string | number, format = '@'): Cell => ({ value, style: 'fixed', format });
  const live = (value: number, formula: string, format: string): Cell => ({
    value,
    formula: plain ? plainFormula(formula, () => 0).formula : formula,
    style: 'figure',
    format,
  });
  const rows: (Cell | null)[][] = [
    [{ value: 'Stock', style: 'title' }],
    [
      {
        value:
          'Boards to buy, and how to cut them. The cutting plan is worked out when the takeoff is filled: fill again after openings, blanks or the stock list change. Prices follow the Standards.',
        style: 'text',
      },
    ],
    HEADINGS.map((value) => ({ value, style: 'heading', wrap: true })),
    HEADINGS.map((_heading, at) => ({
      value: ['', 'in/4', unit, unit, unit, '', '', '$', '$', 'bd ft', '%', ''][at] ?? '',
      style: 'unit',
    })),
  ];
  let boards = 0;
  let withWaste = 0;
  let cost = 0;
  let feet = 0;
  for (const plan of needs.plans) {
    plan.buys.forEach((buy, at) => {
      const row = rows.length + 1;
      const count = Math.ceil(buy.count * (1 + standards.waste) - 1e-9);
      const each = feetOf(plan, buy.length, standards);
      boards += buy.count;
      withWaste += count;
      cost += toCents(count * buy.price);
      feet += count * each;
      rows.push([
        written(plan.species),
        written(plan.quarters, '0'),
        written(plan.thickness, length),
        written(plan.width, length),
        written(buy.length, length),
        written(buy.count, '0'),
        live(count, `ROUNDUP(F${row}*(1+Shop_waste)-0.000000001,0)`, '0'),
        live(
          buy.price,
          `ROUND(ARCH.BOARDFEET(B${row}/4,D${row}/Shop_per_inch,E${row}/Shop_per_inch,1)*` +
            `MINIFS(Stock_price,Stock_species,A${row},Stock_thickness,C${row},Stock_width,D${row},Stock_length,E${row}),2)`,
          columnFormat('money', unit),
        ),
        live(toCents(count * buy.price), `ROUND(G${row}*H${row},2)`, columnFormat('money', unit)),
        live(
          count * each,
          `G${row}*ARCH.BOARDFEET(B${row}/4,D${row}/Shop_per_inch,E${row}/Shop_per_inch,1)`,
          columnFormat('boardFeet', unit),
        ),
        at === 0 ? written(plan.yield, '0.0%') : written(''),
        at === 0 ? { ...written(proofText(plan)), wrap: true } : written(''),
      ]);
    });
  }
  const first = HEAD_ROWS + 1;
  const last = rows.length;
  const sum = (letter: string, value: number, format: string): Cell => ({
    value,
    formula: last < first ? '0' : `SUM(${letter}${first}:${letter}${last})`,
    style: 'total',
    format,
  });
  rows.push([
    { value: 'Total', style: 'total' },
    null,
    null,
    null,
    null,
    sum('F', boards, '0'),
    sum('G', withWaste, '0'),
    null,
    sum('I', toCents(cost), columnFormat('money', unit)),
    sum('J', feet, columnFormat('boardFeet', unit)),
  ]);
  if (needs.problems.length > 0) {
    rows.push([], [{ value: 'Not in the plan', style: 'group' }]);
    for (const problem of needs.problems) rows.push([{ value: problem, style: 'attention', format: '@' }]);
  }
  rows.push([], [{ value: 'Cutting plan', style: 'group' }]);
  rows.push(
    ['Species', 'Quarters', 'Thickness', 'Width', 'Length', 'Boards alike', 'Offcut', 'Cuts'].map((value) => ({
      value,
      style: 'heading',
    })),
  );
  for (const plan of needs.plans) {
    for (const cut of plan.cutting) {
      rows.push([
        written(plan.species),
        written(plan.quarters, '0'),
        written(plan.thickness, length),
        written(plan.width, length),
        written(cut.length, length),
        written(cut.count, '0'),
        written(lengthText(cut.offcut, unit)),
        {
          ...written(
            cut.cuts.map((each) => `${each.pieces} × ${lengthText(each.length, unit)} (${each.part.for})`).join(', '),
          ),
          wrap: false,
        },
      ]);
    }
  }
  return {
    name: 'Stock',
    rows,
    widths: [14, 9, 10, 9, 9, 10, 10, 10, 11, 11, 8, 60],
    frozenRows: HEAD_ROWS,
    frozenColumns: 1,
    repeatRows: [3, 4],
    landscape: true,
    home: `A${first}`,
    locked: true,
  };
}

function feetOf(plan: BoardPlan, length: number, { unit }: Standards): number {
  const inch = perInch(unit);
  const feet = boardFeet(plan.quarters / 4, plan.width / inch, length / inch);
  return feet.ok ? feet.value : 0;
}

/** Whether a cheaper plan can exist. */
function proofText(plan: BoardPlan): string {
  return `${plan.proven ? 'Proven' : 'Not proven'}: ${plan.less}.`;
}
