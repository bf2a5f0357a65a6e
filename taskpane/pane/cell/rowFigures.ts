import { FIGURES, figureOf, type Explained, type Figure, type FigureMeasure } from '../../../src/takeoff/figures';
import { MONEY_FIGURES } from '../../../src/takeoff/moneyFigures';
import type { OpeningTakeoff, Takeoff } from '../../../src/takeoff/takeoff';
import type { Unit } from '../../../src/unit';
import { TAKEOFF_COLUMNS } from '../../../src/workbook/takeoff/columns';
import { decimal, lengthText, money } from '../format';

/** One figure of a row, taken apart: all in words. */
export interface FigureApart {
  readonly name: string;
  readonly heading: string;
  readonly value: string;
  /** The named function, or the arithmetic. */
  readonly by: string;
  readonly from: readonly { readonly name: string; readonly value: string }[];
}

/** Figures of an opening and of its money, each with the function that gives it and the numbers it rests on. */
export function figuresApart(taken: Takeoff, row: OpeningTakeoff, locale?: string): FigureApart[] {
  const { standards } = taken;
  const { unit } = standards;
  const own = (FIGURES as readonly Figure[]).map((figure) =>
    apart(figure, figureOf(figure, row, unit), figure.explain(row, standards), unit, locale),
  );
  const bought = MONEY_FIGURES.map((figure) =>
    apart(figure, figure.value(row) ?? '', figure.explain(row, taken), unit, locale),
  );
  return [...own, ...bought].filter((each) => each !== null);
}

function apart(
  { name, heading, measure }: { readonly name: string; readonly heading: string; readonly measure: FigureMeasure },
  value: string | number,
  explained: Explained | null,
  unit: Unit,
  locale?: string,
): FigureApart | null {
  if (value === '' || explained === null) return null;
  return {
    ...{ name, heading, by: explained.by, value: inWords(value, measure, unit, locale) },
    from: explained.from
      .filter((each) => each.value !== null)
      .map((each) => ({ name: each.name, value: inWords(each.value, each.measure, unit, locale) })),
  };
}

function inWords(value: string | number | null, measure: FigureMeasure, unit: Unit, locale?: string): string {
  if (typeof value !== 'number') return String(value ?? '–');
  switch (measure) {
    case 'length':
      return lengthText(value, unit, locale);
    case 'degrees':
      return `${decimal(value, 4, locale)}°`;
    case 'money':
      return money(value, locale);
    case 'minutes':
      return `${decimal(value, 2, locale)} min`;
    case 'boardFeet':
      return `${decimal(value, 3, locale)} bd ft`;
    default:
      return decimal(value, 4, locale);
  }
}

/** The figure that a column of the Takeoff (from 0) shows; null: it is none, or one of the user's own. */
export function figureInColumn(column: number): string | null {
  const shown = TAKEOFF_COLUMNS[column];
  if (shown?.role !== 'figure') return null;
  return shown.shows ?? null;
}
