import type { LineCheck } from './checkLine';

/** Most money at stake first. */
export function byStake(lines: readonly LineCheck[]): LineCheck[] {
  return [...lines].sort((one, other) => other.stake - one.stake || one.line.row - other.line.row);
}
