import type { ColumnMeasure } from '../format';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { WorkingTakeoff } from './shared';

type Value = (row: OpeningTakeoff, takeoff: WorkingTakeoff) => string | number | null | undefined;
type Formula = (row: OpeningTakeoff, takeoff: WorkingTakeoff) => string | null;

/**
 * One column of the sheet Working, the only place where it is described. `formula` is a template: `{span}` is the same row's
 * span, `{span:all}` the whole column, `Shop_…` and `Stock_…` the named cells of the Standards sheet. Where it gives
 * null the cell holds the value.
 */
export interface WorkingColumn {
  readonly key: string;
  readonly heading: string;
  readonly group: string;
  readonly measure: ColumnMeasure;
  /** In characters. */
  readonly width: number;
  readonly value: Value;
  readonly formula: Formula;
}

type Rest = Partial<Omit<WorkingColumn, 'formula'>> &
  Pick<WorkingColumn, 'value'> & { readonly formula: Formula | string };

/** A column that follows from others. A formula given as text shows a blank until the opening is complete. */
export function figure(key: string, heading: string, measure: ColumnMeasure, rest: Rest): WorkingColumn {
  const { formula } = rest;
  const guarded = typeof formula === 'string' ? `IF({missing}<>"","",${formula})` : '';
  return {
    key,
    heading,
    measure,
    group: '',
    width: measure === 'text' ? 16 : 11,
    ...rest,
    formula: typeof formula === 'string' ? () => guarded : formula,
  };
}

/** A figure of the curve, shown as soon as the curve's own inputs are there, whatever wood and price still lack. */
export function ofCurve(formula: string): Formula {
  const guarded = `IF({missingShape}<>"","",${formula})`;
  return () => guarded;
}

/** A figure on the way to others. */
export const working = figure;

export function inGroup(group: string, columns: readonly WorkingColumn[]): WorkingColumn[] {
  return columns.map((column) => ({ ...column, group: column.group || group }));
}
