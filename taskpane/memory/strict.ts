import { MOST_COLUMNS, MOST_ROWS, readAddress, readRange } from '../../src/workbook/address';
import { LONGEST_TEXT } from '../../src/workbook/cellText';
import type { Cell, Sheet } from '../../src/workbook/sheet';

/** Longest formula that a cell of Excel holds. */
const LONGEST_FORMULA = 8_192;

/** What Excel would refuse or show damaged in these sheets, each in a sentence; empty where all is well. */
export function sheetFaults(sheets: readonly Sheet[], existing: readonly string[]): string[] {
  const names = sheets.map((sheet) => sheet.name);
  const twice = names.filter((name, index) => names.indexOf(name) !== index);
  const known = new Set<string>([...existing, ...names]);
  return [
    ...twice.map((name) => `The sheet "${name}" is given twice.`),
    ...sheets.flatMap((sheet) => [...cellFaults(sheet), ...layoutFaults(sheet), ...nameFaults(sheet, known)]),
  ];
}

function cellFaults(sheet: Sheet): string[] {
  const faults: string[] = [];
  if (sheet.rows.length > MOST_ROWS)
    faults.push(`${sheet.name} has ${sheet.rows.length} rows; a sheet holds ${MOST_ROWS}.`);
  for (const [row, cells] of sheet.rows.entries()) {
    if (cells.length > MOST_COLUMNS) faults.push(`${sheet.name} row ${row + 1} has ${cells.length} columns.`);
    for (const [column, cell] of cells.entries()) {
      const fault = cell === undefined ? 'is undefined; an empty cell is null' : cell && cellFault(cell);
      if (fault) faults.push(`${sheet.name}, row ${row + 1}, column ${column + 1} ${fault}.`);
    }
  }
  return faults;
}

function cellFault(cell: Cell): string | null {
  if (typeof cell.value === 'number' && !Number.isFinite(cell.value)) return `holds ${cell.value}`;
  if (!['string', 'number', 'boolean'].includes(typeof cell.value) && cell.value !== null) {
    return `holds a ${typeof cell.value}`;
  }
  if (typeof cell.value === 'string' && cell.value.length > LONGEST_TEXT)
    return `holds over ${LONGEST_TEXT} characters`;
  if (cell.formula === undefined) return null;
  if (cell.formula === '' || cell.formula.startsWith('='))
    return `has the formula "${cell.formula}"; it is given without =`;
  if (cell.formula.length > LONGEST_FORMULA) return `has a formula over ${LONGEST_FORMULA} characters`;
  if (cell.formula.includes('_xldudf_')) return 'has a formula in the spelling of a stored file';
  return /\b(NaN|undefined|Infinity|\[object)/.test(cell.formula) ? `has the formula "${cell.formula}"` : null;
}

function layoutFaults(sheet: Sheet): string[] {
  const faults: string[] = [];
  if (!readAddress(sheet.home).ok) faults.push(`${sheet.name} opens at "${sheet.home}", which is no cell.`);
  for (const width of sheet.widths) {
    if (!(width >= 0 && width <= 255)) faults.push(`${sheet.name} has a column ${width} characters wide.`);
  }
  for (const validation of sheet.validations ?? []) {
    if (!readRange(validation.range).ok) faults.push(`${sheet.name} checks "${validation.range}", which is no range.`);
    // Excel keeps a list of choices as one text of at most 255 characters, and its message as well.
    const choices = validation.rule.kind === 'list' ? validation.rule.choices.join(',') : '';
    if (choices.length > 255)
      faults.push(`${sheet.name} offers choices of over 255 characters in ${validation.range}.`);
    if (validation.message.length > 255) faults.push(`${sheet.name} has a message of over 255 characters.`);
  }
  return faults;
}

function nameFaults(sheet: Sheet, known: ReadonlySet<string>): string[] {
  const faults: string[] = [];
  for (const { name, ref } of sheet.names ?? []) {
    const bang = ref.lastIndexOf('!');
    const on = ref.slice(0, bang).replace(/^'(.*)'$/, '$1');
    if (!/^[A-Za-z_\\][\w.]*$/.test(name) || readAddress(name).ok) faults.push(`"${name}" can't name a cell.`);
    if (!known.has(on)) faults.push(`The name ${name} points at the sheet "${on}", which is not there.`);
    if (!readRange(ref.slice(bang + 1)).ok) faults.push(`The name ${name} points at "${ref}", which is no range.`);
  }
  return faults;
}
