import type { LineCheck } from '../../check/quote/checkLine';
import { lacks } from '../../check/quote/finding';
import type { LineFigures } from '../../check/rules/lineRules';
import { UNIT } from '../../check/rules/moneyRules';
import { numberOf, type FigureName } from '../../takeoff/figures';
import { moneyFigure } from '../../takeoff/moneyFigures';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { Unit } from '../../unit';
import { LENGTH_FIGURES, RADIUS_FIGURES } from './formulas';

/** The figures of a quoted line beside our own for its opening, as they stand in the cells that its formulas read. */
export function lineFigures(
  { line, places, count }: LineCheck,
  opening: OpeningTakeoff | null,
  workbookUnit: Unit,
): LineFigures {
  const ours = (name: FigureName) => opening && numberOf(name, opening, workbookUnit);
  const { quantity, radius, length, unitPrice, extension } = line;
  return {
    lacks: lacks(line.unread),
    place: opening === null ? null : places[0]! + 1,
    together: count?.pieces ?? null,
    quantity,
    radius,
    length,
    unitPrice,
    extension,
    unit: UNIT.of({ unitPrice, extension, quantity }),
    ourQuantity: opening?.known.quantity ?? null,
    ourRadius: ours(RADIUS_FIGURES[line.radiusOf]),
    ourLength: ours(LENGTH_FIGURES[line.lengthOf]),
    ourPrice: opening && (moneyFigure('unit price').value(opening) ?? null),
  };
}
