import { lengthText } from '../lengthText';
import type { Standards } from '../standards';
import type { BoardNeeds } from '../takeoff/boards';
import { feetOf } from '../takeoff/woodPlanning';
import { boardsToBuy } from '../takeoff/boardsToBuy';
import type { Unit } from '../unit';
import { headingCell } from './columnHeads';
import { columnFormat } from './format';
import type { Cell, Sheet } from './sheet';
import { titleRow } from './titleRow';

/** A line of the list that goes to a lumber yard. */
export interface PurchaseLine {
  readonly wood: string;
  /** Rough, in quarters of an inch. */
  readonly quarters: number;
  /** Dressed. */
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly boards: number;
  readonly boardFeet: number;
  readonly price: number;
  readonly cost: number;
}

/** The boards to buy by wood, width and length; those on hand are not bought. */
export function purchaseLines(needs: BoardNeeds, standards: Standards): PurchaseLine[] {
  return boardsToBuy(needs, standards)
    .filter(({ board }) => board.onHand === null)
    .map(({ plan, board, bought, price, cost }) => ({
      wood: plan.species,
      quarters: plan.quarters,
      thickness: plan.thickness,
      width: board.width,
      length: board.length,
      boards: bought,
      boardFeet: bought * feetOf(board, standards.unit),
      price,
      cost,
    }));
}

const HEADINGS = ['Wood', 'Rough', 'Dressed', 'Width', 'Length', 'Boards', 'Board feet'];

/** The list as a sheet of its own, to be sent as it is: sizes as a yard writes them, prices only where they are wanted. */
export function purchaseSheet(lines: readonly PurchaseLine[], unit: Unit, prices: boolean, older?: string): Sheet {
  const headings = [...HEADINGS, ...(prices ? ['Price each', 'Cost'] : [])];
  const sum = (of: (line: PurchaseLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  const money = columnFormat('money', unit);
  const figure = (value: number, format: string, style: Cell['style'] = 'text'): Cell => ({ value, format, style });
  const words = (value: string): Cell => ({ value, style: 'text', format: '@' });
  const size = (value: number): Cell => ({ ...words(lengthText(value, unit)), align: 'right' });
  return {
    name: 'Purchase',
    rows: [
      titleRow('Purchase', older),
      [
        {
          value: `Boards to buy. ${unit === 'in' ? 'Inches' : 'Millimeters'}; rough thickness in quarters of an inch; widths and lengths are the least that will do.`,
          style: 'note',
        },
      ],
      headings.map((heading, at) => headingCell(heading, at === 0 ? 'text' : 'figures')),
      ...lines.map((line) => [
        words(line.wood),
        { ...words(`${line.quarters}/4`), align: 'right' as const },
        size(line.thickness),
        size(line.width),
        size(line.length),
        figure(line.boards, '0'),
        figure(line.boardFeet, '0.00'),
        ...(prices ? [figure(line.price, money), figure(line.cost, money)] : []),
      ]),
      [
        { value: 'Total', style: 'total' },
        ...Array.from({ length: 4 }, () => null),
        figure(
          sum(({ boards }) => boards),
          '0',
          'total',
        ),
        figure(
          sum(({ boardFeet }) => boardFeet),
          '0.00',
          'total',
        ),
        ...(prices
          ? [
              null,
              figure(
                sum(({ cost }) => cost),
                money,
                'total',
              ),
            ]
          : []),
      ],
    ],
    widths: [20, 9, 11, 11, 11, 10, 12, 12, 12],
    frozenRows: 3,
    frozenColumns: 0,
    repeatRows: [1, 3],
    home: 'A1',
    locked: true,
  };
}

/** The same list as lines of text, for a message. */
export function purchaseText(lines: readonly PurchaseLine[], unit: Unit, prices: boolean): string {
  return lines
    .map((line) => {
      const size = `${line.quarters}/4, dressed ${lengthText(line.thickness, unit)}, ${lengthText(line.width, unit)} × ${lengthText(line.length, unit)}`;
      const money = prices ? `, ${line.price.toFixed(2)} each, ${line.cost.toFixed(2)}` : '';
      return `${line.boards} of ${line.wood} ${size} (${line.boardFeet.toFixed(2)} bd ft)${money}\n`;
    })
    .join('');
}
