import { columnLetters, readAddress } from '../address';
import { partsOf, textOf } from './lexer';

/** A formula with its references told from its own cell, as `R[0]C[-2]`: alike in every row that calculates alike. */
export function relativeForm(formula: string, row: number, column: number): string {
  return withEnds(formula, ({ row: down, column: along }) => {
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
  if (down === 0 && right === 0) return formula;
  return withEnds(formula, ({ row, column }) => {
    const moved = (end: Along | null, by: number, name: (at: number) => string) => {
      if (end === null) return '';
      const at = end.fixed ? end.at : end.at + by;
      return at < 0 ? null : `${end.fixed ? '$' : ''}${name(at)}`;
    };
    const [letters, digits] = [moved(column, right, columnLetters), moved(row, down, (at) => String(at + 1))];
    return letters === null || digits === null ? null : letters + digits;
  });
}

/** A row or a column that a reference ends at, from 0, and whether `$` fixes it. */
interface Along {
  readonly at: number;
  readonly fixed: boolean;
}

/** `B12`, or of whole columns and rows `$B` and `12`. */
const END = /^(\$?)([A-Z]{1,3})?(\$?)([1-9]\d{0,6})?$/i;

/** A formula with each end of its references as `written` gives it; null: the reference is none. */
function withEnds(
  formula: string,
  written: (end: { readonly row: Along | null; readonly column: Along | null }) => string | null,
): string {
  const parts = partsOf(formula).map((part) => {
    if (part.kind !== 'cells') return part;
    const ends = part.text.split(':').map((end) => {
      const [, first = '', letters, second = '', digits] = END.exec(end) ?? [];
      const place = readAddress(`${letters ?? 'A'}${digits ?? '1'}`);
      if (!place.ok) return end;
      // The `$` of a row alone stands where that of a column would.
      const row = digits === undefined ? null : { at: place.value.row, fixed: (letters ? second : first) === '$' };
      return written({ row, column: letters === undefined ? null : { at: place.value.column, fixed: first === '$' } });
    });
    return { ...part, text: ends.includes(null) ? '#REF!' : ends.join(':') };
  });
  return textOf(parts);
}
