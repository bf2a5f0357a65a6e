import { describe, expect, it } from 'vitest';
import { guidesOwned, knifeListed, type OnHand } from '../src/onHand';

const SIZE = { profile: 'Casing', face: 3.5, thickness: 0.75 };
const KNIFE: OnHand = { kind: 'knife', ...SIZE, insideRadius: null };
const GUIDES: OnHand = { kind: 'guides', ...SIZE, insideRadius: 30 };

describe('what the shop has on hand', () => {
  it('is for a molding of its profile, letter case forgiven, and its width and thickness to half a thousandth', () => {
    const owns = (other: Partial<typeof SIZE>) =>
      knifeListed({ ...SIZE, ...other }, [KNIFE]).owned && guidesOwned({ ...SIZE, ...other }, [GUIDES]).length === 1;
    for (const same of [{}, { profile: 'CASING' }, { face: 3.5004 }, { face: 3.4996 }, { thickness: 0.7504 }]) {
      expect([same, owns(same)]).toEqual([same, true]);
    }
    // At the limit itself, in sizes that a computer holds exactly.
    expect(knifeListed({ ...SIZE, face: 0 }, [{ ...KNIFE, face: 0.0005 }]).owned).toBe(true);
    expect(knifeListed({ ...SIZE, thickness: 0 }, [{ ...KNIFE, thickness: 0.0005 }]).owned).toBe(true);
    expect(knifeListed({ ...SIZE, face: 0 }, [{ ...KNIFE, face: 0.000502 }]).owned).toBe(false);
    for (const other of [{ profile: 'Stool' }, { face: 3.501 }, { face: 3.499 }, { thickness: 0.751 }]) {
      expect([other, knifeListed({ ...SIZE, ...other }, [KNIFE]).owned]).toEqual([other, false]);
      expect([other, guidesOwned({ ...SIZE, ...other }, [GUIDES])]).toEqual([other, []]);
    }
  });

  it('takes of each figure of a knife the greatest that a row gives, whatever their order', () => {
    const rows: OnHand[] = [
      { ...KNIFE, kind: 'new knife', depth: 0.25, charge: 90 },
      { ...KNIFE, depth: 0.5, passes: null },
      { ...KNIFE, kind: 'new knife', passes: 2, charge: 0 },
    ];
    const listed = { owned: true, depth: 0.5, passes: 2, charge: 90 };
    expect(knifeListed(SIZE, rows)).toEqual(listed);
    expect(knifeListed(SIZE, [...rows].reverse())).toEqual(listed);
    expect(knifeListed(SIZE, [])).toEqual({ owned: false, depth: null, passes: null, charge: null });
  });

  it('is a new knife only as a charge: nobody owns it, and guides are no knife nor a knife guides', () => {
    expect(knifeListed(SIZE, [{ ...KNIFE, kind: 'new knife', charge: 80 }, GUIDES])).toEqual({
      ...{ owned: false, depth: null, passes: null },
      charge: 80,
    });
    expect(guidesOwned(SIZE, [{ ...KNIFE, insideRadius: 99 }, GUIDES, { ...GUIDES, insideRadius: 12 }])).toEqual([
      30, 12,
    ]);
  });
});
