import type { Standards } from '../../../src/standards';
import type { Inputs } from '../../../src/takeoff/inputs';
import type { RingPlan } from '../../../src/takeoff/ownFigures';
import type { Figure, Say } from './figure';
import { radiusWords } from './radiusWords';

/** One constant-radius piece of the casing, `part` its name, "whole" where it is the only one: its radii, the blank it is cut from, the guides it runs between. */
export function ringFigures(part: string, plan: RingPlan, inputs: Inputs, standards: Standards, say: Say): Figure[] {
  const { ring, blank } = plan;
  const { face, reveal } = inputs;
  const { margin, clearance } = standards;
  const chosen = blank.chosen;
  const of = part === 'whole' ? '' : `, ${part}`;
  const radius = radiusWords(inputs, ring, say);
  const blankArguments = `${ring.inside},${face},${ring.blankAngle},${chosen.segments},${margin}`;
  const key = (own: string) => (part.includes('haunch') ? `${part}${own}` : own);
  return [
    { key: key('radius'), label: `Radius of the opening${of}`, kind: 'length', value: ring.radius, ...radius.radius },
    {
      key: key('insideRadius'),
      label: `Inside radius of the casing${of}`,
      kind: 'length',
      value: ring.inside,
      words: `The radius and the reveal: ${say(ring.radius)} + ${say(reveal)}.`,
      formula: `${radius.radius.formula}+${reveal}`,
    },
    {
      key: key('outsideRadius'),
      label: `Outside radius of the casing${of}`,
      kind: 'length',
      value: ring.outside,
      words: `Radius, reveal and casing: ${say(ring.radius)} + ${say(reveal)} + ${say(face)}.`,
      formula: `${radius.radius.formula}+${reveal}+${face}`,
    },
    { key: key('angle'), label: `Angle of the arc${of}`, kind: 'degrees', value: ring.angle, ...radius.angle },
    {
      key: key('segments'),
      label: `Segments of the blank${of}`,
      kind: 'count',
      value: chosen.segments,
      words: `Of the fewest that fit a board, one more and two more, what costs least in wood and joints. The grain at a joint stays within ${say(standards.grain)}°.`,
      formula: String(chosen.segments),
    },
    {
      key: key('blankWidth'),
      label: `Board width, each segment${of}`,
      kind: 'length',
      value: chosen.width,
      words: `From the outside of the blank, ${say(margin)} beyond the casing, to its inside corner.`,
      formula: `ARCH.BLANKWIDTH(${blankArguments})`,
    },
    {
      key: key('blankLength'),
      label: `Board length, each segment${of}`,
      kind: 'length',
      value: chosen.length,
      words: `Twice the blank's outside radius times the tangent of ${say(ring.blankAngle / chosen.segments / 2)}°, half a segment's angle with the end allowances.`,
      formula: `ARCH.BLANKLENGTH(${blankArguments})`,
    },
    {
      key: key('insideGuide'),
      label: `Inside guide radius${of}`,
      kind: 'length',
      value: ring.inside - margin - clearance,
      words: `Inside radius less margin ${say(margin)} and clearance ${say(clearance)}.`,
      formula: `INDEX(ARCH.GUIDES(${ring.inside},${face},${margin},${clearance}),1,1)`,
    },
    {
      key: key('outsideGuide'),
      label: `Outside guide radius${of}`,
      kind: 'length',
      value: ring.outside + margin + clearance,
      words: `Outside radius with margin ${say(margin)} and clearance ${say(clearance)}.`,
      formula: `INDEX(ARCH.GUIDES(${ring.inside},${face},${margin},${clearance}),1,2)`,
    },
  ];
}
