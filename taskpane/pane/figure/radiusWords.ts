import type { Inputs } from '../../../src/takeoff/inputs';
import { headArguments, type Say } from './figure';

interface Said {
  readonly words: string;
  readonly formula: string;
}

/** How the radius and the angle of a piece come about; `row` is the piece's row in HEADARCS. */
export function radiusWords(
  inputs: Inputs,
  radius: number,
  row: number,
  say: Say,
): { readonly radius: Said; readonly angle: Said } {
  const { head: shape, span, rise } = inputs;
  const half = span / 2;
  const fromArcs = (column: number) =>
    `INDEX(ARCH.HEADARCS(${headArguments(inputs)}),${shape === 'elliptical' || shape === 'three-centered' ? row : 1},${column})`;
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
    case 'elliptical':
    case 'straight': // has no radius to ask for
      return {
        radius: {
          words: `The arc that, with its neighbors, strays least from the true ellipse: ${say(radius)}.`,
          formula: fromArcs(1),
        },
        angle,
      };
  }
}
