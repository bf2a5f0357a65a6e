import { FIELD_KINDS } from './fieldKinds';
import type { OpeningField } from './opening';

/**
 * What a schedule's columns can mean, and the headings that say so: data only. To teach the reader another heading,
 * add it to `names` here and a case to tests/schedule/cases.
 */

/** How the cells of a column are read. */
export type MeaningKind = 'text' | 'quantity' | 'length' | 'size' | 'head' | 'ends' | 'money' | 'unit' | 'unused';

export interface Meaning {
  readonly key: MeaningKey;
  /** As shown in a drop-down. */
  readonly label: string;
  /** In a sentence, where the label would be too long. */
  readonly spoken?: string;
  readonly kind: MeaningKind;
  /**
   * Headings that mean this, best first: regular expressions over the whole heading after `normalHeading` (lower case,
   * no punctuation, `#` as "no", units taken out). Of two columns with the same meaning the one whose name stands
   * earlier here is used.
   */
  readonly names: readonly string[];
}

export type MeaningKey =
  | 'mark'
  | 'quantity'
  | 'head'
  | 'size'
  | 'roughSize'
  | 'width'
  | 'roughWidth'
  | 'height'
  | 'headHeight'
  | 'roughHeight'
  | 'springHeight'
  | 'leg'
  | 'rise'
  | 'radius'
  | 'reveal'
  | 'face'
  | 'thickness'
  | 'casingSize'
  | 'species'
  | 'profile'
  | 'ends'
  | 'diameter'
  | 'unit'
  | 'place'
  | 'sides'
  | 'otherLeg'
  | 'arcs'
  | 'haunch'
  | 'segmentsWanted'
  | 'keystone'
  | 'plinthBlock'
  | 'rosette'
  | 'straightFeet'
  | 'priceAgreed'
  | 'remarks'
  | 'ignore';

const OPENING = '(?:window|door|opening|unit|wdw|win|dr|opng|opg)';
const ROUGH = '(?:ro|(?:rough|rgh)(?: (?:opening|opng|opg|op))?|r (?:opng|opg)|framed opening|masonry opening|mo)';
const CASING = '(?:casing|case|trim|molding|moulding|mold|architrave)';

/** Without a label of its own it is called what the opening's field is. */
type Listed = Omit<Meaning, 'key' | 'label'> &
  (
    | { readonly key: MeaningKey & OpeningField; readonly label?: string }
    | { readonly key: Exclude<MeaningKey, OpeningField>; readonly label: string }
  );

// prettier-ignore
const LISTED: readonly Listed[] = [
  { key: 'mark', kind: 'text', names: [`(?:${OPENING} )?(?:mark|mk|tag|symbol|sym)(?: (?:no|number|id))?`, `(?:arch|${OPENING}) (?:no|num|number|id|code|mark|tag)`, '(?:item|ref|reference|id|line)(?: (?:no|number|id|mark|tag))?', OPENING, 'key', 'pos|position|repere', '(?:mark|type) (?:mark|no|number|id)|family and type'] },
  { key: 'quantity', kind: 'quantity', names: ['(?:qty|qte|quantity|quan|count|multiplier|pcs|pieces|how many)(?: (?:required|reqd|req|needed|total|ea|of units))?', '(?:total |no )(?:qty|quantity|reqd|required|count)', '(?:no|number) (?:of )?(?:units|openings|windows|doors|pieces|pcs|reqd|required)', 'each|ea', 'no|number|nr|num'] },
  { key: 'head', label: 'Head shape', kind: 'head', names: ['(?:arch |top )?head(?: (?:shape|type|style|form))?|(?:arch|top)(?: (?:shape|type|style|form))', `(?:${OPENING} )?(?:shape|form)|arch(?:ed)?`, `(?:${OPENING} )?(?:type|style|config|configuration)`] },
  { key: 'size', label: 'Size, width by height', spoken: 'Size', kind: 'size', names: [`(?:${OPENING} |nominal |nom |frame |call ?out |call |overall |finished |clear |net )?(?:size|sizes|call ?out|dimensions|dims|dim)(?: w x h| wxh)?`, '(?:width|w) (?:x|by) (?:height|h|ht)|wxh|w h|width height', 'size (?:w x h|wxh|width x height)'] },
  { key: 'roughSize', label: 'Rough opening, width by height', spoken: 'Rough opening size', kind: 'size', names: [`${ROUGH}(?: (?:size|dims|dimensions|w x h|wxh))?`, `(?:size|dims|dimensions) ${ROUGH}`] },
  { key: 'width', label: 'Width of the opening', spoken: 'Width', kind: 'length', names: ['(?:opening |opng |opg |clear |finished |net |arch )*(?:width|wd|wdth|w|span)(?: (?:of opening|of arch|of unit|clear|finished))?|chord', '(?:frame|unit|window|door|overall|outside|oa) (?:width|wd|w)|width (?:overall|oa|frame|unit)', '(?:nominal|nom) (?:width|wd|w)|width nom(?:inal)?'] },
  { key: 'roughWidth', label: 'Rough opening, width', spoken: 'Rough opening width', kind: 'length', names: [`${ROUGH} (?:width|wd|w)`, `(?:width|wd|w) ${ROUGH}`] },
  { key: 'height', label: 'Height of the opening to the crown', spoken: 'Height', kind: 'length', names: ['(?:overall|total|oa|full|opening|opng|clear|finished|crown|max|maximum|center)? ?(?:height|ht|hgt|h)(?: (?:overall|total|oa|at crown|to crown|at center|of opening|max))?', '(?:frame|unit|window|door|outside) (?:height|ht|h)', '(?:nominal|nom) (?:height|ht|h)|(?:height|ht) nom(?:inal)?'] },
  { key: 'headHeight', label: 'Head height above the floor', spoken: 'Head height', kind: 'length', names: ['(?:head|hd|header) (?:height|ht|hgt)(?: (?:aff|above floor|above finish(?:ed)? floor))?|(?:height|ht) (?:of|at|to) head', 'crown (?:aff|above floor)'] },
  { key: 'roughHeight', label: 'Rough opening, height', spoken: 'Rough opening height', kind: 'length', names: [`${ROUGH} (?:height|ht|hgt|h)`, `(?:height|ht|h) ${ROUGH}`] },
  { key: 'springHeight', label: 'Spring height', kind: 'length', names: ['(?:spring|springing|springline|spring line|springer|sp)(?: (?:height|ht|point|line|pt))*(?: (?:aff|above floor))?', '(?:height|ht) (?:of|at|to) (?:spring|springing|springline|spring line)(?: line| point)?'] },
  { key: 'leg', label: 'Leg length', kind: 'length', names: ['(?:leg|legs|side leg|straight leg|left leg|lh leg)(?: (?:height|ht|length|lg|l))?', '(?:side|shoulder) (?:height|ht|hgt)', '(?:length|height) of legs?'] },
  { key: 'rise', kind: 'length', names: ['(?:arch |head |crown |arc )?rise(?: (?:of|at) (?:arch|center|crown|head))?', 'arch (?:height|ht)|(?:height|ht) of (?:the )?arch|sagitta|camber'] },
  { key: 'radius', label: 'Radius', kind: 'length', names: ['(?:arch |head |opening |inside |jamb |arc |crown |curve |bend |top |intrados )*(?:radius|rad)(?: (?:of|at) (?:arch|opening|jamb|head|crown|curve|top))?', 'r', 'arch r|r arch|crown r'] },
  { key: 'diameter', label: 'Diameter', kind: 'length', names: ['(?:arch |opening |circle |inside )*(?:dia|diam|diameter)(?: of (?:opening|arch|circle))?'] },
  { key: 'unit', label: 'Unit of the row', spoken: 'Unit', kind: 'unit', names: ['(?:length |dimension |dim )?(?:units|uom|unit of (?:measure|length))'] },
  { key: 'reveal', kind: 'length', names: [`(?:${CASING} |jamb )?(?:reveal|rev|setback|set back)`] },
  { key: 'face', kind: 'length', names: [`${CASING} (?:face|width|wd|w)(?: width)?|(?:face|width of) (?:width|wd|w|casing|trim|molding)`, `face|fw|${CASING}`] },
  { key: 'thickness', label: 'Casing thickness', kind: 'length', names: [`(?:${CASING} )?(?:thickness|thick|thk|thkns|th)`, `${CASING} t`] },
  { key: 'casingSize', label: 'Casing, thickness by width', spoken: 'Casing size', kind: 'size', names: [`${CASING} (?:size|dims|dimensions|section)`] },
  { key: 'species', kind: 'text', names: [`(?:${CASING} |wood )?(?:species|specie|wood|timber|lumber|wood type|wood species)`, `(?:${CASING} )?(?:material|mat|matl|mtl)`] },
  { key: 'profile', kind: 'text', names: [`(?:${CASING} )?(?:profile|pattern|knife|prof)(?: (?:no|number|id))?`, `${CASING} (?:no|number|type|style|id)`] },
  { key: 'ends', label: 'How the arc ends', kind: 'ends', names: ['(?:arc |arch |head |casing )?(?:ends?|end cuts?|end type|cuts?)(?: (?:cut|type|of arc|of arch))?', 'termination'] },
  { key: 'otherLeg', label: 'Other leg, where the two differ', spoken: 'Other leg', kind: 'length', names: ['(?:other|second|right|rh|r h|longer|long) legs?(?: (?:length|height|ht))?'] },
  { key: 'haunch', label: 'Haunch radius, or length of a clipped corner', spoken: 'Haunch', kind: 'length', names: ['haunch(?: (?:radius|rad|r))?'] },
  { key: 'arcs', label: 'Arcs that stand for the curve', spoken: 'Arcs', kind: 'quantity', names: ['(?:no of |number of )?arcs'] },
  { key: 'segmentsWanted', kind: 'quantity', names: ['(?:no of |number of )?(?:segments|segs)(?: wanted| req(?:d|uired)?)?'] },
  { key: 'sides', label: 'Sides cased', kind: 'quantity', names: ['(?:no of |number of |cased |casing |trim(?:med)? )?sides?(?: cased| trimmed| of wall)?'] },
  { key: 'keystone', label: 'Keystones, each opening', spoken: 'Keystones', kind: 'quantity', names: ['(?:no of |number of |qty )?key ?stones?(?: (?:qty|reqd|required|each|ea))?'] },
  { key: 'plinthBlock', label: 'Plinth blocks, each opening', spoken: 'Plinth blocks', kind: 'quantity', names: ['(?:no of |number of |qty )?(?:plinths?|plinth blocks?)(?: (?:qty|reqd|required|each|ea))?'] },
  { key: 'rosette', label: 'Rosettes, each opening', spoken: 'Rosettes', kind: 'quantity', names: ['(?:no of |number of |qty )?rosettes?(?: (?:qty|reqd|required|each|ea))?'] },
  { key: 'straightFeet', label: 'Straight molding of the same profile', spoken: 'Straight molding', kind: 'text', names: ['straight (?:footage|feet|ft|molding|moulding|casing|trim|stock)(?: (?:lf|lin ft|lineal feet|linear feet|ft|feet|footage))?|(?:lf|lineal feet|linear feet) (?:of )?straight(?: (?:molding|casing|trim))?'] },
  { key: 'priceAgreed', kind: 'money', names: ['(?:agreed|fixed) (?:unit )?price|price agreed|price fixed'] },
  { key: 'place', kind: 'text', names: [`(?:${OPENING} |room )?(?:location|place|room|room name|space|where)(?: (?:name|no|number))?`] },
  { key: 'remarks', kind: 'text', names: ['(?:general )?(?:remarks?|notes?|comments?|description|desc|descr|memo|special instructions)'] },
  { key: 'ignore', label: 'Not used', kind: 'unused', names: [] },
];
export const MEANINGS: readonly Meaning[] = LISTED.map((each) => ({
  ...each,
  // Only a field goes without.
  label: each.label ?? FIELD_KINDS[each.key as OpeningField].label,
}));

const byKey = new Map(MEANINGS.map((meaning) => [meaning.key, meaning]));

export function meaningOf(key: MeaningKey): Meaning {
  return byKey.get(key)!; // every key of the type stands in the list above; a test walks them
}

/** A meaning's name as a sentence begins with it: "Width can't be read". */
export function spokenName(key: MeaningKey): string {
  const { spoken, label } = meaningOf(key);
  return spoken ?? label;
}

const patterns = MEANINGS.flatMap((meaning) =>
  meaning.names.map((name, rank) => ({ key: meaning.key, rank, pattern: new RegExp(`^(?:${name})$`) })),
);

/** What a normalized heading means and how good a name for it that is (0 best), or null. */
export function matchHeading(normal: string): { readonly key: MeaningKey; readonly rank: number } | null {
  if (normal === '' || normal.length > 60) return null;
  for (const { key, rank, pattern } of patterns) if (pattern.test(normal)) return { key, rank };
  return null;
}
