/** What a spreadsheet refuses, in the same words in every host. */

export const STOPPED = 'Stopped. The workbook is as it was.';

export const EMPTY_SELECTION = 'The selected cells are empty. Select the schedule with its headings.';

export const NO_RECTANGLE = 'The rows to write must be of one length and not empty.';

export function noSheet(name: string): string {
  return `There is no sheet "${name}".`;
}

export function sheetInTheWay(name: string): string {
  return `The sheet "${name}" already holds something. Nothing was written.`;
}

/** `address` of a filled cell on the sheet `name`. */
export function cellInTheWay(name: string, address: string): string {
  return `${name}!${address} already holds something. Nothing was written.`;
}

/** Of a sheet whose protection wants a password. */
export function passwordOn(name: string): string {
  return `The sheet "${name}" is protected with a password. Take its protection off, then try again. Nothing was written.`;
}
