import { LEAVE_OUT, idOf } from './asked';
import type { RowChanges } from './changes';
import type { Table } from './opening';

/**
 * Rows that the file's reader was not sure of, as a question each kind of doubt: compared with the page, a row is as read or is
 * left out. A figure given for the row does not settle the rest of it.
 */
export function askDoubts(rows: readonly RowChanges[], { doubts }: Table): void {
  for (const changes of rows) {
    const own = doubts?.get(changes.raw.row);
    if (own === undefined) continue;
    const said = own.join('; ');
    changes.ask({
      id: idOf('page', said.slice(0, 80)),
      about: 'page',
      text: `On the page ${said}; please compare the row with the page: is it as read?`,
      choices: [{ label: 'as read' }, LEAVE_OUT],
      field: 'span',
    });
  }
}
