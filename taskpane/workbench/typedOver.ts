import type { IWorksheetData, Worksheet } from '@univerjs/core';
import { TYPED_OVER_LOOK } from '../../src/workbook/sharedFormulas';
import { readRange, type CellRange } from '../../src/workbook/address';
import type { Engine } from './engine';
import { rulesOf } from './typing';

/** Figures that were typed over their formulas stand out, as the conditional format of a file has it. */
export function showTypedOver({ library, injector }: Pick<Engine, 'library' | 'injector'>): void {
  const { core, sheets } = library;
  const figures = new WeakMap<IWorksheetData, readonly CellRange[]>();
  const rangesOf = (worksheet: Worksheet) => {
    const config = worksheet.getConfig();
    let ranges = figures.get(config);
    if (!ranges) {
      ranges = (rulesOf(config)?.kept.figures ?? []).flatMap((range) => {
        const read = readRange(range);
        return read.ok ? [read.value] : [];
      });
      figures.set(config, ranges);
    }
    return ranges;
  };
  injector.get(sheets.SheetInterceptorService).intercept(sheets.INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: core.InterceptorEffectEnum.Style,
    handler: (cell, at, next) => {
      const { rawData, row, col, worksheet } = at;
      if (!cell || !rawData || rawData.f || rawData.si || (rawData.v ?? '') === '') return next(cell);
      const isFigure = rangesOf(worksheet).some(
        ({ first, last }) => row >= first.row && row <= last.row && col >= first.column && col <= last.column,
      );
      if (!isFigure) return next(cell);
      const look = { bg: { rgb: TYPED_OVER_LOOK.fill }, cl: { rgb: TYPED_OVER_LOOK.ink } };
      return next({ ...cell, interceptorStyle: { ...cell.interceptorStyle, ...look } });
    },
  });
}
