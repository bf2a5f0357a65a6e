import { describe, expect, it } from 'vitest';
import { benchPictures } from '../../src/drawing/benchPictures';
import { guideBoardsOf, jobFiles } from '../../src/drawing/template';
import { defaultStandards } from '../../src/standards';
import { planTakeoff } from '../../src/takeoff/planned';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { opening } from '../takeoff/openings';
import { valueOf } from '../value';

const STANDARDS = defaultStandards();
const { taken, boards } = planTakeoff(
  takeoff(
    [
      opening({ row: 2, mark: 'A<b>', head: 'segmental', span: 36, rise: 6, quantity: 2 }),
      opening({ row: 3, mark: 'B', head: 'half round', span: 40 }),
      opening({ row: 4, mark: 'C', head: 'half round', span: 40, profile: '=Band' }),
    ],
    STANDARDS,
  ),
);
const PAIRS = planSetups(taken).setups.map((setup) => ({
  name: setup.name,
  boards: valueOf(guideBoardsOf(setup, STANDARDS)),
}));

describe('a page of pictures', () => {
  it('of the glue-up shows all boards cut alike, and each ring once, with its openings; words are escaped', () => {
    const page = benchPictures(taken, boards, 'job & co.csv');
    const alike = boards.plans.reduce((sum, plan) => sum + plan.boards.length, 0);
    expect(page.split('<svg')).toHaveLength(1 + alike + 2);
    expect(page).toContain('job &amp; co.csv');
    expect(page).toContain('No. 2 B, No. 3 C: Ring of');
    expect(page).not.toContain('<b>');
    expect(page).not.toMatch(/https?:(?!\/\/www\.w3\.org)/);
  });

  it('of all guide boards has a picture for each pair, and one table has the ordinates of every arc', () => {
    const [overview, ordinates] = valueOf(jobFiles(PAIRS));
    expect(PAIRS).toHaveLength(3);
    expect(overview!.content.split('<svg')).toHaveLength(1 + 3);
    const lines = ordinates!.content.trim().split('\r\n');
    expect(lines[0]).toContain('guide set,guide,radius (in)');
    for (const { name, boards: pair } of PAIRS) {
      const crown = lines.find((line) => line.startsWith(`"${name}",inside,`) && line.split(',').at(-2) === '0');
      const radius = pair.radius - STANDARDS.margin - STANDARDS.clearance;
      // Boards reach an inch past the bed lines: the arc's rise over that chord.
      const half = STANDARDS.bedLine + 1;
      expect(Number(crown!.split(',').at(-1))).toBeCloseTo(radius - Math.sqrt(radius ** 2 - half ** 2), 5);
    }
  });

  it('has nothing of a job without curves', () => {
    expect(valueOf(jobFiles([]))).toEqual([]);
  });
});
