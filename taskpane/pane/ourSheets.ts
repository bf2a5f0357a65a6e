import type { SheetName } from '../../src/workbook/sheet';

/** Our sheets in the order of importance, with what each is for. */
export const OUR_SHEETS: readonly (readonly [SheetName, string])[] = [
  ['Takeoff', 'A row for every opening, with its price'],
  ['Stock', 'Boards to buy and how to cut them'],
  ['Setups', 'What the person at the machine needs, for each pair of guides'],
  ['Tickets', 'What each station of the bench needs of every opening'],
  ['Purchase', 'Boards to buy, to send to a yard'],
  ['Schedule', 'The list as it was read, row by row'],
  ['Standards', 'Every shop setting; change one and the workbook follows'],
  ['Check', 'A quote against the takeoff'],
  ['Proposal', 'What goes to the customer'],
  ['Revision', 'What a revised list changed'],
];
