import DxfParser, { type IArcEntity, type ITextEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { fileName, guideBoardsOf, jobFiles, pairsOf, templateFiles } from '../../src/drawing/template';
import { defaultStandards } from '../../src/standards';
import { planSetups } from '../../src/takeoff/setups';
import { takeoff } from '../../src/takeoff/takeoff';
import { refusalOf, valueOf } from '../value';
import { opening } from '../takeoff/openings';
import { boards } from './boards';
import { wordsOf } from './readSvg';

describe('the files of a pair of guide boards', () => {
  it('are a full-size DXF and SVG and an overview', () => {
    const files = valueOf(templateFiles(boards, 'A1'));
    expect(files.map(({ name }) => name)).toEqual(['A1-guides.dxf', 'A1-guides.svg', 'A1-overview.svg']);
  });

  it('say their unit and a length to check the print by, in the DXF and the SVG alike', () => {
    const [dxf, svg] = valueOf(templateFiles(boards, 'A1'));
    const said = 'Full size, inches. The bed lines must measure 10 apart.';
    const texts = new DxfParser()
      .parseSync(dxf!.content)!
      .entities.filter(({ type }) => type === 'TEXT') as ITextEntity[];
    expect(texts.map(({ text }) => text)).toContain(said);
    expect(wordsOf(svg!.content)).toContain(said);
  });

  it("hold ordinates where the blank's outside radius is longer than a trammel, as on the tickets, and not before", () => {
    const named = (outside: number) =>
      valueOf(templateFiles({ ...boards, radius: outside - boards.face - (boards.margin ?? 0) }, 'A1')).map(
        ({ name }) => name,
      );
    expect(named(120)).not.toContain('A1-ordinates.csv');
    expect(named(120.01)).toContain('A1-ordinates.csv');
    const csv = valueOf(templateFiles({ ...boards, radius: 200 }, 'A1'))[3]!.content;
    const rows = csv
      .trim()
      .split('\r\n')
      .slice(1)
      .map((row) => row.split(','));
    const inside = rows.filter(([guide]) => guide === 'inside').map(([, , x, y]) => [Number(x), Number(y)]);
    const arc = 200 - 0.25 - 1 / 32;
    expect(inside[0]![1]).toBeCloseTo(arc - Math.sqrt(arc * arc - 36), 5);
    expect(inside.at(-1)).toEqual([6, 0]);
  });

  it('hold them from the trammel the shop has', () => {
    const names = valueOf(templateFiles({ ...boards, trammel: 12 }, 'A1')).map(({ name }) => name);
    expect(names).toContain('A1-ordinates.csv');
  });

  it('hold them every 25 millimeters where the shop measures in those', () => {
    const metric = { ...boards, radius: 4000, face: 90, margin: 6, unit: 'mm' as const };
    const rows = valueOf(templateFiles(metric, 'A1'))[3]!.content.split('\r\n').slice(1, 4);
    expect(rows.map((row) => row.split(',')[2])).toEqual(['0', '25', '50']);
  });

  it('are refused with the sentence of the figure that is wrong', () => {
    expect(refusalOf(templateFiles({ ...boards, radius: 0 }, 'A1'))).toContain('radius must be');
  });

  it('come from the set-ups of a takeoff with its own figures', () => {
    const standards = defaultStandards();
    const taken = takeoff([opening({ mark: 'W1', head: 'segmental', span: 36, rise: 6 })], standards);
    const [setup] = planSetups(taken).setups;
    const own = valueOf(guideBoardsOf(setup!, standards));
    expect(own).toMatchObject({ marks: ['W1'], radius: 30.1875, face: 3.5, margin: 0.25, clearance: 1 / 32 });
    const dxf = new DxfParser().parseSync(valueOf(templateFiles(own, setup!.name))[0]!.content)!;
    const radii = dxf.entities.flatMap((entity) =>
      entity.type === 'ARC' && entity.layer === 'GUIDE' ? [(entity as IArcEntity).radius] : [],
    );
    const pair = setup!.guides?.ok ? setup!.guides.value : null;
    expect(Math.min(...radii)).toBeCloseTo(pair!.inside, 9);
    expect(Math.max(...radii)).toBeCloseTo(pair!.outside, 9);
  });

  it('name an opening without a mark by its row, and lie to the bed lines of the shop, its thin edge named', () => {
    const standards = { ...defaultStandards(), bedLine: 6.5, thinEdge: 'outside' as const };
    const taken = takeoff([opening({ mark: '', row: 7, head: 'segmental', span: 36, rise: 6 })], standards);
    const [setup] = planSetups(taken).setups;
    expect(valueOf(guideBoardsOf(setup!, standards))).toMatchObject({
      marks: ['row 7'],
      bedLine: 6.5,
      thinEdge: 'outside',
    });
  });

  it('are not made for a straight set-up', () => {
    const standards = defaultStandards();
    const taken = takeoff([opening({ mark: 'W1', head: 'straight', span: 36, rise: null })], standards);
    const [setup] = planSetups(taken).setups;
    expect(refusalOf(guideBoardsOf(setup!, standards))).toContain('without guide boards');
  });
});

describe('the pairs of a job', () => {
  const of = (...given: Parameters<typeof opening>[0][]) => {
    const standards = defaultStandards();
    const taken = takeoff(
      given.map((one, at) => opening({ row: at + 2, mark: `W${at + 1}`, ...one })),
      standards,
    );
    return valueOf(pairsOf(planSetups(taken).setups, standards));
  };

  it('have files of their own, though their names differ only in signs that a file name cannot hold', () => {
    const one = { head: 'segmental', span: 36, rise: 6 } as const;
    const names = of({ ...one, profile: 'Bead (a)' }, { ...one, profile: 'Bead [a]' }).map(({ name }) =>
      fileName(name),
    );
    expect(names).toHaveLength(2);
    expect(new Set(names).size).toBe(2);
  });

  it('say of guides of a nearly straight ring that they are straight: on the boards, on the page of each pair and of all', () => {
    // Over 14 in an arc of 1568 rises 49/(2 × 1568) = 1/64: radii of 2592.5 and 102 lie on either side.
    const pairs = of({ head: 'segmental', span: 144, rise: 1 }, { head: 'segmental', span: 96, rise: 12 });
    const straight = pairs.map(({ name, boards }) => {
      const [dxf, svg, overview] = valueOf(templateFiles(boards, name)).map(({ content }) => content);
      return [dxf!.includes('AS GOOD AS STRAIGHT'), wordsOf(svg!).join(), wordsOf(overview!).join()].map((said) =>
        typeof said === 'boolean' ? said : /as good as straight/i.test(said),
      );
    });
    expect(straight).toEqual([
      [false, false, false],
      [true, true, true],
    ]);
    const [page] = valueOf(jobFiles(pairs));
    expect(page!.content.match(/AS GOOD AS STRAIGHT/g)).toHaveLength(2);
  });
});

describe('the name of a file', () => {
  it.each([
    ['A1', 'A1'],
    ['../../etc/passwd', 'etc-passwd'],
    ['W 2/3 "left"', 'W-2-3-left'],
    ['Tür é', 'Tur-e'],
    ['..', 'template'],
    ['', 'template'],
    ['3.5 x 0.75 Casing, R 18.188', '3.5-x-0.75-Casing-R-18.188'],
  ])('made of %j is %j', (given, name) => expect(fileName(given)).toBe(name));

  it('of a long name keeps its end, where the radius stands', () => {
    const name = fileName(`${'very '.repeat(40)}long profile, R 18.188`);
    expect(name.length).toBeLessThanOrEqual(80);
    expect(name.endsWith('R-18.188')).toBe(true);
  });
});
