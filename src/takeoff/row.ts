import type { CellValue, Opening, OpeningField } from '../schedule/opening';
import type { Standards } from '../standards';

/**
 * An opening's inputs as they stand in a row of the Takeoff: two blocks of cells, in this order, which are also the
 * arguments of `ARCH.OPENING`. A blank means the shop's standard. Trailing cells of the second block may be missing.
 */
export const MAIN = ['quantity', 'head', 'span', 'rise'] as const satisfies readonly OpeningField[];
export const MORE = [
  'ends',
  'reveal',
  'face',
  'thickness',
  'species',
  'profile',
  'leg',
  'segmentsWanted',
  'sides',
  'arcs',
  'haunch',
  'otherLeg',
] as const satisfies readonly OpeningField[];
export const ROW_FIELDS = [...MAIN, ...MORE] as const;
export type RowField = (typeof ROW_FIELDS)[number];

/** A figure, a word, or a doubt: text that begins with a question mark and says what is to be settled. */
export type RowCell = string | number | null;
export type Row = Readonly<Record<RowField, RowCell>>;

/** What a cell of a sheet holds, as an opening's own input. */
export function asRowCell(cell: CellValue | undefined): RowCell {
  if (cell === null || cell === undefined || cell === '') return null;
  return typeof cell === 'number' ? cell : String(cell);
}

/** Whether two cells hold the same: a grid may give a figure back with its last digit rounded. */
export function isSameCell(one: RowCell, other: RowCell): boolean {
  if (one === other) return true;
  return typeof one === 'number' && typeof other === 'number' && Math.abs(one - other) <= 1e-12 * Math.abs(other);
}

/** What a cell holds while nobody has settled it: `? Needs a span: got "36 or 38".` It is priced once a figure is typed over it. */
function doubt(sentence: string): string {
  return `? ${sentence}`;
}

/** The sentence of a doubt; null where the cell holds none. */
export function doubtIn(cell: RowCell): string | null {
  if (typeof cell !== 'string') return null;
  const text = cell.trim();
  return text.startsWith('?') ? text.slice(1).trim() : null;
}

/** A row of nothing but blanks: what isn't given follows the shop's standards. */
export const BLANK_ROW: Row = Object.fromEntries(ROW_FIELDS.map((field) => [field, null])) as Row;

/**
 * The row that a filling writes for an opening: its inputs, and where the reader could not settle one, the reader's
 * sentence. A doubt about anything else (its mark, say) stands in place of the quantity, so that nothing is priced on it.
 */
export function rowOf(
  opening: Opening,
  allowance: Pick<Standards, 'roughWidth' | 'roughHeight'>,
  isMarkTaken: boolean,
): Row {
  const row: Record<RowField, RowCell> = { ...BLANK_ROW };
  for (const field of ROW_FIELDS) row[field] = opening[field];
  if (opening.rough?.span !== undefined && opening.span !== null) row.span = opening.rough.span - allowance.roughWidth;
  if (opening.rough?.rise !== undefined && opening.rise !== null) row.rise = opening.rough.rise - allowance.roughHeight;
  if (isHalfSpan(opening)) row.rise = null;
  for (const [field, sentence] of saidByField(opening)) {
    if (field === 'mark' && !isMarkTaken) continue;
    const place: RowField = isRowField(field) ? field : 'quantity';
    if (row[place] === null || place !== field) row[place] = doubt(sentence);
  }
  return row;
}

/** A half round whose rise is simply half its span: the cell stays blank, so that it goes on following the span. */
function isHalfSpan({ head, span, rise, problems }: Opening): boolean {
  if (head !== 'half round' || span === null || problems.some(({ field }) => field === 'rise')) return false;
  return rise === null || Math.abs(rise - span / 2) <= 1e-9 * span;
}

function isRowField(field: OpeningField): field is RowField {
  return (ROW_FIELDS as readonly OpeningField[]).includes(field);
}

/** What a reader said of each input; several sentences about one are joined. */
function saidByField({ problems }: Opening): Map<OpeningField, string> {
  const said = new Map<OpeningField, string>();
  for (const { field, message } of problems) {
    const before = said.get(field);
    said.set(field, before === undefined ? message : `${before} ${message}`);
  }
  return said;
}

/** Marks that openings share, whatever their letter case. */
export function sharedMarks(openings: readonly Pick<Opening, 'mark'>[]): (mark: string) => boolean {
  const count = new Map<string, number>();
  for (const { mark } of openings) count.set(mark.toLowerCase(), (count.get(mark.toLowerCase()) ?? 0) + 1);
  return (mark) => (count.get(mark.toLowerCase()) ?? 0) > 1;
}

/** The cells that the list itself gives an opening, whatever was changed in the workbook since. */
export function listedCells(opening: Opening, row: Row): Readonly<Record<OpeningField, RowCell>> {
  const { mark, place, remarks, priceAgreed } = opening;
  return opening.listed ?? { ...row, mark, place, remarks, priceAgreed };
}
