import { isNear } from '../rules/lineRules';
import type { OpeningTakeoff } from '../../takeoff/takeoff';
import type { LineCheck } from './checkLine';
import type { About, Finding } from './finding';
import { rightFigure, type RightOf } from './rightFigure';

const SWAPPED = 'rows swapped';
const SLIPPED = 'slipped by one row';

/** What slips from one row to the next when a quote is typed. */
const SLIPS: readonly About[] = ['quantity', 'radius', 'length', 'unit price'];

/**
 * Names mistakes that show only beside the lines above and below: two rows with each other's figures, or figures that slipped by a row.
 * One figure alone that happens to be a neighbor's is said beside what else it may be.
 */
export function namedByNeighbors(
  lines: readonly LineCheck[],
  openings: readonly OpeningTakeoff[],
  tolerance: number,
): readonly LineCheck[] {
  const named = lines.map(() => new Map<About, string>());
  for (const about of SLIPS) {
    const within = about === 'quantity' ? 0 : about === 'unit price' ? 0.005 : tolerance;
    const quoted = lines.map((line) => finding(line, about)?.quoted ?? null);
    const rights = lines.map(({ line, places, part }) => {
      const opening = places.length === 1 && part === 'head' ? openings[places[0]!]! : null;
      return opening === null || about === 'unit price' ? null : rightFigure(line, about as RightOf, opening);
    });
    // Under "Total LF" stands the length of all pieces, here of one and there of three.
    const pieces = lines.map(
      ({ line }) => (about === 'length' && line.lengthOf === 'all pieces' && line.quantity) || 1,
    );
    const has = (at: number, of: number) => {
      const [said, right] = [quoted[at] ?? null, rights[of] ?? null];
      if (said === null || right === null) return false;
      return [1, pieces[at]!].some((count) => isNear(said, count * right, count * within));
    };
    const off = (at: number) => lines[at] !== undefined && finding(lines[at], about)?.verdict === 'differs';
    lines.forEach((_line, at) => {
      if (!off(at)) return;
      const both = [at - 1, at + 1].find((other) => off(other) && has(at, other) && has(other, at) && !has(at, at));
      if (both !== undefined) return void named[at]!.set(about, SWAPPED);
      for (const step of [-1, 1]) {
        const others = [at - 1, at + 1].filter((other) => off(other) && has(other, other + step)).length;
        if (about !== 'quantity' && has(at, at + step) && others > 0) named[at]!.set(about, SLIPPED);
      }
    });
  }
  // Counts are small and alike by chance: they are swapped only where another figure of the row is, too.
  return lines.map((line, at) => {
    const names = named[at]!;
    if (names.size === 0 || (names.size === 1 && names.has('quantity'))) return line;
    const [cause, length] = [finding(line, 'length')?.cause, names.get('length')];
    // A price that is put down to the length is put down to what the length is called now.
    const renamed = (one: Finding) =>
      one.about === 'unit price' && length !== undefined && one.cause === cause
        ? { ...one, cause: length, mistakes: [length] }
        : withName(one, names.get(one.about));
    return { ...line, findings: line.findings.map(renamed) };
  });
}

function withName(one: Finding, name: string | undefined): Finding {
  if (name === undefined || one.verdict !== 'differs') return one;
  const others = one.mistakes.filter((mistake) => mistake !== name);
  const beside = others.length === 0 ? '' : `, or ${others.join(' or ')}`;
  const [said] = one.text.split(/(?:, unexplained)?: /);
  const words = `${name}${beside}`;
  return { ...one, words, text: `${said}: ${words}`, mistakes: [name, ...others], cause: name };
}

function finding({ findings }: LineCheck, about: About): Finding | undefined {
  return findings.find((one) => one.about === about);
}
