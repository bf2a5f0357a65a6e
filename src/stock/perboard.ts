import { notNegative, positive } from '../require';
import { ok, type Result } from '../result';
import { gridFor, onGrid } from './grid';

/**
 * Pieces of one length from one board. `trim` comes off each end; n pieces take n − 1 kerfs, since the last piece may end at
 * the trim: n = ⌊(board − 2·trim + kerf) / (piece + kerf)⌋, in whole numbers. 0 where not even one fits.
 *
 * Any unit, the same for all four. Refuses a board or piece that isn't more than 0 and a kerf or trim below 0.
 * perBoard(96, 24, 0.125, 0) is 3: four would take 96 3/8.
 */
export function perBoard(boardLength: number, pieceLength: number, kerf = 0, trim = 0): Result<number> {
  const refusal =
    positive('board_length', boardLength) ??
    positive('piece_length', pieceLength) ??
    notNegative('kerf', kerf) ??
    notNegative('trim', trim);
  if (refusal) return refusal;
  const grid = gridFor([boardLength, pieceLength, kerf, trim], 2 ** 48);
  const room = onGrid(boardLength, grid) - 2 * onGrid(trim, grid) + onGrid(kerf, grid);
  return ok(Math.max(0, Math.floor(room / (onGrid(pieceLength, grid) + onGrid(kerf, grid)))));
}
