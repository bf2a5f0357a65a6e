import type { Worksheet } from '@univerjs/core';
import { rowHeight } from '../../src/workbook/xlsx/rowHeight';
import type { BookSheet, Cell } from '../../src/workbook/sheet';
import type { CellAt } from '../host';
import type { Engine } from './engine';
import { rulesOf } from './typing';
import { widthInCharacters } from './worksheet';

/**
 * The rows of a sheet of figures stand at one height in the grid, however long a text in one of them is: it is cut at its cell's
 * edge there, and stands whole in the line above the grid, on the pane's Cell page, and on paper.
 */
export function isEvenRow({ figures, frozenRows }: Pick<BookSheet, 'figures' | 'frozenRows'>, row: number): boolean {
  return figures !== undefined && figures.length > 0 && row >= frozenRows;
}

/** The height that a file gives such a row, in points, so that its text can be read there, too; null: the usual one. */
export function heightInFile(
  { widths, folded = [] }: Pick<BookSheet, 'widths' | 'folded'>,
  cells: readonly (Cell | null)[],
): number | null {
  const hidden = folded.flatMap(({ first, last }) => Array.from({ length: last - first + 1 }, (_, at) => first + at));
  return rowHeight(cells, widths, new Set(hidden));
}

function isEven(worksheet: Worksheet, row: number): boolean {
  const config = worksheet.getConfig();
  return isEvenRow({ figures: rulesOf(config)?.kept.figures, frozenRows: config.freeze.startRow }, row);
}

/** The whole text of a cell of such a row where its column has no room for it; undefined where it has. */
export function textCut(worksheet: Worksheet, { row, column, value }: CellAt): string | undefined {
  if (typeof value !== 'string' || !isEven(worksheet, row)) return undefined;
  return value.length > widthInCharacters(worksheet.getColumnWidth(column)) - 1 ? value : undefined;
}

/** Cuts the texts of such rows at their cells' edges, wrapped ones and those that would run on over blank figures. */
export function cutLongTexts({ library, injector }: Pick<Engine, 'library' | 'injector'>): void {
  const { core, sheets } = library;
  const look = { tb: core.WrapStrategy.CLIP };
  injector.get(sheets.SheetInterceptorService).intercept(sheets.INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: core.InterceptorEffectEnum.Style,
    handler: (cell, { row, worksheet }, next) => {
      if (typeof cell?.v !== 'string' || !isEven(worksheet, row)) return next(cell);
      return next({ ...cell, interceptorStyle: { ...cell.interceptorStyle, ...look } });
    },
  });
}
