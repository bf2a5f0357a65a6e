import { shopInches } from '../feetInches';
import { figure } from '../require';
import type { KnownFigure } from './lengthMistakes';

/** What is thought of one quoted figure. */
export interface Verdict {
  readonly verdict: 'agrees' | 'mistake' | 'unexplained';
  /** The mistakes that give the quoted figure, the plainest first; several when it can't be told which. */
  readonly mistakes: readonly string[];
  readonly right: number;
  /** Quoted less right: below 0 when the quote is short. */
  readonly difference: number;
  /** "agrees", "chord, not arc or reveal left out", "unexplained: 12 1/4 short". */
  readonly text: string;
}

/** A quote is within an eighth unless its reader says otherwise. */
export const TOLERANCE = 1 / 8;

/**
 * Judges a quoted figure against the right one and those the known mistakes give. It agrees within the tolerance. Otherwise
 * every mistake whose figure it matches within the tolerance is named, but for those clearly farther off than the nearest (by
 * more than a quarter of the tolerance): two that can't be told apart are both named, the plainer first. The tolerance goes with
 * the unit that a mistake puts the figure in.
 */
export function judge(quoted: number, right: number, known: readonly KnownFigure[], tolerance = TOLERANCE): Verdict {
  const difference = quoted - right;
  // As `isNear` of the rules has it, which the script of the functions would have to carry: 38 - 37.875 misses the tolerance by rounding alone.
  const within = tolerance + 1e-9 * Math.max(1, Math.abs(right));
  if (Math.abs(difference) <= within) return { verdict: 'agrees', mistakes: [], right, difference, text: 'agrees' };
  const fits = known
    .map(({ mistake, figure: wrong, scale = 1, slip = false }) => ({
      slip,
      mistake,
      off: Math.abs(quoted - wrong) / scaled(scale, within),
    }))
    .filter(({ off }) => off <= within);
  const plainest = Math.min(...fits.filter(({ slip }) => !slip).map(({ off }) => off));
  const near = fits.filter(({ slip, off }) => !slip || off < plainest - within / 8);
  if (near.length === 0)
    return { verdict: 'unexplained', mistakes: [], right, difference, text: unexplained(difference) };
  const nearest = Math.min(...near.map(({ off }) => off));
  const alike = near.filter(({ off }) => off <= nearest + tolerance / 4).map(({ mistake }) => mistake);
  const mistakes = [...new Set(alike)];
  return { verdict: 'mistake', mistakes, right, difference, text: mistakes.join(' or ') };
}

/** Rounding leaves at least this much of a figure in another unit. */
const LEAST_WITHIN = 1 / 30;

/** A figure in feet is within a twelfth of what inches may be off by, one in millimeters within 25 times as much. */
function scaled(scale: number, within: number): number {
  return within === 0 ? 1 : Math.max(scale, Math.min(1, LEAST_WITHIN / within));
}

function unexplained(difference: number): string {
  const size = shopInches(Math.abs(difference));
  const written = size.ok && size.value !== '0' ? size.value : figure(Math.abs(difference));
  return `unexplained: ${written} ${difference < 0 ? 'short' : 'long'}`;
}
