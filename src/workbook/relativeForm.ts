import { addressOf, readAddress } from './address';

/** Texts, quoted sheet names, and cell references that are not part of a longer name or a function's name. */
const PARTS = /("(?:[^"]|"")*"|'(?:[^']|'')*'!)|(?<![\w.$])(\$?)([A-Z]{1,3})(\$?)([1-9]\d{0,6})(?![\w.(])/g;

/** A formula with its references told from its own cell, as `R[0]C[-2]`: alike in every row that calculates alike. */
export function relativeForm(formula: string, row: number, column: number): string {
  return formula.replace(PARTS, (part, quoted: string | undefined, fixedColumn, letters, fixedRow, digits) => {
    if (quoted !== undefined) return quoted;
    const place = readAddress(`${letters}${digits}`);
    if (!place.ok) return part;
    const inRow = fixedRow === '$' ? `R${place.value.row}` : `R[${place.value.row - row}]`;
    return inRow + (fixedColumn === '$' ? `C${place.value.column}` : `C[${place.value.column - column}]`);
  });
}

/**
 * A formula as it reads after it was copied so many rows down and columns right: what is not fixed with `$` goes along. A
 * reference that would leave the sheet is `#REF!`.
 */
export function copiedFormula(formula: string, down: number, right: number): string {
  if (down === 0 && right === 0) return formula;
  return formula.replace(PARTS, (part, quoted: string | undefined, fixedColumn, letters, fixedRow, digits) => {
    if (quoted !== undefined) return quoted;
    const place = readAddress(`${letters}${digits}`);
    if (!place.ok) return part;
    const row = place.value.row + (fixedRow === '$' ? 0 : down);
    const column = place.value.column + (fixedColumn === '$' ? 0 : right);
    if (row < 0 || column < 0) return '#REF!';
    const [, moved = '', number = ''] = /^([A-Z]+)(\d+)$/.exec(addressOf({ row, column })) ?? [];
    return `${fixedColumn}${moved}${fixedRow}${number}`;
  });
}
