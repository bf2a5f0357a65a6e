import type { Sheet } from '../../../src/workbook/sheet';
import type { Filled } from '../state';
import type { BuildStep, Built } from './job';

/** A built workbook on its way from the worker, in parts: a page that takes a long sheet in at once stands still for it. */
export type FromWorker =
  | { readonly kind: 'doing'; readonly step: BuildStep }
  | { readonly kind: 'sheet'; readonly sheet: Sheet; readonly rows: number }
  | { readonly kind: 'rows'; readonly rows: Sheet['rows'] }
  | { readonly kind: 'built'; readonly filled: Filled }
  | { readonly kind: 'failed'; readonly message: string };

const ROWS_AT_ONCE = 200;

export function* inParts({ sheets, filled }: Built): Generator<FromWorker> {
  for (const sheet of sheets) {
    yield { kind: 'sheet', sheet: { ...sheet, rows: [] }, rows: sheet.rows.length };
    for (let from = 0; from < sheet.rows.length; from += ROWS_AT_ONCE) {
      yield { kind: 'rows', rows: sheet.rows.slice(from, from + ROWS_AT_ONCE) };
    }
  }
  yield { kind: 'built', filled };
}

/** Puts the parts together again; gives the workbook with the last one. */
export function assembler(): (part: FromWorker) => Built | null {
  const sheets: { sheet: Sheet; rows: Sheet['rows'][number][] }[] = [];
  return (part) => {
    if (part.kind === 'sheet') sheets.push({ sheet: part.sheet, rows: [] });
    else if (part.kind === 'rows') sheets.at(-1)?.rows.push(...part.rows);
    else if (part.kind === 'built') {
      return { sheets: sheets.map(({ sheet, rows }) => ({ ...sheet, rows })), filled: part.filled };
    }
    return null;
  };
}
