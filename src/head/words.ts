import { quoted } from '../require';
import { ok, refuse, type Result } from '../result';
import { ENDS, HEAD_SHAPES, type Ends, type HeadShape } from './head';

/**
 * Spellings the trade uses, written without spaces, hyphens and other marks: one line for each shape. Adding a spelling
 * needs nothing but a word here.
 */
const SHAPE_WORDS: Readonly<Record<HeadShape, string>> = {
  segmental:
    'segmental segment seg segm segarch eyebrow eyebrowarch brow archtop arched arch segmentalarch camber cambered radius radiustop circlesegment partcircle',
  'half round':
    'halfround halfrd halfrnd hr hfrd 1/2round 1/2rd 1/2rnd 1/2circle 1/2cir semicircle semicircular semicirc halfcircle halfcir halfcirc fullarch roundtop roundhead roundarch roundarched rdtop rdhead rdarch rndtop rndhead rndarch circletop circlehead fullradius roman romanarch',
  'quarter round':
    'quarterround quarterrd quarterrnd quarter qr qtrround qtrrd qtrrnd qtr 1/4round 1/4rd 1/4rnd 1/4circle quartercircle qtrcircle quadrant',
  round: 'round rd rnd circle circular cir fullcircle fullround fullrd oculus bullseye bullseyewindow',
  elliptical:
    'elliptical elliptic ellipse ellip ell halfellipse semiellipse semielliptical halfelliptical 1/2ellipse 1/2elliptical',
  'three-centered':
    'threecentered threecenter threecentred threecentre 3centered 3center 3centred 3centre 3ctr 3cent baskethandle basket tc threecenteredarch',
  pointed: 'pointed point gothic goth lancet equilateral droparch pointedarch gothicarch',
  straight:
    'straight str square sq squarehead squaretop flat flattop level none rect rectangular rectangle plain notarched noarch',
};

const ENDS_WORDS: Readonly<Record<Ends, string>> = {
  radial: 'radial radially radialends onradialline onradiallines radius rad squareends squarecut squarecuts',
  level:
    'level levelends levelcut levelcuts levelcutends horizontal springline onspringline cutonspringline atspringline cutlevel',
  legs: 'legs leg mitered mitred miter mitre miteredlegs mitredlegs miteredtolegs mitredtolegs mitertolegs withlegs tolegs onlegs sidelegs',
};

/** Each spelling with the name it stands for: a takeoff looks up thousands. */
function bySpelling<Name extends string>(words: Readonly<Record<Name, string>>): ReadonlyMap<string, Name> {
  const names = Object.keys(words) as Name[];
  return new Map(names.flatMap((name) => words[name].split(' ').map((word) => [word, name] as const)));
}
const SHAPES = bySpelling(SHAPE_WORDS);
const ARC_ENDS = bySpelling(ENDS_WORDS);

/**
 * A head's shape from the words of a schedule: letter case, spaces, hyphens and periods are forgiven, "head", "arch", "top"
 * or "window" may follow. `readHead('Half-Round')` is 'half round', `readHead('gothic arch')` is 'pointed'.
 */
export function readHead(text: string): Result<HeadShape> {
  const shape = find(SHAPES, text);
  return shape ? ok(shape) : refuse(`head must be one of ${HEAD_SHAPES.join(', ')}; got ${quoted(text)}`);
}

/** How the arc stops, from words: `readEnds('Mitered legs')` is 'legs'. */
export function readEnds(text: string): Result<Ends> {
  const ends = find(ARC_ENDS, text);
  return ends ? ok(ends) : refuse(`ends must be one of ${ENDS.join(', ')}; got ${quoted(text)}`);
}

/** Longer text names no shape, and would only take time. */
const LONGEST_TEXT = 60;

/** What may stand behind a shape's name without changing it. */
const TRAILING = /(archedhead|arch|head|top|window|opening)$/;
/** Behind a full circle's name these say that it is none: a "circular arch" may be any part of one. */
const OF_PART = /(?:arch|head|top)$/;

function find<Name extends string>(words: ReadonlyMap<string, Name>, text: string): Name | null {
  if (text.length > LONGEST_TEXT) return null;
  const asIs = words.get(text);
  if (asIs) return asIs;
  let word = text
    .toLowerCase()
    .replace(/\bthe\b/g, '')
    .replace(/½/g, '1/2')
    .replace(/¼/g, '1/4')
    .replace(/[^a-z0-9/]/g, '')
    .replace(/(arch|head|top|window|opening)e?s$/, '$1');
  let isPart = false;
  // "half round arch head" is found by its shorter forms, the longest first: "arch" alone is a word of its own.
  for (;;) {
    const name = words.get(word);
    if (name || word === '') return name === undefined || (name === 'round' && isPart) ? null : name;
    const shorter = word.replace(TRAILING, '');
    if (shorter === word) return null;
    isPart ||= OF_PART.test(word);
    word = shorter;
  }
}
