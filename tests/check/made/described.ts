import { fraction, write, type Written } from './layouts';
import type { Line } from './line';
import { FACE, REVEAL } from './openings';

/** The words of a line, one of several ways to say them, the same on all lines of a quote. */
export function described(says: string | null, line: Line, head: string, written: Written, phrase: number): string {
  const [opening] = line.of;
  const { arch, rise, radius } = opening!;
  const length = write(line.length, written).cell;
  const size = rise === null ? `${arch.span} opg` : `${arch.span} x ${fraction(rise, ' ')}`;
  const inside = radius === null ? '' : `IR ${fraction(radius + REVEAL, ' ')}`;
  const ways: Readonly<Record<string, readonly string[]>> = {
    casing: ['Curved casing 3 1/2"', 'Curved casing, poplar, 3 1/2 face', 'Radius casing 3/4 x 3-1/2'],
    size: [`${head} casing ${size}, 3 1/2 face`, `${head} casing ${size}`, `${head} hd csg ${size}`],
    length: [
      `Radius csg 3-1/2 x ${length} LP`,
      `CRV CSG 3-1/2 ${length}" O/S`,
      `CRV CSG 3/4X3-1/2 ${length}" O/S`,
      `Window ${line.mark}: curved casing 3 1/2", long point ${length}`,
      `casing/curved/poplar/prime/lp ${length}`,
      `Curved casing ${length}" long, poplar`,
    ],
    mark: [
      `Arched head casing for ${line.mark}, 3 1/2" wide`,
      `Casing at ${line.mark}`,
      `Window ${line.mark}: curved casing`,
    ],
    radius:
      radius === null
        ? [`${head} casing ${size}`]
        : [
            `Rad casing, ${inside} (opg R ${fraction(radius, ' ')})`,
            `${inside} curved casing`,
            `OR ${fraction(radius + REVEAL + FACE, '-')} curved casing`,
          ],
    legs: ['Head casing w/ two legs', 'Curved head and 2 legs', 'Arch casing with legs'],
  };
  const own = ways[says ?? 'casing']!;
  return own[phrase % own.length]!;
}
