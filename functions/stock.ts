/* eslint-disable @typescript-eslint/no-explicit-any -- a length is a number or text, and the metadata knows no unions */
import { boardFeet } from '../src/lumber';
import { inches } from '../src/unit';
import { cutText } from '../src/stock/cuttext';
import { perBoard } from '../src/stock/perboard';
import { length as readLength, optionalLength, optionalNumber } from './arguments';
import { give } from './error';
import { planOf } from './plans';

/**
 * Board feet.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#boardfeet
 * @param thickness Nominal thickness, inches, more than 0; under 1 counts as 1.
 * @param width Nominal width, inches, more than 0.
 * @param length Length, inches, more than 0.
 * @param quantity How many boards, 0 or more. Left out: 1.
 * @returns Board feet, not rounded.
 * @throws Sizes that aren't more than 0.
 * @remarks thickness·width·length·quantity/144. American Softwood Lumber Standard PS 20-20, section 2.2; that thin stock counts as 1 inch is common practice.
 * @example =ARCH.BOARDFEET(2, 4, 96) → 5.33333333333
 * @example =ARCH.BOARDFEET(0.75, 6, 120, 10) → 50
 */
export function BOARDFEET(thickness: any, width: any, length: any, quantity?: any): number {
  return give(
    boardFeet(
      inches(readLength('thickness', thickness), 'in'),
      inches(readLength('width', width), 'in'),
      inches(readLength('length', length), 'in'),
      optionalNumber('quantity', quantity),
    ),
  );
}

/**
 * Pieces of one length that one board gives.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#perboard
 * @param board_length Length of the board, more than 0.
 * @param piece_length Length of a piece, more than 0.
 * @param kerf Width of a saw cut, 0 or more. Left out: 0.
 * @param trim Taken off each end of the board, 0 or more. Left out: 0.
 * @returns A whole number; 0 where the board is too short.
 * @throws Lengths that aren't more than 0; a negative kerf or trim.
 * @remarks n pieces take n − 1 kerfs between them: ⌊(board_length − 2·trim + kerf)/(piece_length + kerf)⌋.
 * @example =ARCH.PERBOARD(96, 24, 0.125) → 3
 */
export function PERBOARD(board_length: any, piece_length: any, kerf?: any, trim?: any): number {
  return give(
    perBoard(
      readLength('board_length', board_length),
      readLength('piece_length', piece_length),
      optionalLength('kerf', kerf),
      optionalLength('trim', trim),
    ),
  );
}

/**
 * Boards to buy for a cutting list.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#boards
 * @param lengths Range of piece lengths.
 * @param quantities Range of as many quantities, whole.
 * @param stock Range of the board lengths on sale.
 * @param kerf Width of a saw cut, 0 or more. Left out: 0.
 * @param trim Taken off each end of every board, 0 or more. Left out: 0.
 * @param prices Range of as many prices of one board each as stock has lengths. Left out: price by length.
 * @returns A whole number, boards of all lengths together.
 * @throws A piece longer than every board; lengths without quantities; more than 20,000 pieces.
 * @remarks One stock length: the fewest boards. Several: the boards of the least cost. Rows blank in both lengths and quantities are passed over. CUTPLAN says whether the plan is proven to be the best.
 * @example =ARCH.BOARDS({24; 17}, {10; 4}, {96}, 0.125) → 4
 */
export function BOARDS(
  lengths: any[][],
  quantities: any[][],
  stock: any[][],
  kerf?: any,
  trim?: any,
  prices?: any[][],
): number {
  return planOf(lengths, quantities, stock, kerf, trim, prices).boards;
}

/**
 * Share of the bought length that becomes pieces.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#stockyield
 * @param lengths Range of piece lengths.
 * @param quantities Range of as many quantities, whole.
 * @param stock Range of the board lengths on sale.
 * @param kerf Width of a saw cut, 0 or more. Left out: 0.
 * @param trim Taken off each end of every board, 0 or more. Left out: 0.
 * @param prices Range of as many prices of one board each as stock has lengths. Left out: price by length.
 * @returns A fraction from 0 to 1.
 * @throws What BOARDS refuses.
 * @remarks Total length of the pieces over the total length of the boards, in the plan that BOARDS counts.
 * @example =ARCH.STOCKYIELD({24; 17}, {10; 4}, {96}, 0.125) → 0.802083333333
 */
export function STOCKYIELD(
  lengths: any[][],
  quantities: any[][],
  stock: any[][],
  kerf?: any,
  trim?: any,
  prices?: any[][],
): number {
  return planOf(lengths, quantities, stock, kerf, trim, prices).yield;
}

/**
 * The cutting plan: boards cut alike, stock length, cuts, offcut, proof.
 *
 * @customfunction
 * @helpurl https://archwright.example/docs/functions.html#cutplan
 * @param lengths Range of piece lengths.
 * @param quantities Range of as many quantities, whole.
 * @param stock Range of the board lengths on sale.
 * @param kerf Width of a saw cut, 0 or more. Left out: 0.
 * @param trim Taken off each end of every board, 0 or more. Left out: 0.
 * @param prices Range of as many prices of one board each as stock has lengths. Left out: price by length.
 * @returns Rows of boards cut alike, stock length, cuts as text, offcut, and proof: "proven", or how many boards (or how much cost) the plan may be above the least possible.
 * @throws What BOARDS refuses.
 * @remarks The plan is found by patterns (Gilmore and Gomory's column generation) and proven by a bound in whole numbers. The search is limited by counted work, two seconds or so, so the same list gives the same plan on any machine.
 * @example =ARCH.CUTPLAN({24.5; 17}, {3; 1}, {96}, 0.125) → {1, 96, "3 × 24 1/2, 1 × 17", 5, "proven"}
 */
export function CUTPLAN(
  lengths: any[][],
  quantities: any[][],
  stock: any[][],
  kerf?: any,
  trim?: any,
  prices?: any[][],
): any[][] {
  const plan = planOf(lengths, quantities, stock, kerf, trim, prices);
  const proof = plan.proven ? 'proven' : plan.gap;
  return plan.plan.map((alike) => [alike.count, alike.stock, cutText(alike.cuts), alike.offcut, proof]);
}
