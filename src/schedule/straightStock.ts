import type { Standards } from '../standards';
import { perInch } from '../unit';
import { cellText } from './cell';
import { LEAVE_OUT, type Choice } from './asked';
import type { RowChanges } from './changes';
import { askedWith } from './companions';
import { figure, quote } from './figure';
import type { Opening, OpeningField, Problem } from './opening';
import { readLength } from './readLength';
import { cellsOf } from './rowCells';

/*
 * Straight molding of a profile, by the piece or by the foot. It is run with the same knife as the curves, so it stands in the
 * takeoff as pieces of a straight head cut square: its wood is planned, its knife shared, its price on a row of its own.
 */

const FOOT = String.raw`(?:l\.?\s?f\.?|lin(?:eal|ear|\.)?\s*(?:ft|feet|foot)\.?|ft\.?|feet|foot|')`;
const BY_THE_FOOT = new RegExp(String.raw`^(\d{1,6}(?:,\d{3})*(?:\.\d+)?)\s*${FOOT}$`, 'i');
const BY_THE_METER = /^(\d{1,6}(?:\.\d+)?)\s*(?:m|lin\.? ?m|meters?|metres?)$/i;
const BY_THE_PIECE = /^\(?(\d{1,4})\)?\s*(?:pcs?\.?|pieces?|ea\.?)?\s*(?:@|x|×|of|at)\s*(.+)$/i;
const MOST_PIECES = 100_000;

/** So many pieces of a length, and how that came about. */
export interface Pieces {
  readonly count: number;
  readonly length: number;
  readonly said: string;
}

/** Footage as pieces of one length, the last one whole. `bare`: a figure alone is footage as well. */
function piecesFrom(text: string, piece: number, standards: Standards, bare: boolean): Pieces | null {
  const { unit } = standards;
  const inch = perInch(unit);
  const feet = BY_THE_FOOT.exec(text)?.[1];
  const meters = BY_THE_METER.exec(text)?.[1];
  const alone = bare ? /^\d{1,6}(?:\.\d+)?$/.exec(text)?.[0] : undefined;
  const long = unit === 'in' ? 12 : 1000;
  const run =
    feet !== undefined
      ? Number(feet.replaceAll(',', '')) * 12 * inch
      : meters !== undefined
        ? (Number(meters) * 1000 * inch) / 25.4
        : alone === undefined
          ? null
          : Number(alone) * long;
  if (run !== null) {
    const count = Math.ceil(run / piece - 1e-9);
    if (count < 1 || count > MOST_PIECES) return null;
    const said = `${quote(text)} of straight molding is ${count} ${count === 1 ? 'piece' : 'pieces'} of ${figure(piece)}.`;
    return { count, length: piece, said };
  }
  const each = BY_THE_PIECE.exec(text);
  if (each === null) return null;
  const length = readLength(each[2] ?? '', { name: 'length', column: null, unit });
  const count = Number(each[1]);
  return length.ok && count > 0
    ? { count, length: length.value, said: `${count} pieces of straight molding, ${figure(length.value)} long each.` }
    : null;
}

const STRAIGHT = String.raw`(?:of )?(?:(?:additional|matching|more|extra|same) )*straight(?: (?:casing|trim|mo?u?lding|stock))?`;
/** `40 LF of straight casing`, `2 pcs @ 96" straight`, `straight casing: 40 ft`. */
export const NAMES_FOOTAGE = new RegExp(
  String.raw`\b(?:(\d{1,4}(?:\.\d+)?) ?${FOOT}|(\d{1,3}) ?(?:pcs?\.?|pieces?)? ?(?:@|x|of|at) ?(\d[\d/ .-]*"?)) ?${STRAIGHT}\b|\bstraight (?:casing|trim|mo?u?lding|stock):? (\d{1,4}(?:\.\d+)?) ?${FOOT}`,
  'i',
);

/** What a remark of straight molding can mean: so much of it besides, or the casing alone. */
export function footageChoices(match: RegExpExecArray): readonly Choice[] {
  const [, feet, count, length, behind] = match;
  const run = feet ?? behind;
  const straight = run === undefined ? `${count} @ ${length?.trim()}` : `${run} ft`;
  return [{ label: `with ${straight} of straight molding`, straight }, { label: 'priced without it' }, LEAVE_OUT];
}

const OF_THE_CASING: readonly OpeningField[] = ['mark', 'face', 'thickness', 'species', 'profile'];

/** The row of straight molding of an opening's casing; what is in doubt of the casing is in doubt here, too. */
export function straightRow(
  opening: Opening,
  pieces: Pieces,
  more: readonly Problem[] = [],
  shared = (problem: Problem) => problem,
): Opening {
  const { rough: _rough, extras: _extras, ...rest } = opening;
  return {
    ...rest,
    ...{ quantity: pieces.count, head: 'straight', ends: 'square', span: pieces.length, rise: null, leg: null },
    ...{ otherLeg: null, haunch: null, arcs: null, sides: null, segmentsWanted: null, priceAgreed: null },
    notes: [pieces.said],
    problems: [...opening.problems.filter(({ field }) => OF_THE_CASING.includes(field)).map(shared), ...more],
  };
}

/** Straight molding alone, where the quantity of a row is footage and it names no curve; else the opening as it is. */
export function asFootage({ raw, open }: RowChanges, opening: Opening, standards: Standards): Opening {
  const [quantity] = cellsOf(raw, 'quantity');
  const isCurve = (opening.head !== null && opening.head !== 'straight') || opening.rise !== null;
  if (quantity === undefined || isCurve || opening.quantity !== null) return opening;
  const pieces = piecesFrom(cellText(quantity.cell), opening.span ?? standards.straightPiece, standards, false);
  if (pieces === null) return opening;
  return straightRow(
    opening,
    pieces,
    open.filter(({ question }) => question !== undefined),
  );
}

/** An opening, and behind it the straight molding that a column of its row gives for its casing, or a confirmed remark. */
export function withStraightStock(
  { raw, straight: confirmed }: RowChanges,
  opening: Opening,
  standards: Standards,
): readonly Opening[] {
  const [footage] = cellsOf(raw, 'straightFeet');
  const text = footage === undefined ? confirmed : cellText(footage.cell);
  if (text === null) return [opening];
  if (/^0+(?:\.0+)?$/.test(text)) return [opening];
  const pieces = piecesFrom(text, standards.straightPiece, standards, true);
  if (pieces === null) {
    const message = `Straight molding can't be read: the cell says ${quote(text)}; accepted are 24 ft or 2 @ 96.`;
    const problem: Problem = { row: raw.row, field: 'quantity', message };
    return [{ ...opening, problems: [...opening.problems, problem], quantity: null }];
  }
  const straight = straightRow(opening, pieces, [], (problem) => askedWith(raw, problem));
  return [opening, { ...straight, mark: `${opening.mark} straight`.trim(), remarks: null }];
}
