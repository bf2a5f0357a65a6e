import { lacks } from '../../check/quote/finding';
import type { QuoteLine } from '../../quote/quote';
import type { OpeningTakeoff } from '../../takeoff/takeoff';

type Figure = number | null;

/** The figures of a quoted line beside our own for its opening, as they stand in the cells that its formulas read. */
export interface LineFigures {
  readonly quantity: Figure;
  readonly radius: Figure;
  readonly length: Figure;
  readonly unitPrice: Figure;
  readonly extension: Figure;
  /** The price of one piece, from the extension where the quote gives no unit price. */
  readonly unit: Figure;
  readonly ourQuantity: Figure;
  /** At the edge that the quote's heading names. */
  readonly ourRadius: Figure;
  readonly ourLength: Figure;
  /** What is said of a figure that isn't there. */
  readonly lacks: ReturnType<typeof lacks>;
  /** Of one piece. */
  readonly ourPrice: Figure;
}

export function lineFigures(line: QuoteLine, opening: OpeningTakeoff | null): LineFigures {
  const { quantity, radius, length, unitPrice, extension } = line;
  return {
    lacks: lacks(line.unread),
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
