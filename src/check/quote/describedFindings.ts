import { isNear } from '../rules/lineRules';
import type { Described, QuoteLine } from '../../quote/quote';
import type { Standards } from '../../standards';
import { legLength, lengthFinding, radiusFinding, type Beside } from './curveFindings';
import type { Complete } from './figureFinding';
import { cantTell, type Finding } from './finding';
import { legCountFinding, OF_SECTION, sideFinding, sizeFindings } from './sideFindings';

/** A figure in the words of a line that no column gives. What nothing explains is named, and the line never agrees. */
export function describedFinding(
  one: Described,
  line: QuoteLine,
  at: Complete,
  pieces: number,
  standards: Standards,
  beside: Beside,
): Finding[] {
  const { kind, value } = one;
  switch (kind) {
    case 'length':
      return [
        lengthFinding(
          { ...line, length: value, lengthOf: one.lengthOf ?? 'outside', problems: [] },
          at,
          pieces,
          standards,
          beside,
        ),
      ];
    case 'radius':
      return [
        radiusFinding({ ...line, radius: value, radiusOf: one.radiusOf ?? 'inside', problems: [] }, at, standards),
      ];
    case 'legCount':
      return [legCountFinding(value, at, pieces)];
    case 'quantity':
      return [];
    case 'section':
      return [sideFinding('thickness', value, at, standards), sideFinding('face', one.other!, at, standards)];
    case 'size': {
      // 3-1/2" x 43-3/8": the casing's width and a length, where the width is no opening's.
      const { face, span } = at.inputs;
      const isCasing =
        Math.abs(value - face) <= standards.tolerance / OF_SECTION && one.other! > at.own.curve.length / 2;
      if (isCasing && Math.abs(value - span) > standards.tolerance)
        return [
          sideFinding('face', value, at, standards),
          ...describedFinding({ ...one, kind: 'length', value: one.other! }, line, at, pieces, standards, beside),
        ];
      return sizeFindings({ width: value, height: one.other! }, at, standards);
    }
    case 'diameter':
    case 'unknown':
      return [...unnamed(one, at, pieces, standards, beside)];
    default:
      return [sideFinding(kind, value, at, standards)];
  }
}

function* unnamed(
  { value, text }: Described,
  at: Complete,
  pieces: number,
  standards: Standards,
  beside: Beside,
): Generator<Finding> {
  const { inputs, own } = at;
  const { curve } = own;
  const rings = own.rings.flatMap(({ ring }) => [ring.inside, ring.radius, ring.outside]);
  const leg = legLength(at);
  const ours = [
    inputs.span,
    curve.head.rise,
    inputs.face,
    inputs.thickness,
    inputs.reveal,
    curve.length,
    curve.insideLength,
    pieces * curve.length,
    inputs.leg,
    inputs.otherLeg ?? 0,
    leg ?? 0,
    curve.length + 2 * (leg ?? 0),
    ...rings,
    ...rings.map((ring) => 2 * ring),
    ...curve.straights.flatMap(({ inside, outside }) => [inside, outside]),
    ...(inputs.haunch === null ? [] : [inputs.haunch]),
  ];
  const small = inputs.face + inputs.reveal;
  const within = value <= small ? standards.tolerance / OF_SECTION : standards.tolerance;
  if (ours.some((right) => right > 0 && isNear(value, right, within))) return;
  const as = lengthFinding(
    {
      description: '',
      legCount: null,
      side: {},
      described: [],
      problems: [],
      unread: [],
      lengthOf: 'outside',
      length: value,
    } as unknown as QuoteLine,
    at,
    pieces,
    standards,
    beside,
  );
  const may =
    value > curve.length / 2 ? as.mistakes.slice(0, 1).map((mistake) => `; as a length it would be ${mistake}`) : [];
  yield cantTell('column', `what ${JSON.stringify(text)} is of${may.join('')}`, {
    quoted: value,
    mistakes: may.length > 0 ? as.mistakes : [],
  });
}
