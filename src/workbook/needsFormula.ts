import { ENDS, HEAD_SHAPES } from '../head/head';
import type { OpeningField, Problem } from '../schedule/opening';
import { ATTENTION } from '../takeoff/attention';
import { NEEDS, type RiseHead } from '../takeoff/inputs';
import type { OpeningTakeoff } from '../takeoff/takeoff';
import { HAS_HAUNCH, MULTI_CENTERED } from './columns/formulas';
import { mayHaveHaunch } from './columns/ring';

/** Sentences in one cell. Runs of spaces are folded as TRIM folds them. */
export function sentences(said: readonly string[]): string {
  return said.join(' ').replace(/ +/g, ' ').trim();
}

/**
 * Text as a formula writes it. A literal holds at most 255 characters, so longer text is joined from parts. Quotation marks
 * go in by code: the workbench's grid loses the names that follow a doubled one.
 */
export function quote(text: string): string {
  const parts = text
    .split('"')
    .flatMap((part, at) => [
      ...(at > 0 ? ['CHAR(34)'] : []),
      ...(part.match(/[^]{1,250}/g) ?? []).map((piece) => `"${piece}"`),
    ]);
  return parts.join('&') || '""';
}

const positive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}>0,FALSE)`;
const notPositive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}<=0,TRUE)`;
const notListed = (cell: string, list: readonly string[]) =>
  `ISNA(MATCH(${cell},{${list.map((item) => `"${item}"`).join(',')}},0))`;

const NOT_HALF_SPAN = 'ABS({rise}-{span}/2)>0.000000001*{span}';
const RISE_MISFIT: Readonly<Record<RiseHead, string>> = {
  segmental: '{rise}<=0',
  'half round': NOT_HALF_SPAN,
  elliptical: `NOT(AND({rise}>0,${NOT_HALF_SPAN}))`,
  'three-centered': `NOT(AND({rise}>0,{rise}<{span}/2,${NOT_HALF_SPAN}))`,
  pointed: `NOT(AND({rise}>{span}/2,${NOT_HALF_SPAN}))`,
};

/**
 * The sentences of `takeoff/inputs.ts` under the same conditions, so that filling in what was missing clears them. What
 * the schedule's reader said of an input stands in for the general sentence.
 */
export function missingFormula(row: OpeningTakeoff): string {
  // Most rows have nothing of their own to say, and share one of two formulas.
  if (row.opening.problems.length > 0) return missingText(row.opening.problems, mayHaveHaunch(row));
  return mayHaveHaunch(row) ? WITH_HAUNCH : WITHOUT_HAUNCH;
}

function missingText(problems: readonly Problem[], haunch: boolean): string {
  const said = new Map<OpeningField, string>();
  for (const { field, message } of problems) {
    const before = said.get(field);
    said.set(field, before === undefined ? message : `${before} ${message}`);
  }
  const when = (condition: string, sentence: string) => `IF(${condition},${quote(`${sentences([sentence])} `)},"")`;
  const need = (condition: string, field: OpeningField, sentence: string) =>
    when(condition, said.get(field) ?? sentence);

  const riseOf = (head: RiseHead, otherwise: string) => {
    const misfit = `IF(ISNUMBER({rise}),IF(${positive('{span}')},${RISE_MISFIT[head]},FALSE),TRUE)`;
    return `IF({head}="${head}",${need(misfit, 'rise', NEEDS.rise[head])},${otherwise})`;
  };
  const noRise = said.has('rise') ? need('NOT(ISNUMBER({rise}))', 'rise', NEEDS.rise.segmental) : '""';
  const rise = (Object.keys(NEEDS.rise) as RiseHead[]).reduceRight(
    (otherwise, head) => riseOf(head, otherwise),
    noRise,
  );

  const inStock = 'SUMPRODUCT(--(Stock_species={species}))>0';
  const found = `IF({species}="",FALSE,${inStock})`;
  const oddProfile = ['*', '?', '~'].map((sign) => `ISNUMBER(FIND("${sign}",{profile}))`).join(',');
  const parts = [
    ...(haunch ? [] : [when(MULTI_CENTERED, 'This head has haunches: fill the takeoff again.')]),
    ...(said.has('mark') ? [need('SUMPRODUCT(--({mark:all}={mark}))>1', 'mark', NEEDS.mark)] : []),
    need('IF(ISNUMBER({quantity}),OR({quantity}<1,{quantity}<>INT({quantity})),TRUE)', 'quantity', NEEDS.quantity),
    need(notListed('{head}', HEAD_SHAPES), 'head', NEEDS.head),
    need(notListed('{ends}', ENDS), 'ends', NEEDS.ends),
    need(notPositive('{span}'), 'span', NEEDS.span),
    rise,
    need('IF(ISNUMBER({reveal}),{reveal}<0,TRUE)', 'reveal', NEEDS.reveal),
    need(notPositive('{face}'), 'face', NEEDS.face),
    need(notPositive('{thickness}'), 'thickness', NEEDS.thickness),
    need('IF(ISNUMBER({leg}),{leg}<0,TRUE)', 'leg', NEEDS.leg),
    need(`OR({profile}="",${oddProfile})`, 'profile', NEEDS.profile),
    `IF(${found},${need(`IF(${positive('{thickness}')},{stockThickness}=0,FALSE)`, 'species', NEEDS.wood)},${need('TRUE', 'species', NEEDS.species)})`,
    when(`IF(AND({stockThickness}>0,${positive('{face}')}),{widest}<={face}+2*Shop_margin,FALSE)`, NEEDS.width),
  ];
  return `TRIM(${parts.join('&')})`;
}

const WITH_HAUNCH = missingText([], true);
const WITHOUT_HAUNCH = missingText([], false);

/** What is missing, or why the figures fail although nothing is. */
export function needsFormula(row: OpeningTakeoff): string {
  const why = quote(row.failure ?? 'The figures can not be computed from these inputs.');
  const fails = 'OR(ISERROR({length}),ISERROR({blankLength}),ISERROR({haunchBlankLength}))';
  return `IF({missing}<>"",{missing},IF(${fails},${why},""))`;
}

/** The sentences of `takeoff/attention.ts` under the same conditions. */
export function attentionFormula(row: OpeningTakeoff): string {
  const { short, tight, wide, ellipse, finish } = ATTENTION;
  const when = (condition: string, sentence: string) => `IF(${condition},${quote(`${sentence} `)},"")`;
  const haunch = HAS_HAUNCH;
  const run = (inside: string, angle: string) => `RADIANS(${angle})*(${inside}+{face}/2)<Shop_shortest_piece`;
  const tightest = 'MIN({insideRadius},{haunchInsideRadius})';
  const curved = [
    when(
      `IF(${run('{insideRadius}', '{blankAngle}')},TRUE,IF(${haunch},${run('{haunchInsideRadius}', '{haunchBlankAngle}')},FALSE))`,
      short,
    ),
    when(`${tightest}<Shop_smallest_radius`, tight),
    when('{face}+2*Shop_margin>Shop_widest_face', wide),
    ...(row.known.head === 'elliptical'
      ? [when('IF({head}="elliptical",INDEX(ARCH.HEADARCS({head},{span},{rise}),1,4)>Shop_deviation,FALSE)', ellipse)]
      : []),
  ];
  return `IF({needs}<>"","",TRIM(IF({radius}="","",${curved.join('&')})&${when('{cutsOutside}<15', finish)}))`;
}
