import { shopRanges, type FigureName } from '../../takeoff/figures';
import { takeoffBlock, takeoffRange } from './places';
import { TAKEOFF_COLUMNS, type ColumnKey } from './columns';
import { workingRange } from '../working/sheet';

/** Inputs that are the shop's standard where their cell is blank. */
const STANDARDS = ['ends', 'reveal', 'face', 'thickness', 'species', 'profile'] as const;
type Standard = (typeof STANDARDS)[number];

/** An input of the opening at a place of the Takeoff (from 1), for formulas on other sheets. */
export function inputAt(
  input: Standard | 'quantity' | 'head' | 'span' | 'rise' | 'leg',
  place: string,
  openings: number,
): string {
  const cell = `INDEX(${takeoffRange(input, openings)},${place})`;
  const standard = STANDARDS.find((each) => each === input);
  return standard === undefined ? cell : `IF(${cell}="",Shop_${standard},${cell})`;
}

/** A figure of the opening at a place of the Takeoff: from its column there, else asked for by name. */
export function figureAt(
  figure: FigureName | 'unit price' | 'price',
  place: string,
  openings: number,
  plain: boolean,
): string {
  const inColumn = (key: ColumnKey) => `INDEX(${takeoffRange(key, openings)},${place})`;
  if (figure === 'unit price') return inColumn('unitPrice');
  if (figure === 'price') return inColumn('price');
  const column = TAKEOFF_COLUMNS.find((each) => each.figure === figure);
  if (column) return inColumn(column.key);
  if (plain)
    return `INDEX(${workingRange(figure, openings)},MATCH(${inColumn('no')},${workingRange('no', openings)},0))`;
  return `ARCH.OPENING("${figure}",INDEX(${takeoffBlock('main', openings)},${place},0),INDEX(${takeoffBlock('more', openings)},${place},0),${shopRanges(figure)})`;
}
