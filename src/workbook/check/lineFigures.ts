import type { LineCheck } from '../../check/quote/checkLine';
import { lacks } from '../../check/quote/finding';
import type { LineFigures } from '../../check/rules/lineRules';
import type { QuoteLine } from '../../quote/quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';

type Figure = number | null;

/** The figures of a quoted line beside our own for its opening, as they stand in the cells that its formulas read. */
export function lineFigures({ line, places, count }: LineCheck, opening: OpeningTakeoff | null): LineFigures {
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
    unit: unitPrice ?? (extension !== null && quantity !== null ? extension / quantity : null),
    ourQuantity: opening?.known.quantity ?? null,
    ourRadius: radiusOf(line, opening),
    ourLength: lengthOf(line, opening),
    ourPrice: opening?.cost?.unitPrice ?? null,
  };
}

function radiusOf({ radiusOf: edge }: QuoteLine, opening: OpeningTakeoff | null): Figure {
  const ring = opening?.own?.crown?.ring;
  if (!ring) return null;
  return edge === 'inside' ? ring.inside : edge === 'outside' ? ring.outside : ring.radius;
}

function lengthOf({ lengthOf: edge }: QuoteLine, opening: OpeningTakeoff | null): Figure {
  const curve = opening?.own?.curve;
  if (!curve) return null;
  return edge === 'inside' ? curve.insideLength : edge === 'center' ? curve.centerLength : curve.length;
}
