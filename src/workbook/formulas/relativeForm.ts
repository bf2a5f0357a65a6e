import { columnLetters, readAddress } from '../address';
import { partsOf } from './lexer';

/** A formula with its references told from its own cell, as `R[0]C[-2]`: alike in every row that calculates alike. */
export function relativeForm(formula: string, row: number, column: number): string {
  return written(piecesOf(formula), ({ row: down, column: along }) => {
    const ofRow = down && (down.fixed ? `R${down.at}` : `R[${down.at - row}]`);
    const ofColumn = along && (along.fixed ? `C${along.at}` : `C[${along.at - column}]`);
    return `${ofRow ?? ''}${ofColumn ?? ''}`;
  });
}

/**
 * A formula as it reads after it was copied so many rows down and columns right: what is not fixed with `$` goes along. A
 * reference that would leave the sheet is `#REF!`.
 */
export function copiedFormula(formula: string, down: number, right: number): string {
  return copierOf(formula)(down, right);
}

/** The same of a formula that is copied many times: it is taken apart once. */
export function copierOf(formula: string): (down: number, right: number) => string {
  let pieces: readonly Piece[] | undefined;
  return (down, right) => {
    if (down === 0 && right === 0) return formula;
    return written((pieces ??= piecesOf(formula)), ({ row, column }) => {
      const moved = (end: Along | null, by: number, name: (at: number) => string) => {
        if (end === null) return '';
        const at = end.fixed ? end.at : end.at + by;
        return at < 0 ? null : `${end.fixed ? '$' : ''}${name(at)}`;
      };
      const [letters, digits] = [moved(column, right, columnLetters), moved(row, down, (at) => String(at + 1))];
      return letters === null || digits === null ? null : letters + digits;
    });
  };
}

/** A row or a column that a reference ends at, from 0, and whether `$` fixes it. */
interface Along {
  readonly at: number;
  readonly fixed: boolean;
}

interface End {
  readonly row: Along | null;
  readonly column: Along | null;
}

/** A reference by its ends, those as text that are none; or text of a formula between two of them. */
type Piece = string | readonly (End | string)[];

/** `B12`, or of whole columns and rows `$B` and `12`. */
const END = /^(\$?)([A-Z]{1,3})?(\$?)([1-9]\d{0,6})?$/i;

function piecesOf(formula: string): Piece[] {
  return partsOf(formula).map(({ kind, text }) => {
    if (kind !== 'cells') return text;
    return text.split(':').map((end) => {
      const [, first = '', letters, second = '', digits] = END.exec(end) ?? [];
      const place = readAddress(`${letters ?? 'A'}${digits ?? '1'}`);
      if (!place.ok) return end;
      // The `$` of a row alone stands where that of a column would.
      const row = digits === undefined ? null : { at: place.value.row, fixed: (letters ? second : first) === '$' };
      return { row, column: letters === undefined ? null : { at: place.value.column, fixed: first === '$' } };
    });
  });
}

/** A formula with each end of its references as `told` gives it; null: the reference is none. */
function written(pieces: readonly Piece[], told: (end: End) => string | null): string {
  return pieces
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      const ends = piece.map((end) => (typeof end === 'string' ? end : told(end)));
      return ends.includes(null) ? '#REF!' : ends.join(':');
    })
    .join('');
}
