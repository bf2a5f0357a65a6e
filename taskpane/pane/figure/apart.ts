import type { Explained, FigureMeasure } from '../../../src/takeoff/explained';
import { FIGURES_OF_EVERY_RING, figureOf } from '../../../src/takeoff/figures';
import { GUIDE_FIGURES } from '../../../src/takeoff/guideFigures';
import { MONEY_FIGURES } from '../../../src/takeoff/moneyFigures';
import type { OpeningTakeoff, Takeoff } from '../../../src/takeoff/takeoff';
import type { Standards } from '../../../src/standards';
import type { Unit } from '../../../src/unit';
import { decimal, lengthText, money } from '../format';

/** One figure of an opening, taken apart in words: all of it from the figure's own description. */
export interface FigureApart {
  readonly name: string;
  readonly heading: string;
  readonly measure: FigureMeasure;
  readonly figure: string | number;
  /** The figure as it is shown. */
  readonly value: string;
  /** The named function, or the arithmetic. */
  readonly by: string;
  readonly from: readonly { readonly name: string; readonly value: string }[];
  /** How a person works it out by hand; '' where `by` says as much. */
  readonly how: string;
  /** As a worksheet formula of these numbers, without `=`; null where no function gives it. */
  readonly formula: string | null;
}

/** Figures of an opening and of its money, each with the function that gives it and the numbers it rests on. */
export function figuresApart(taken: Takeoff, row: OpeningTakeoff, locale?: string): FigureApart[] {
  const { standards } = taken;
  const { unit } = standards;
  const bought = MONEY_FIGURES.map((figure) =>
    apart(figure, figure.value(row) ?? '', figure.explain(row, taken), unit, locale),
  );
  return [...ownApart(row, standards, locale), ...bought.filter((each) => each !== null)];
}

/** The numbers of one opening alone, the guides of its own radii included. */
export function numbersApart(row: OpeningTakeoff, standards: Standards, locale?: string): FigureApart[] {
  const guides = (row.own?.rings ?? []).flatMap(({ ring: { inside } }, at, { length }) =>
    Object.entries(GUIDE_FIGURES).flatMap(([side, { heading, measure, value, explain }]) => {
      const ofRadius = length === 1 ? '' : ` for inside radius ${lengthText(inside, standards.unit, locale)}`;
      const described = { name: `${side} guide ${at}`, heading: heading + ofRadius, measure };
      const figure = value(row, standards, at) ?? '';
      return apart(described, figure, explain(at)(row, standards), standards.unit, locale) ?? [];
    }),
  );
  return [...ownApart(row, standards, locale), ...guides].filter(({ figure }) => typeof figure === 'number');
}

function ownApart(row: OpeningTakeoff, standards: Standards, locale?: string): FigureApart[] {
  const { unit } = standards;
  return FIGURES_OF_EVERY_RING.flatMap(
    (figure) => apart(figure, figureOf(figure, row, unit), figure.explain(row, standards), unit, locale) ?? [],
  );
}

function apart(
  { name, heading, measure }: { readonly name: string; readonly heading: string; readonly measure: FigureMeasure },
  figure: string | number,
  explained: Explained | null,
  unit: Unit,
  locale?: string,
): FigureApart | null {
  if (figure === '' || explained === null) return null;
  const { by, from, how, formula = null } = explained;
  return {
    ...{ name, heading, measure, figure, by, formula, value: inWords(figure, measure, unit, locale) },
    from: from
      .filter((each) => each.value !== null)
      .map((each) => ({ name: each.name, value: inWords(each.value, each.measure, unit, locale) })),
    how: how?.((length) => decimal(length, 4, locale)) ?? '',
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
