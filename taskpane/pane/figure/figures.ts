import type { Standards } from '../../../src/standards';
import type { Inputs } from '../../../src/takeoff/inputs';
import type { OwnFigures, RingPlan } from '../../../src/takeoff/ownFigures';
import { decimal } from '../format';

/** One figure of an opening: what it is, how it comes about in words, and as a worksheet formula. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  readonly kind: 'length' | 'degrees' | 'count' | 'number';
  readonly value: number;
  readonly words: string;
  /** Excel syntax, without `=`. */
  readonly formula: string;
}

/** Every figure of one opening, in the order a shop asks for them. Lengths in the workbook's unit. */
export function figuresOf(inputs: Inputs, own: OwnFigures, standards: Standards, locale?: string): readonly Figure[] {
  const say = (figure: number) => decimal(figure, 4, locale);
  return [
    ...ringFigures('', own.crown, own.haunch ? 'crown' : '', inputs, standards, say),
    ...ringFigures('haunch', own.haunch, 'haunch', inputs, standards, say),
    ...lengthFigures(inputs, own, say),
    ...machineFigures(own, standards, say),
  ];
}

type Say = (figure: number) => string;

function lengthFigures(inputs: Inputs, own: OwnFigures, say: Say): Figure[] {
  const { reveal, face, ends } = inputs;
  const edge = reveal + face;
  const at = (offset: number) => `ARCH.HEADLENGTH(${head(inputs)},${offset},"${ends}")`;
  const how = LENGTH_WORDS[inputs.head];
  const length = (key: string, label: string, value: number, offset: number, where: string): Figure => ({
    key,
    label,
    kind: 'length',
    value,
    words: `${how}, measured ${where}${ends === 'radial' ? '' : `, ${ENDS_WORDS[ends]}`}.`,
    formula: at(offset),
  });
  const figures = [
    length(
      'length',
      'Outside length, long point',
      own.curve.length,
      edge,
      `${say(edge)} outside the opening: reveal and casing`,
    ),
    length(
      'centerLength',
      'Length along the middle',
      own.curve.centerLength,
      reveal + face / 2,
      `at the middle of the casing, ${say(reveal + face / 2)} outside the opening`,
    ),
    length(
      'insideLength',
      'Inside length',
      own.curve.insideLength,
      reveal,
      `${say(reveal)} outside the opening: the reveal`,
    ),
  ];
  if (own.curve.miter === null) return figures;
  const miterFormula =
    inputs.head === 'segmental'
      ? `ARCH.MITER(${inputs.span},${inputs.rise},${face},${reveal})`
      : String(own.curve.miter);
  return [
    ...figures,
    {
      key: 'miter',
      label: 'Saw setting at the leg',
      kind: 'degrees',
      value: own.curve.miter,
      words: 'Degrees off square of the joint, from its inside corner straight to its outside corner.',
      formula: miterFormula,
    },
  ];
}

const LENGTH_WORDS: Readonly<Record<Inputs['head'], string>> = {
  segmental: 'Radius there times the angle',
  'half round': 'Half a circle of the radius there',
  'quarter round': 'A quarter of a circle of the radius there',
  round: 'A full circle of the radius there',
  elliptical: 'Half the ellipse and half a circle of the distance from it',
  'three-centered': 'The three arcs, one after the other',
  pointed: 'Two arcs that run on to the center line',
  straight: 'The span and both ends',
};
const ENDS_WORDS = { radial: '', level: 'cut level on the spring line', legs: 'run on to the legs' } as const;

function head({ head: shape, span, rise }: Inputs): string {
  return `"${shape}",${span},${rise ?? ''}`;
}

function ringFigures(
  prefix: string,
  plan: RingPlan | null,
  name: string,
  inputs: Inputs,
  standards: Standards,
  say: Say,
): Figure[] {
  if (!plan) return [];
  const { ring, blank } = plan;
  const { face, reveal } = inputs;
  const { margin, clearance } = standards;
  const chosen = blank.chosen;
  const of = name === '' ? '' : `, ${name}`;
  const radius = radiusOf(inputs, ring.radius, prefix === 'haunch' ? 1 : 2, say);
  const blankArguments = `${ring.inside},${face},${ring.blankAngle},${chosen.segments},${margin}`;
  const key = (own: string) => `${prefix}${own}`;
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

interface Said {
  readonly words: string;
  readonly formula: string;
}

/** How the radius and the angle of a piece come about; `row` is the piece's row in HEADARCS. */
function radiusOf(
  inputs: Inputs,
  radius: number,
  row: number,
  say: Say,
): { readonly radius: Said; readonly angle: Said } {
  const { head: shape, span, rise } = inputs;
  const half = span / 2;
  const fromArcs = (column: number) =>
    `INDEX(ARCH.HEADARCS(${head(inputs)}),${shape === 'elliptical' || shape === 'three-centered' ? row : 1},${column})`;
  const angle = { words: 'From one end of the piece to the other, seen from its center.', formula: fromArcs(2) };
  switch (shape) {
    case 'segmental': {
      const h = rise ?? 0;
      return {
        radius: {
          words: `Half the span squared and the rise squared, over twice the rise: (${say(half)}² + ${say(h)}²) ÷ (2 × ${say(h)}).`,
          formula: `ARCH.RADIUS(${span},${h})`,
        },
        angle: {
          words: `Four times the angle whose tangent is twice the rise over the span, 2 × ${say(h)} ÷ ${say(span)}.`,
          formula: `ARCH.ANGLE(${span},${h})`,
        },
      };
    }
    case 'half round':
      return {
        radius: { words: `Half the span: ${say(span)} ÷ 2.`, formula: `ARCH.RADIUS(${span},${half})` },
        angle: { words: 'Half a circle.', formula: `ARCH.ANGLE(${span},${half})` },
      };
    case 'round':
      return {
        radius: { words: `Half the span: ${say(span)} ÷ 2.`, formula: fromArcs(1) },
        angle: { ...angle, words: 'A full circle.' },
      };
    case 'quarter round':
      return {
        radius: { words: 'The span itself.', formula: fromArcs(1) },
        angle: { ...angle, words: 'A quarter of a circle.' },
      };
    case 'pointed':
      return {
        radius: {
          words: `Half the span squared and the rise squared, over the span: (${say(half)}² + ${say(rise ?? 0)}²) ÷ ${say(span)}.`,
          formula: fromArcs(1),
        },
        angle: { ...angle, words: 'From the spring point to the crown, seen from the center of that side.' },
      };
    case 'three-centered':
      return {
        radius: {
          words: `The bisector construction on half the span ${say(half)} and the rise ${say(rise ?? 0)}.`,
          formula: fromArcs(1),
        },
        angle,
      };
    default:
      return {
        radius: {
          words: `The arc that, with its neighbors, strays least from the true ellipse: ${say(radius)}.`,
          formula: fromArcs(1),
        },
        angle,
      };
  }
}

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
