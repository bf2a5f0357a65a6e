import { ok, refuse, type Result } from '../result';
import { cellText } from '../schedule/cell';
import type { Table, Unread } from '../schedule/opening';
import { lastPage } from './moreColumns';
import { pagesOf, type PdfTable } from './pdfTable';
import type { PdfReading } from './readPdf';

/** Which of a PDF's tables the user wants: those of a page, and which of them, both from 1. */
export interface TableChoice {
  readonly page?: number;
  readonly table?: number;
}

/** The one table that is offered or chosen; else a sentence with the list of them. Pages and tables left out are in `unread`. */
export function chooseOffered(file: string, { tables, unread }: PdfReading, choice: TableChoice): Result<Table> {
  const { page, table } = choice;
  const there =
    page === undefined
      ? tables
      : tables.filter(({ parts }) => parts.some((part) => part.page <= page && page <= lastPage(part)));
  const where = page === undefined ? `"${file}"` : `Page ${page} of "${file}"`;
  if (there.length === 0) return refuse(`${where} holds no table that reads like one; there are:\n${listed(tables)}`);
  if (table === undefined && there.length > 1)
    return refuse(`${where} holds ${there.length} tables; please name the one to read with --table:\n${listed(there)}`);
  const chosen = there[(table ?? 1) - 1];
  if (chosen === undefined)
    return refuse(
      `${where} holds ${there.length === 1 ? 'one table' : `${there.length} tables`}; there is no table ${table}. There are:\n${listed(there)}`,
    );
  const others = tables
    .filter((each) => each !== chosen)
    .map((each): Unread => ({ what: each.table.name, why: 'another table of the file was chosen' }));
  const pages = unread.map(({ page: number, why }): Unread => ({ what: `page ${number}`, why }));
  return ok({ ...chosen.table, unread: [...others, ...pages] });
}

/** Tables as a numbered list: where each stands, how long it is, its headings. */
function listed(tables: readonly PdfTable[]): string {
  return tables.map((table, index) => `  ${index + 1}  ${describe(table)}`).join('\n');
}

/** `page 2, 14 rows: Mark, Qty, Head, Width`. */
function describe({ parts, table }: PdfTable): string {
  const widest = table.rows
    .slice(0, 6)
    .reduce((best, row) => (filled(row) > filled(best) ? row : best), table.rows[0] ?? []);
  const headings = widest.map(cellText).filter((text) => text !== '');
  return `${pagesOf(parts)}, ${table.rows.length} rows: ${headings.join(', ')}`;
}

function filled(row: Table['rows'][number]): number {
  return row.filter((cell) => cellText(cell) !== '').length;
}
