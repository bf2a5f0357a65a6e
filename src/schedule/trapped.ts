import { cellText, typedBeforeDate } from './cell';
import { quote } from './figure';
import type { CellValue } from './opening';

/** The sentence for a cell that holds no length at all but something a spreadsheet program put there, or null. */
export function trapped(cell: CellValue, name: string): string | null {
  const text = cellText(cell);
  const typed = typedBeforeDate(cell);
  if (typed === '') return `${name} can't be read: the cell holds a date that does not exist.`;
  if (typed !== null)
    return (
      `${name} is the date ${quote(text)}, which is what a spreadsheet program makes of ${typed} when the cell is ` +
      `not formatted as text; please confirm the figure and type it as 0 ${typed} or as a decimal.`
    );
  if (typeof cell === 'boolean') return `${name} can't be read: the cell says ${text}.`;
  if (text.startsWith('='))
    return `${name} is a formula (${quote(text)}) whose result is not stored in the file; please open the file in a spreadsheet program and save it again.`;
  if (/^#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|SPILL!|CALC!|GETTING_DATA)/i.test(text))
    return `${name} is the error ${text} in the file.`;
  return null;
}
