import type { OpeningTakeoff, Takeoff } from '../../takeoff/takeoff';

export type ColumnMeasure =
  | 'text'
  | 'row'
  | 'count'
  | 'input length' // as a shop writes it: 36 1/2
  | 'length' // exact, in decimals
  | 'length text' // rounded, as on a tape
  | 'degrees'
  | 'boardFeet'
  | 'cuts'
  | 'minutes'
  | 'money'
  | 'number';

type Value = (row: OpeningTakeoff, takeoff: Takeoff) => string | number | null | undefined;
type Formula = (row: OpeningTakeoff, takeoff: Takeoff) => string | null;

/**
 * One column of the takeoff, the only place where it is described. `formula` is a template: `{span}` is the same row's
 * span, `{span:all}` the whole column, `Shop_…` and `Stock_…` the named cells of the Standards sheet. Where it gives
 * null the cell holds the value.
 */
export interface TakeoffColumn {
  readonly key: string;
  readonly heading: string;
  readonly group: string;
  readonly measure: ColumnMeasure;
  /** In characters. */
  readonly width: number;
  /** An input is the user's to change; a working figure is folded away. */
  readonly role: 'input' | 'figure' | 'working';
  readonly value: Value;
  readonly formula: Formula;
  /** The totals row adds this column up. */
  readonly total?: boolean;
}

type Rest = Partial<Omit<TakeoffColumn, 'formula'>> &
  Pick<TakeoffColumn, 'value'> & { readonly formula: Formula | string };

/** A column that follows from others. A formula given as text shows a blank until the opening is complete. */
export function figure(key: string, heading: string, measure: ColumnMeasure, rest: Rest): TakeoffColumn {
  const { formula } = rest;
  const guarded = typeof formula === 'string' ? `IF({missing}<>"","",${formula})` : '';
  return {
    key,
    heading,
    measure,
    group: '',
    width: measure === 'text' ? 16 : 11,
    role: 'figure',
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
export function working(key: string, heading: string, measure: ColumnMeasure, rest: Rest): TakeoffColumn {
  return { ...figure(key, heading, measure, rest), role: 'working' };
}

/** A column the user fills. A null formula: the value as it was read. */
export function input(
  key: string,
  heading: string,
  measure: ColumnMeasure,
  width: number,
  value: Value,
  formula: Formula = () => null,
): TakeoffColumn {
  return { key, heading, group: '', measure, width, role: 'input', value, formula };
}

export function inGroup(group: string, columns: readonly TakeoffColumn[]): TakeoffColumn[] {
  return columns.map((column) => ({ ...column, group: column.group || group }));
}
