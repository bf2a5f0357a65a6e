import { describe, expect, it } from 'vitest';
import { boardLegend, boardScene } from '../../src/drawing/boardScene';
import { toSvg } from '../../src/drawing/svg';
import { defaultStandards } from '../../src/standards';
import { planBoards } from '../../src/takeoff/boards';
import { partsOf } from '../../src/takeoff/parts';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from '../takeoff/openings';

const STANDARDS = defaultStandards();
const OPENINGS = [24, 36, 60].map((span, at) =>
  opening({ row: at + 2, mark: `R${at}`, head: 'half round', span, rise: span / 2, quantity: 2, leg: null }),
);
const [PLAN] = planBoards(partsOf(takeoff(OPENINGS, STANDARDS)), STANDARDS, { work: 1e7 }).plans;

describe('the drawing of a board', () => {
  it('shows every piece of it once, inside the board', () => {
    for (const alike of PLAN!.boards) {
      const { shapes } = boardScene(alike, PLAN!, STANDARDS.endTrim, 'in');
      const { width, length } = PLAN!.sale[alike.board]!;
      const pieces = alike.sections.flatMap(({ lanes }) =>
        lanes.flatMap(({ rows }) => rows.flatMap((row) => row.pieces)),
      );
      const drawn = shapes.flatMap((shape) => (shape.kind === 'outline' && shape.layer === 'blank' ? [shape] : []));
      expect(drawn).toHaveLength(pieces.length);
      for (const { start, steps } of drawn) {
        for (const { x, y } of [start, ...steps.map(({ to }) => to)]) {
          expect(x).toBeGreaterThanOrEqual(STANDARDS.endTrim - 1e-6);
          expect(x).toBeLessThanOrEqual(length - STANDARDS.endTrim + 1e-6);
          expect(y).toBeGreaterThanOrEqual(-1e-6);
          expect(y).toBeLessThanOrEqual(width + 1e-6);
        }
      }
    }
  });

  it('numbers the pieces by the list of parts, and says the same in words', () => {
    const legend = boardLegend(PLAN!, 'in');
    expect(legend).toHaveLength(PLAN!.parts.length);
    const { description, title } = boardScene(PLAN!.boards[0]!, PLAN!, STANDARDS.endTrim, 'in');
    expect(title).toMatch(/boards? Poplar .* cut alike/);
    expect(legend.some((words) => description.includes(words))).toBe(true);
  });

  it('can be written as SVG', () => {
    expect(toSvg(boardScene(PLAN!.boards[0]!, PLAN!, STANDARDS.endTrim, 'in'))).toContain('<svg');
  });
});
