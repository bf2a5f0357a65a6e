import { SHAPES } from '../../../src/head/shapes';
import type { Inputs } from '../../../src/takeoff/inputs';
import type { OwnFigures } from '../../../src/takeoff/ownFigures';
import { headArguments, type Figure, type Say } from './figure';

/** The lengths of the casing at its edges and its middle, and the saw setting where it meets legs. */
export function lengthFigures(inputs: Inputs, own: OwnFigures, say: Say): Figure[] {
  const { reveal, face, ends } = inputs;
  const edge = reveal + face;
  const haunch = inputs.haunch === null ? '' : `,${inputs.haunch}`;
  const at = (offset: number) => `ARCH.HEADLENGTH(${headArguments(inputs)},${offset},"${ends}"${haunch})`;
  const how = SHAPES[inputs.head].words.length;
  const length = (key: string, label: string, value: number, offset: number, where: string): Figure => ({
    key,
    label,
    kind: 'length',
    value,
    words: `${how}, measured ${where}${ENDS_WORDS[ends]}.`,
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
  const miterFormula = `INDEX(ARCH.HEADMITER(${headArguments(inputs)},${face},${reveal},"${ends}"${haunch}),1,1)`;
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

const ENDS_WORDS: Readonly<Record<Inputs['ends'], string>> = {
  radial: '',
  level: ', cut level on the spring line',
  legs: ', run on to the legs',
  mitered: ', mitered to the legs',
  'over legs': ', over the legs',
  'between legs': ', between the legs',
  square: ", sawn at the opening's width",
};
