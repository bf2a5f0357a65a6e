import { SHAPES } from '../../../src/head/shapes';
import type { RingKind } from '../../../src/takeoff/curve';
import type { Inputs } from '../../../src/takeoff/inputs';
import { headArguments, type Say } from './figure';

interface Said {
  readonly words: string;
  readonly formula: string;
}

/** What stands behind a head's sizes where it has arcs or a haunch of its own: no offset, radial ends, arcs, haunch. */
function chosen({ arcs, haunch }: Inputs): string {
  if (arcs === null && haunch === null) return '';
  return `,0,"radial",${arcs ?? ''}${haunch === null ? '' : `,${haunch}`}`;
}

/** How the radius and the angle of a piece come about, as the head's own shape says it. */
export function radiusWords(
  inputs: Inputs,
  { radius, arcs }: RingKind,
  say: Say,
): { readonly radius: Said; readonly angle: Said } {
  const { span, rise } = inputs;
  const { words, rise: rule } = SHAPES[inputs.head];
  const high = rise ?? rule.ofSpan?.(span) ?? 0;
  const fromArcs = (column: number) =>
    `INDEX(ARCH.HEADARCS(${headArguments(inputs)}${chosen(inputs)}),${(arcs[0] ?? 0) + 1},${column})`;
  return {
    radius: { words: words.radius?.(say, span, high, radius) ?? '', formula: fromArcs(1) },
    angle: {
      words: typeof words.angle === 'string' ? words.angle : words.angle(say, span, high),
      formula: fromArcs(2),
    },
  };
}
