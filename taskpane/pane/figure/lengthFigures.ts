import type { Inputs } from '../../../src/takeoff/inputs';
import type { OwnFigures } from '../../../src/takeoff/ownFigures';
import { headArguments, type Figure, type Say } from './figure';

/** The lengths of the casing at its edges and its middle, and the saw setting where it meets legs. */
export function lengthFigures(inputs: Inputs, own: OwnFigures, say: Say): Figure[] {
  const { reveal, face, ends } = inputs;
  const edge = reveal + face;
  const at = (offset: number) => `ARCH.HEADLENGTH(${headArguments(inputs)},${offset},"${ends}")`;
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
