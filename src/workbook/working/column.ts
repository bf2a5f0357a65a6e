import { figureNamed, figureOf, type FigureName } from '../../takeoff/figures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { ColumnMeasure } from '../format';
import { its, type WorkingKey } from './keys';
import type { WorkingTakeoff } from './shared';

type Value = (row: OpeningTakeoff, takeoff: WorkingTakeoff) => string | number | null | undefined;
type Formula = (row: OpeningTakeoff, takeoff: WorkingTakeoff) => string | null;

/**
 * One column of the sheet Working, the only place where it is described. `formula` is a template: cells stand in it by their keys
 * (`keys.ts`), `Shop_…` and `Stock_…` are the named cells of the Standards sheet. Where it gives null the cell holds the value.
 */
export interface WorkingColumn {
  readonly heading: string;
  readonly group: string;
  readonly measure: ColumnMeasure;
  /** In characters. */
  readonly width: number;
  readonly value: Value;
  readonly formula: Formula;
}

/** Columns by their keys, in the order of the sheet. */
export type WorkingColumns<Key extends WorkingKey> = Readonly<Record<Key, WorkingColumn>>;

/** A formula given as text shows a blank until the opening is complete. */
function guarded(formula: Formula | string): Formula {
  if (typeof formula !== 'string') return formula;
  const whole = `IF(${its.missing}<>"","",${formula})`;
  return () => whole;
}

/** A figure on the way to others. */
export function working(
  heading: string,
  measure: ColumnMeasure,
  { formula, ...rest }: { value: Value; formula: Formula | string; width?: number },
): WorkingColumn {
  return { heading, measure, group: '', width: measure === 'text' ? 16 : 11, ...rest, formula: guarded(formula) };
}

/** The plain formula of a figure of the opening; the rest of it stands with its description. */
export function plain(name: FigureName, formula: Formula | string, width?: number): WorkingColumn {
  const described = figureNamed(name)!;
  const { heading, measure } = described;
  return working(heading, measure, {
    ...(width === undefined ? {} : { width }),
    value: (row, { standards }) => figureOf(described, row, standards.unit),
    formula,
  });
}

/** A figure of the curve, shown as soon as the curve's own inputs are there, whatever wood and price still lack. */
export function ofCurve(formula: string): Formula {
  const whole = `IF(${its.missingShape}<>"","",${formula})`;
  return () => whole;
}

export function inGroup<Key extends WorkingKey>(group: string, columns: WorkingColumns<Key>): WorkingColumns<Key> {
  const named = Object.entries<WorkingColumn>(columns).map(([key, column]) => [
    key,
    { ...column, group: column.group || group },
  ]);
  return Object.fromEntries(named) as WorkingColumns<Key>;
}
