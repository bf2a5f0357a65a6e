import type { Standards } from '../../../src/standards';
import type { Inputs } from '../../../src/takeoff/inputs';
import type { OwnFigures } from '../../../src/takeoff/ownFigures';
import { decimal } from '../format';
import type { Figure, Say } from './figure';
import { lengthFigures } from './lengthFigures';
import { ringFigures } from './ringFigures';

/** The kinds of ring of a head that has several, from the crown down. */
const RING_PARTS = ['crown', 'haunch', 'second haunch', 'third haunch'] as const;

/** Every figure of one opening, in the order a shop asks for them. Lengths in the workbook's unit. */
export function figuresOf(inputs: Inputs, own: OwnFigures, standards: Standards, locale?: string): readonly Figure[] {
  const say = (figure: number) => decimal(figure, 4, locale);
  return [
    ...own.rings.flatMap((plan, at) => {
      const part = own.rings.length === 1 ? 'whole' : (RING_PARTS[at] ?? `haunch ${at}`);
      return ringFigures(part, plan, inputs, standards, say);
    }),
    ...lengthFigures(inputs, own, say),
    ...machineFigures(own, standards, say),
  ];
}

/** Cuts in an inch are asked of a machine that is fed in feet a minute. */
function machineFigures(own: OwnFigures, standards: Standards, say: Say): Figure[] {
  if (standards.unit === 'mm') return [];
  const { rpm, knives, feed } = standards;
  return [
    {
      key: 'cuts',
      label: 'Knife cuts in an inch',
      kind: 'number',
      value: own.cutsPerInch,
      words: `Spindle speed times knives that mark, over twelve times the feed: ${say(rpm)} × ${say(knives)} ÷ (12 × ${say(feed)}).`,
      formula: `ARCH.CUTSPERINCH(${rpm},${knives},${feed})`,
    },
  ];
}
