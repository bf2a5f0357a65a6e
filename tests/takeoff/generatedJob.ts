import type { Opening } from '../../src/schedule/opening';
import { random } from '../random';
import { opening } from './openings';

/** Openings as a builder has them: half poplar, the rest red oak, white oak or poplar again; one in five on legs. */
export function generatedJob(openings: number, seed: number): Opening[] {
  const of = random(seed * 1000 + openings);
  const heads = ['segmental', 'segmental', 'segmental', 'half round', 'half round'] as const;
  const others = ['elliptical', 'three-centered', 'pointed', 'quarter round', 'round', 'straight'] as const;
  return Array.from({ length: openings }, (_, at) => {
    const head = of.pick([...heads, ...others]);
    const span = of.whole(48, 192) / 2;
    const quarters = (least: number, most: number) => Math.round(span * of.between(least, most) * 4) / 4;
    const rises: Partial<Record<typeof head, () => number>> = {
      segmental: () => quarters(0.08, 0.4),
      elliptical: () => quarters(0.2, 0.45),
      'three-centered': () => quarters(0.2, 0.45),
      pointed: () => quarters(0.6, 1.1),
    };
    const onLegs = of.between(0, 1) < 0.2;
    return opening({
      row: at + 2,
      mark: `W${at + 1}`,
      quantity: of.whole(1, 4),
      head,
      span,
      rise: rises[head]?.() ?? null,
      face: of.pick([2.25, 3.5, 3.5, 3.5, 4.25]),
      species: of.between(0, 1) < 0.5 ? null : of.pick(['Red oak', 'White oak', 'Poplar']),
      ends: onLegs ? 'legs' : null,
      leg: onLegs ? of.whole(60, 90) : null,
      thickness: of.between(0, 1) < 0.1 ? 1 : null,
    });
  });
}
