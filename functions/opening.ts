/* eslint-disable @typescript-eslint/no-explicit-any -- cells hold figures, words and blanks, and the metadata knows no unions */
import { figureNamed, figureOf } from '../src/takeoff/figures';
import { sharesOf } from '../src/takeoff/shares';
import { word } from './arguments';
import { worksheetError } from './error';
import { figuresOf, sharingRows } from './rows';

/** The reference lists them all; a sentence must not. */
const NAMES = 'the name of a figure, such as "long point", "radius", "blank", "labor" or "needs"';

/**
 * One figure of an opening, from its own inputs alone.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#opening
 * @param figure Name of the figure, such as "long point", "radius", "blank", "cuts", "labor", "needs" or "look at"; the table below lists them all.
 * @param main One row of cells: quantity, head, span, rise.
 * @param more One row of cells: ends, reveal, face, thickness, species, profile, leg, segments wanted, sides, arcs, haunch, other leg. A blank is the shop's standard; cells at the end may be missing.
 * @param shop The shop's settings: rows of a setting's name and its value, as in the range Shop of the Standards sheet. A blank value is the default.
 * @param wood The stock list: rows of species, quarters, dressed thickness, width, length, price per board foot, boards on hand, as in the range Wood of the Standards sheet.
 * @param onhand The list of knives, as in the range OnHand of the Standards sheet: see SHARES. Only passes, run minutes and labor rest on it. Left out: none.
 * @returns A number or a text; lengths in the workbook's unit, money and minutes for the whole quantity. Blank text where the inputs lack something: "needs" says what.
 * @throws A figure not known; a shop, wood or onhand that can't be read; more cells than a row has.
 * @remarks Spare and test pieces, knives, guides and set-ups are shared by openings and not in these figures: see SHARES. What the lengths and blanks are is told at HEADLENGTH, SEGMENTS, BLANKWIDTH and BLANKLENGTH.
 * @example =ARCH.OPENING("radius", {1, "segmental", 36, 6}, {"radial", 0.1875, 3.5}, {"Unit of length", "in"}, {"Poplar", 4, 0.8125, 5.5, 96, 3.9, ""}) → 30
 * @example =ARCH.OPENING("needs", {1, "segmental", 36}, {"radial"}, {"Unit of length", "in"}, {"Poplar", 4, 0.8125, 5.5, 96, 3.9, ""}) → "Needs a rise: more than 0."
 */
export function OPENING(
  figure: any,
  main: any[][],
  more: any[][],
  shop: any[][],
  wood: any[][],
  onhand?: any[][],
): any {
  const named = figureNamed(word('figure', figure, NAMES));
  if (named === null) throw worksheetError(`figure must be ${NAMES}; got "${String(figure)}"`);
  const { figures, standards } = figuresOf(main, more, shop, wood, onhand);
  return figureOf(named, figures, standards.unit);
}

/**
 * What each opening bears of the things that several need together: knives, guides, set-ups, spare and test pieces.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#shares
 * @param no The openings' numbers, one in each row; a row without one is passed over.
 * @param main The openings' main inputs, a row each: see OPENING.
 * @param more The openings' other inputs, a row each: see OPENING.
 * @param shop The shop's settings: see OPENING.
 * @param wood The stock list: see OPENING.
 * @param onhand Knives and guides: rows of "knife" or "guides", which the shop owns and doesn't charge again, or "new knife"; profile, casing width, thickness, inside radius of guides; depth, passes and charge of a knife, where they don't follow from the settings. Left out: none.
 * @returns Rows of number, money and wood (board-foot money before waste), by ascending number whatever the order of the rows.
 * @throws Ranges of different heights; a number given twice; a shop, wood or onhand that can't be read.
 * @remarks A knife and its change are borne by the heads it cuts, a guide change with its guides, spare and test pieces by the pieces that run through it. Openings whose radii lie within the tolerance of the settings share guides. Openings that need something bear nothing and change nothing.
 * @example =ARCH.SHARES({7; 3}, {1, "straight", 36, ""; 1, "straight", "", ""}, {"square"; "square"}, {"Unit of length", "in"; "Test piece", 0}, {"Poplar", 4, 0.8125, 5.5, 96, 3.9, ""}) → {3, 0, 0; 7, 155.333333333, 0}
 */
export function SHARES(
  no: any[][],
  main: any[][],
  more: any[][],
  shop: any[][],
  wood: any[][],
  onhand?: any[][],
): number[][] {
  const { rows, standards } = sharingRows(no, main, more, shop, wood, onhand);
  if (rows.length === 0) throw worksheetError('no must hold the number of at least one opening; got none');
  const sharers = rows.flatMap(({ no: number, figures: { inputs, own, needs } }) =>
    inputs && own && needs.length === 0 ? [{ no: number, inputs, own }] : [],
  );
  const shares = new Map(sharesOf(sharers, standards).map((share) => [share.no, share]));
  return rows
    .map(({ no: number }) => [number, shares.get(number)?.money ?? 0, shares.get(number)?.wood ?? 0])
    .sort((one, other) => one[0]! - other[0]!);
}
