import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { compare, type ListedPrice } from '../../src/revision/compare';
import type { Figures } from '../../src/revision/figures';

const FIGURES: Figures = {
  ...{ quantity: 1, head: 'segmental', span: 36, rise: 8, ends: 'radial', reveal: 0.1875, face: 3.5, thickness: 0.75 },
  ...{ species: 'Poplar', profile: 'Casing', leg: 0, otherLeg: null, sides: 1, arcs: null, haunch: null },
  ...{ segmentsWanted: null, extras: null, priceAgreed: null, place: null, remarks: null },
};
const listed = (
  mark: string,
  figures: Partial<Figures> = {},
  price: number | null = 100,
  no: number | null = null,
): ListedPrice => ({
  ...{ no, mark, price },
  figures: { ...FIGURES, ...figures },
});
const marks = (openings: readonly ListedPrice[]) => openings.map(({ mark }) => mark);

describe('a revised list', () => {
  it('that is the same list, shuffled, changes nothing', () => {
    const old = ['A1', 'A2', 'A3'].map((mark, at) => listed(mark, { span: 30 + at }));
    const { added, dropped, renamed, changed, unchanged, shared, total } = compare(old, [old[2]!, old[0]!, old[1]!]);
    expect([added, dropped, renamed, changed]).toEqual([[], [], [], []]);
    expect([unchanged.length, shared, total]).toEqual([3, 0, { old: 300, new: 300 }]);
  });

  it('tells which figure changed, from what to what, and its money', () => {
    const { changed } = compare([listed('A1')], [listed('a1 ', { span: 40, quantity: 2 }, 250.5)]);
    expect(changed.map(({ figures, money }) => [figures, money])).toEqual([
      [
        [
          { figure: 'quantity', from: 1, to: 2 },
          { figure: 'span', from: 36, to: 40 },
        ],
        150.5,
      ],
    ]);
  });

  it('tells the money that moved between openings that are as they were apart', () => {
    const old = [listed('A1', { span: 30 }, 100), listed('A2', { span: 31 }, 100), listed('A3', { span: 32 }, 100)];
    const { dropped, shared, total } = compare(old, [
      listed('A1', { span: 30 }, 115),
      listed('A3', { span: 32 }, 117.5),
    ]);
    expect([marks(dropped), shared, total]).toEqual([['A2'], 32.5, { old: 300, new: 232.5 }]);
  });

  it('asks whether an opening of equal figures under another mark is the same', () => {
    const old = [listed('A1', { span: 30 }), listed('A2')];
    const now = [listed('A1', { span: 30 }), listed('B7', {}, 90)];
    const { renamed, shared, added } = compare(old, now);
    expect(renamed.map(({ old: one, new: other, asked }) => [one.mark, other.mark, asked])).toEqual([
      ['A2', 'B7', true],
    ]);
    expect([shared, added]).toEqual([-10, []]);
    const told = compare(old, now, [['A2', 'B7']]);
    expect([told.renamed, marks(told.added), marks(told.dropped)]).toEqual([[], ['B7'], ['A2']]);
  });

  it('knows our own openings by number, also under another mark', () => {
    const old = [listed('A1', {}, 100, 7), listed('A2', {}, 100, 8)];
    const { renamed, changed } = compare(old, [listed('A2', {}, 100, 7), listed('A1', { span: 38 }, 100, 8)]);
    expect(renamed.map(({ old: one, new: other, asked }) => [one.mark, other.mark, asked])).toEqual([
      ['A1', 'A2', false],
    ]);
    expect(changed[0]!.figures.map(({ figure }) => figure)).toEqual(['mark', 'span']);
  });

  it('pairs openings that share a mark by their figures, whatever their order', () => {
    const old = [listed('A', { span: 30 }), listed('A', { span: 40 }), listed('A', { span: 50 })];
    const { changed, unchanged, dropped } = compare(old, [
      listed('A', { span: 50 }),
      listed('A', { span: 30, rise: 9 }),
    ]);
    expect(unchanged).toHaveLength(1);
    expect(changed.map(({ figures }) => figures)).toEqual([[{ figure: 'rise', from: 8, to: 9 }]]);
    expect(dropped.map(({ figures }) => figures.span)).toEqual([40]);
  });

  it('takes a half round as half its span: its rise is not told as well', () => {
    const { changed } = compare(
      [listed('A', { head: 'half round', span: 36, rise: 18 })],
      [listed('A', { head: 'half round', span: 40, rise: 20 })],
    );
    expect(changed[0]!.figures.map(({ figure }) => figure)).toEqual(['span']);
  });

  it('does not call a place or a remark changed that one list does not give, or letter case, or rounding', () => {
    const { changed } = compare(
      [listed('A', { place: 'Hall', species: 'Poplar', span: 36 })],
      [listed('A', { species: 'poplar', span: 914.4 / 25.4 + 1e-9 })],
    );
    expect(changed).toEqual([]);
  });

  it('counts an opening that is not priced as nothing in the money', () => {
    const { changed, total } = compare([listed('A', { span: null }, null)], [listed('A', { span: 36 }, 80)]);
    expect([changed[0]!.money, total]).toEqual([80, { old: 0, new: 80 }]);
  });
});

describe('changes planted at random', () => {
  /** Spans of their own, so that what was planted is what there is to find. */
  const list = (count: number) =>
    Array.from({ length: count }, (_, at) =>
      listed(
        at % 7 === 0 ? `T${at % 3}` : `M${at}`,
        { span: 24 + at / 4, quantity: 1 + (at % 5), place: `Room ${at % 4}` },
        50 + at,
      ),
    );
  const CHANGES: readonly ((figures: Figures) => Partial<Figures>)[] = [
    ({ quantity }) => ({ quantity: Number(quantity) + 1 }),
    ({ rise }) => ({ rise: Number(rise) + 0.5 }),
    ({ leg }) => ({ leg: Number(leg) + 60 }),
    () => ({ species: 'Red oak' }),
    () => ({ ends: 'level', face: 4.5 }),
    () => ({ place: 'Attic' }),
    () => ({ head: 'elliptical' }),
  ];

  it('are all found, and nothing else, in lists of any order', () => {
    const plan = fc.record({
      count: fc.integer({ min: 1, max: 60 }),
      deeds: fc.array(
        fc.record({ at: fc.nat(), deed: fc.constantFrom('drop', 'rename', 'change', 'add'), which: fc.nat() }),
        { maxLength: 12 },
      ),
      order: fc.array(fc.nat(), { minLength: 80, maxLength: 80 }),
    });
    fc.assert(
      fc.property(plan, ({ count, deeds, order }) => {
        const old = list(count);
        const now: (ListedPrice | null)[] = [...old];
        const touched = new Set<number>();
        const planted = {
          added: [] as string[],
          dropped: [] as string[],
          renamed: [] as string[],
          changed: [] as string[],
        };
        deeds.forEach(({ at, deed, which }, index) => {
          if (deed === 'add') {
            now.push(listed(`N${index}`, { span: 500 + index }, 33));
            planted.added.push(`N${index}`);
            return;
          }
          const place = at % count;
          if (touched.has(place)) return;
          touched.add(place);
          const before = old[place]!;
          // Of openings that share a mark only one may change what it is told apart by.
          if (deed === 'drop') {
            now[place] = null;
            planted.dropped.push(`${before.mark} ${before.figures.span}`);
          } else if (deed === 'rename') {
            now[place] = { ...before, mark: `R${index}` };
            planted.renamed.push(`${before.mark} R${index}`);
          } else {
            const figures = { ...before.figures, ...CHANGES[which % CHANGES.length]!(before.figures) };
            now[place] = { ...before, figures, price: before.price! + 1.25 };
            planted.changed.push(
              `${before.mark} ${Object.keys(CHANGES[which % CHANGES.length]!(before.figures))
                .sort()
                .join()}`,
            );
          }
        });
        const shuffled = now
          .flatMap((opening, at) => (opening ? [{ opening, key: order[at] ?? at }] : []))
          .sort((one, other) => one.key - other.key)
          .map(({ opening }) => opening);
        const found = compare(old, shuffled);
        expect(marks(found.added).sort()).toEqual(planted.added.sort());
        expect(found.dropped.map(({ mark, figures }) => `${mark} ${figures.span}`).sort()).toEqual(
          planted.dropped.sort(),
        );
        expect(found.renamed.map(({ old: one, new: other }) => `${one.mark} ${other.mark}`).sort()).toEqual(
          planted.renamed.sort(),
        );
        expect(
          found.changed
            .map(
              ({ old: one, figures }) =>
                `${one.mark} ${figures
                  .map(({ figure }) => figure)
                  .sort()
                  .join()}`,
            )
            .sort(),
        ).toEqual(planted.changed.sort());
        expect(found.unchanged).toHaveLength(
          count - planted.dropped.length - planted.renamed.length - planted.changed.length,
        );
        const cents = (money: number) => Math.round(money * 100);
        const moved = [
          ...found.added.map(({ price }) => price!),
          ...found.dropped.map(({ price }) => -price!),
          ...found.changed.map(({ money }) => money),
          found.shared,
        ];
        expect(cents(found.total.new) - cents(found.total.old)).toBe(
          moved.reduce((sum, money) => sum + cents(money), 0),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('are found in 10,000 rows, marks or none', () => {
    for (const nameless of [false, true]) {
      const old = list(10_000).map((opening) => (nameless ? { ...opening, mark: '' } : opening));
      const now = old
        .map((opening, at) => (at % 100 === 0 ? { ...opening, figures: { ...opening.figures, rise: 9 } } : opening))
        .reverse();
      const { changed, unchanged } = compare(old, now);
      expect([changed.length, unchanged.length]).toEqual([100, 9900]);
    }
  });
});
