import { isFormula } from '../formulaText';
import type { CellValue, OpeningField, Table } from '../schedule/opening';
import { asRowCell, isSameCell } from '../takeoff/row';
import { UNITS, type Unit } from '../unit';
import type { Edit, Kept, OwnCell, OwnColumn, TypedOver } from './refill';
import { scaleTo } from './takeoff/read';

/**
 * A Takeoff as the first version filled it, so that filling it again takes over what its user did. Its rows have no numbers: they
 * get them in the order in which they stand. What the list gave stands in each row, as JSON, in the column "As filled".
 */

/** Its inputs and their headings, in the order in which "As filled" holds them. */
const INPUTS: readonly (readonly [OpeningField, string])[] = [
  ['mark', 'Mark'],
  ['quantity', 'Quantity'],
  ['head', 'Head'],
  ['ends', 'Ends'],
  ['span', 'Span'],
  ['rise', 'Rise'],
  ['reveal', 'Reveal'],
  ['face', 'Casing width'],
  ['thickness', 'Thickness'],
  ['species', 'Species'],
  ['profile', 'Profile'],
  ['leg', 'Leg, each'],
];
const LENGTHS: ReadonlySet<OpeningField> = new Set(['span', 'rise', 'reveal', 'face', 'thickness', 'leg']);
const ROW = 'Source row';
const AS_FILLED = 'As filled';
/** The last of its columns: what stands behind is the user's own. */
const LAST = 'Price';

/** Formulas that it wrote into inputs: the shop's standard, a rough opening less the allowance, the rise of a half round. */
const FILLED_IN = /^=(Shop_\w+|[\d.]+-Shop_rough_\w+|[A-Z]+\d+\/2)$/;

/** What was done to such a takeoff since it was filled, lengths in `unit`; null where the sheet is none of the first version. */
export function keptFromFirst(values: Table, formulas: Table, unit: Unit): Kept | null {
  const heads = values.rows.findIndex((row) => row[0] === ROW && row.includes(AS_FILLED));
  if (heads < 0) return null;
  const headings = values.rows[heads]!.map((cell) => String(cell ?? ''));
  const place = (heading: string) => headings.indexOf(heading);
  const filledAt = place(AS_FILLED);
  const lastAt = headings.lastIndexOf(LAST);
  const scale = scaleTo(
    unit,
    UNITS.find((each) => each === values.rows[heads + 1]?.[place('Span')]),
  );
  const liveAt = (row: number, column: number) => {
    const formula = formulas.rows[row]?.[column];
    return isFormula(formula) ? formula : null;
  };
  const rows = values.rows.flatMap((cells, at) => (at > heads && typeof cells[0] === 'number' ? [at] : []));
  const inputsAt = new Set([0, filledAt, ...INPUTS.map(([, heading]) => place(heading))]);
  const figuresAt = headings.flatMap((_heading, column) =>
    column <= lastAt && !inputsAt.has(column) && rows.some((row) => liveAt(row, column) !== null) ? [column] : [],
  );
  const known: Kept['known'][number][] = [];
  const edits: Edit[] = [];
  const typedOver: TypedOver[] = [];
  const own = new Map<string, Map<number, OwnCell>>();
  const said: string[] = [];
  const firstPrices = new Map<number, number>();
  for (const [index, at] of rows.entries()) {
    const cells = values.rows[at]!;
    const [no, row] = [index + 1, Number(cells[0])];
    const shown = String(cells[place('Mark')] ?? '');
    const price = cells[lastAt];
    if (typeof price === 'number') firstPrices.set(no, price);
    const listed = readListed(cells[filledAt]);
    if (listed === null) {
      known.push({ no, row, mark: shown });
      said.push(
        `Row ${row} ${shown}: what the list gave is no longer told in the column "${AS_FILLED}", so inputs changed by hand there are not kept.`,
      );
    } else {
      const mark = String(listed[0] ?? '');
      known.push({ no, row, mark });
      for (const [order, [field, heading]] of INPUTS.entries()) {
        const column = place(heading);
        if (column < 0 || FILLED_IN.test(liveAt(at, column) ?? '')) continue;
        const [value, was] = [asRowCell(cells[column]), asRowCell(listed[order])];
        // A blank leg stands there as 0.
        if (isSameCell(value, was) || (field === 'leg' && value === 0 && was === null)) continue;
        const inUnit = <T>(figure: T) => (typeof figure === 'number' && LENGTHS.has(field) ? figure * scale : figure);
        edits.push({ no, row, mark, field, value: inUnit(value), was: inUnit(was) });
      }
    }
    for (const column of figuresAt)
      if (liveAt(at, column) === null && asRowCell(cells[column]) !== null)
        typedOver.push({ no, mark: shown, heading: headings[column]! });
    for (let column = lastAt + 1; column < headings.length; column++) {
      const [value, formula] = [asRowCell(cells[column]), liveAt(at, column)];
      if (headings[column] === '' || (value === null && formula === null)) continue;
      const found = own.get(headings[column]!) ?? new Map<number, OwnCell>();
      own.set(headings[column]!, found.set(no, { value: value ?? '', formula: null, sheetRow: values.firstRow + at }));
      // Its formulas name cells of columns that stand elsewhere now.
      if (formula !== null)
        said.push(`${shown}: the formula in your column ${headings[column]} is not kept, its value ${value ?? ''} is.`);
    }
  }
  const ownColumns = [...own].map(([heading, cells]): OwnColumn => ({ heading, cells }));
  return { known, numbersGiven: known.length, edits, extras: [], typedOver, ownColumns, said, firstPrices };
}

function readListed(cell: CellValue | undefined): CellValue[] | null {
  if (typeof cell !== 'string' || !cell.startsWith('[')) return null;
  try {
    const read: unknown = JSON.parse(cell);
    return Array.isArray(read) && read.length === INPUTS.length ? (read as CellValue[]) : null;
  } catch {
    // Changed by hand: nothing can be told of the row, and that is said.
    return null;
  }
}
