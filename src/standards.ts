import { GUIDE_CLEARANCE } from './blank/guides';
import { STEEPEST_GRAIN } from './blank/segments';
import { ARC_ENDS } from './head/head';
import { figure, quoted } from './require';
import { ok, refuse, type Result } from './result';
import type { OnHand } from './onHand';
import { defaultStock, type StockBoard } from './stockList';
import { perFootPerMinute, perInch, UNITS, type Unit } from './unit';

/** What a setting measures; decides its unit, its number format and whether a metric workbook holds another figure. */
export type Measure =
  | 'length'
  | 'feed'
  | 'rpm'
  | 'count'
  | 'degrees'
  | 'percent' // held as a fraction, 0.15
  | 'minutes'
  | 'minutesPerLength' // per foot, or per meter
  | 'money'
  | 'moneyPerHour'
  | 'choice'
  | 'text';

interface Base {
  readonly key: string;
  readonly group: SettingGroup;
  readonly label: string;
  readonly note: string;
  /** One machine's own: it starts as not set, and a neutral figure is used, and said, until somebody sets it. */
  readonly ofMachine?: true;
}
export interface NumberSetting extends Base {
  readonly measure: Exclude<Measure, 'choice' | 'text'>;
  /** In an inch workbook. */
  readonly value: number;
  /** In a metric one, where it measures by another unit: a round figure of its own. */
  readonly metric?: number;
  /** Limits in inches or ft/min where it measures those: see `limits`. */
  readonly min: number;
  readonly max: number;
}
export interface ChoiceSetting extends Base {
  readonly measure: 'choice';
  readonly value: string;
  readonly choices: readonly string[];
}
export interface TextSetting extends Base {
  readonly measure: 'text';
  readonly value: string;
}
export type Setting = NumberSetting | ChoiceSetting | TextSetting;

export const SETTING_GROUPS = ['Workbook', 'Casing', 'Machine', 'Allowances', 'Rates', 'Extras', 'Check'] as const;
export type SettingGroup = (typeof SETTING_GROUPS)[number];

/** Every shop setting once. Lengths are in the workbook's unit, feeds in ft/min or m/min. Defaults are invented and plausible. */
// prettier-ignore
export const SETTINGS = [
  { key: 'unit', group: 'Workbook', label: 'Unit of length', measure: 'choice', value: 'in', choices: UNITS, note: 'in: inches and ft/min; mm: millimeters and m/min. Fill the takeoff again after changing it.' },

  { key: 'reveal', group: 'Casing', label: 'Reveal', measure: 'length', value: 3 / 16, metric: 5, min: 0, max: 6, note: 'Jamb edge left showing. It changes the radius, never the center. 3/16 to 1/4 in is common practice.' },
  { key: 'face', group: 'Casing', label: 'Casing width', measure: 'length', value: 3.5, metric: 90, min: 0.25, max: 24, note: 'Face width where the schedule gives none.' },
  { key: 'thickness', group: 'Casing', label: 'Casing thickness', measure: 'length', value: 0.75, metric: 19, min: 0.125, max: 6, note: 'Finished thickness where the schedule gives none.' },
  { key: 'species', group: 'Casing', label: 'Species', measure: 'text', value: 'Poplar', note: 'Wood where the schedule names none; must stand in the stock list.' },
  { key: 'profile', group: 'Casing', label: 'Profile', measure: 'text', value: 'Casing', note: 'Profile where the schedule names none. One knife is ground for each profile, width and thickness.' },
  { key: 'ends', group: 'Casing', label: 'Ends of the arc', measure: 'choice', value: 'radial', choices: ARC_ENDS, note: 'radial: on the radial lines; level: cut on the spring line; legs: mitered to vertical legs. A straight head is mitered unless its own ends say otherwise.' },
  { key: 'overhang', group: 'Casing', label: 'Overhang of a head over its legs', measure: 'length', value: 0, metric: 0, min: 0, max: 6, note: 'How far a straight head that lies over its legs reaches beyond them, on each side.' },
  { key: 'levelMost', group: 'Casing', label: 'Level ends, at most', measure: 'percent', value: 1, min: 0, max: 10, note: 'An arc whose ends, cut level, make it longer by more than this is refused; more than a quarter is looked at.' },
  { key: 'thinEdge', group: 'Casing', label: 'Thin edge', measure: 'choice', value: 'inside', choices: ['inside', 'outside'], note: 'Which edge of the casing is the thin one as it lies on the radius: inside as a rule, not always.' },

  { key: 'rpm', group: 'Machine', label: 'Spindle speed', measure: 'rpm', ofMachine: true, value: 6000, min: 100, max: 30000, note: 'Revolutions per minute of the cutter head.' },
  { key: 'knives', group: 'Machine', label: 'Knives that mark', measure: 'count', ofMachine: true, value: 1, min: 1, max: 12, note: 'Only knives that really cut in the same circle; one knife and a counterweight is 1.' },
  { key: 'cuttingCircle', group: 'Machine', label: 'Cutting circle', measure: 'length', ofMachine: true, value: 4, metric: 100, min: 1, max: 24, note: 'Diameter the knife tip runs on: how deep a knife mark is, on the card of a set-up.' },
  { key: 'shortestPiece', group: 'Machine', label: 'Shortest piece', measure: 'length', ofMachine: true, value: 12, metric: 300, min: 0, max: 120, note: "Shortest blank the feed rolls hold: see the machine's manual. Nothing under 12 in is an old rule of the trade." },
  { key: 'smallestRadius', group: 'Machine', label: 'Smallest radius', measure: 'length', ofMachine: true, value: 8, metric: 200, min: 0, max: 1000, note: 'Smallest inside radius the guides and rolls can carry.' },
  { key: 'widestFace', group: 'Machine', label: 'Widest face', measure: 'length', ofMachine: true, value: 8, metric: 200, min: 0.25, max: 48, note: 'Widest blank the machine takes.' },
  { key: 'deepestCut', group: 'Machine', label: 'Deepest cut in one pass', measure: 'length', ofMachine: true, value: 0.25, metric: 6, min: 0.01, max: 4, note: 'More than this is taken in several passes.' },
  { key: 'bedLine', group: 'Machine', label: 'Bed lines from the center line', measure: 'length', ofMachine: true, value: 6, metric: 150, min: 0.5, max: 60, note: 'Guide boards are laid to these two lines, one on each side of the center line.' },
  { key: 'shortPieces', group: 'Machine', label: 'Pieces shorter than the rolls hold', measure: 'choice', value: 'overlong', choices: ['overlong', 'carrier'], note: 'overlong: their blanks are glued up as long as the shortest piece, and the rest is sawn off; carrier: they are run fixed to one.' },
  { key: 'largestAcross', group: 'Machine', label: 'Largest piece, across', measure: 'length', value: 144, metric: 3600, min: 12, max: 1200, note: 'Longest blank that can be carried and sent, over its long points. A longer one is made in halves, with a finished splice; so is straight molding longer than its boards, trimmed.' },
  { key: 'largestHigh', group: 'Machine', label: 'Largest piece, high', measure: 'length', value: 72, metric: 1800, min: 6, max: 600, note: 'From its long points to its crown. A higher one is made in halves.' },
  { key: 'largestTurn', group: 'Machine', label: 'Largest piece, turn', measure: 'degrees', value: 360, min: 10, max: 360, note: 'Most degrees of one finished piece: 180 makes a full circle in halves, 360 in one.' },
  { key: 'feed', group: 'Machine', label: 'Feed', measure: 'feed', value: 4.5, metric: 1.4, min: 0.1, max: 200, note: 'At the center of the molding. 4 to 5 ft/min for curved work is common practice.' },
  { key: 'straightFeed', group: 'Machine', label: 'Feed of straight stock', measure: 'feed', value: 12, metric: 3.7, min: 0.1, max: 200, note: 'Straight molding runs between fences and is fed faster: 12 ft/min leaves 41 cuts per inch at 6,000 rev/min.' },
  { key: 'profileDepth', group: 'Machine', label: 'Depth of the profile', measure: 'length', value: 0.5, metric: 12, min: 0.01, max: 6, note: 'Deepest wood the knife takes off, where the list of knives gives none for the profile.' },

  { key: 'margin', group: 'Allowances', label: 'Margin on each edge', measure: 'length', value: 0.25, metric: 6, min: 0, max: 4, note: 'Blank left wider than the molding, on each edge.' },
  { key: 'endAllowance', group: 'Allowances', label: 'End allowance', measure: 'length', value: 1, metric: 25, min: 0, max: 24, note: 'Extra arc at each end of a blank for trimming, measured at the inside edge.' },
  { key: 'clearance', group: 'Allowances', label: 'Guide clearance', measure: 'length', value: GUIDE_CLEARANCE, metric: 0.8, min: 0, max: 1, note: 'Gap between blank and each guide, so that the blank slides.' },
  { key: 'guideTolerance', group: 'Allowances', label: 'Radii that share guides, within', measure: 'length', value: 0, metric: 0, min: 0, max: 24, note: '0: never. Radii this close share one guide set, where over the length of the guides (bed line to bed line) the difference is no more than the clearance.' },
  { key: 'grain', group: 'Allowances', label: 'Steepest grain at a joint', measure: 'degrees', value: STEEPEST_GRAIN, min: 1, max: 60, note: 'ANSI/AWI 0622 allows 30 degrees at the face of a curved member.' },
  { key: 'kerf', group: 'Allowances', label: 'Saw kerf', measure: 'length', value: 0.125, metric: 3.2, min: 0, max: 1, note: 'Wood lost to one saw cut.' },
  { key: 'endTrim', group: 'Allowances', label: 'End trim of boards', measure: 'length', value: 0.5, metric: 12, min: 0, max: 24, note: 'Cut off each end of a board before use.' },
  { key: 'roughWidth', group: 'Allowances', label: 'Rough opening, width', measure: 'length', value: 2, metric: 50, min: 0, max: 12, note: 'A rough opening is this much wider than the opening. Varies by maker.' },
  { key: 'roughHeight', group: 'Allowances', label: 'Rough opening, height', measure: 'length', value: 2.5, metric: 65, min: 0, max: 12, note: 'A rough opening is this much higher than the opening. Varies by maker.' },
  { key: 'waste', group: 'Allowances', label: 'Defect and waste', measure: 'percent', value: 0.15, min: 0, max: 2, note: 'Share of the wood planned as extra pieces for defects and misfits; spare and test pieces are not among them.' },
  { key: 'sparePieces', group: 'Allowances', label: 'Spare pieces', measure: 'count', value: 0, min: 0, max: 20, note: 'Extra pieces run with each guide set, shared by the openings that use it.' },
  { key: 'testPiece', group: 'Allowances', label: 'Test piece', measure: 'length', value: 24, metric: 600, min: 0, max: 240, note: 'Straight length used up to set each guide set.' },

  { key: 'shopRate', group: 'Rates', label: 'Machine rate', measure: 'moneyPerHour', value: 68, min: 0, max: 1000, note: 'One hour of the molding machine and the person at it: running and setting up.' },
  { key: 'benchRate', group: 'Rates', label: 'Bench rate', measure: 'moneyPerHour', value: 54, min: 0, max: 1000, note: 'One hour of a person at saw, planer and bench: all other work. Lower than the machine rate by what the machine costs an hour.' },
  { key: 'guideMinutes', group: 'Rates', label: 'Making a guide set', measure: 'minutes', value: 45, min: 0, max: 1000, note: 'Laying out, sawing and fixing one pair of guide boards, at the bench rate.' },
  { key: 'guideMaterial', group: 'Rates', label: 'Guide boards', measure: 'money', value: 14, min: 0, max: 1000, note: 'Sheet stock and screws for one guide set.' },
  { key: 'knifeGrinding', group: 'Rates', label: 'Knife for a profile', measure: 'money', value: 110, min: 0, max: 10000, note: 'Grinding one knife, once for each profile, width and thickness, where the list of knives names no other charge.' },
  { key: 'knifeChange', group: 'Rates', label: 'Knife change', measure: 'minutes', value: 15, min: 0, max: 1000, note: 'Locking out, mounting and balancing one knife: once for each knife, whatever the order of the set-ups.' },
  { key: 'guideChange', group: 'Rates', label: 'Guide change', measure: 'minutes', value: 25, min: 0, max: 1000, note: 'Laying guides, or fences for straight stock, dry run and test piece: once for each guide set.' },
  { key: 'jointMinutes', group: 'Rates', label: 'Glue-up, each joint', measure: 'minutes', value: 7, min: 0, max: 1000, note: 'Mitering, gluing and clamping one joint, at the bench rate.' },
  { key: 'sawMinutes', group: 'Rates', label: 'Sawing the ring', measure: 'minutesPerLength', value: 1.5, metric: 5, min: 0, max: 100, note: 'Band sawing both arcs, for each foot (metric: meter) of outside length.' },
  { key: 'planeMinutes', group: 'Rates', label: 'Planing the glued blank', measure: 'minutesPerLength', value: 0.5, metric: 1.6, min: 0, max: 100, note: 'Both faces to the finished thickness, for each foot (metric: meter) of outside length: two passes, with carrying. Straight stock comes dressed.' },
  { key: 'trimMinutes', group: 'Rates', label: 'Trimming the margin', measure: 'minutesPerLength', value: 0.75, metric: 2.5, min: 0, max: 100, note: 'Taking the margin off both edges after the run, for each foot (metric: meter) of outside length.' },
  { key: 'endCutMinutes', group: 'Rates', label: 'End cut', measure: 'minutes', value: 1.5, min: 0, max: 1000, note: 'Marking and cutting one end to length or miter; a piece has two, a full circle none.' },
  { key: 'sandMinutes', group: 'Rates', label: 'Sanding', measure: 'minutesPerLength', value: 2, metric: 6.5, min: 0, max: 100, note: 'Taking out the knife marks by hand, for each foot (metric: meter) of outside length.' },
  { key: 'packMinutes', group: 'Rates', label: 'Packing, each piece', measure: 'minutes', value: 2, min: 0, max: 1000, note: 'Marking, wrapping and crating one arc or straight piece.' },
  { key: 'spliceMinutes', group: 'Rates', label: 'Finished splice', measure: 'minutes', value: 20, min: 0, max: 1000, note: 'Cutting, fitting and marking one splice between two halves, at the bench rate.' },
  { key: 'carrierMinutes', group: 'Rates', label: 'Fixing to a carrier', measure: 'minutes', value: 8, min: 0, max: 1000, note: 'Fixing one short piece to a carrier and taking it off, at the bench rate.' },
  { key: 'handling', group: 'Rates', label: 'Handling, each piece', measure: 'minutes', value: 2, min: 0, max: 1000, note: 'Carrying to and from the machine and clearing, at the machine rate.' },
  { key: 'hoursPerWeek', group: 'Rates', label: 'Machine hours in a week', measure: 'count', value: 30, min: 1, max: 168, note: 'Hours in a week that the machine runs: what a lead time is counted by.' },
  { key: 'pricing', group: 'Rates', label: 'Pricing', measure: 'choice', value: 'markup', choices: ['markup', 'margin'], note: 'markup: price = cost × (1 + rate); margin: price = cost ÷ (1 − rate).' },
  { key: 'pricingRate', group: 'Rates', label: 'Markup or margin', measure: 'percent', value: 0.35, min: 0, max: 0.95, note: 'Which of the two it is stands in the row above.' },
  { key: 'pieceMinimum', group: 'Rates', label: 'Minimum price of an opening', measure: 'money', value: 0, min: 0, max: 100000, note: 'One opening sells for no less, unless a price is agreed. The minimum of the whole job is among the job\'s own rules.' },

  { key: 'keystonePrice', group: 'Extras', label: 'Keystone, each', measure: 'money', value: 0, min: 0, max: 100000, note: 'What one sells for. 0: not priced yet, and said so wherever one is wanted.' },
  { key: 'plinthBlockPrice', group: 'Extras', label: 'Plinth block, each', measure: 'money', value: 0, min: 0, max: 100000, note: 'What one sells for. 0: not priced yet.' },
  { key: 'rosettePrice', group: 'Extras', label: 'Rosette, each', measure: 'money', value: 0, min: 0, max: 100000, note: 'What one sells for. 0: not priced yet.' },
  { key: 'mullPost', group: 'Extras', label: 'Between units under one head', measure: 'length', value: 1, metric: 25, min: 0, max: 24, note: 'From the opening of one unit to that of the next, where one head goes over several that are listed by the width of one. It counts when a list is read.' },
  { key: 'straightPiece', group: 'Extras', label: 'Straight molding by the foot, in pieces of', measure: 'length', value: 96, metric: 2400, min: 6, max: 360, note: 'Straight footage of a profile is priced as so many pieces of this length, the last one whole. It counts when a list is read.' },

  { key: 'tolerance', group: 'Check', label: 'Length tolerance', measure: 'length', value: 0.125, metric: 3, min: 0, max: 12, note: 'A quoted length or radius this close agrees.' },
  { key: 'priceBand', group: 'Check', label: 'Price band', measure: 'percent', value: 0.1, min: 0, max: 10, note: 'A quoted unit price this close to ours agrees.' },
  { key: 'deviation', group: 'Check', label: 'Ellipse by arcs, allowed', measure: 'length', value: 0.25, metric: 6, min: 0, max: 12, note: 'An ellipse is run as the fewest of 3, 5 or 7 arcs that come this near to the true curve, where its row names no number; what strays farther is pointed out.' },
] as const satisfies readonly Setting[];

type Entry = (typeof SETTINGS)[number];
export type SettingKey = Entry['key'];
type ValueOf<E> = E extends { measure: 'choice'; choices: readonly (infer C)[] }
  ? C
  : E extends { measure: 'text' }
    ? string
    : number;

/** The shop's settings and stock list, ready for use. */
export type Standards = { readonly [E in Entry as E['key']]: ValueOf<E> } & {
  readonly stock: readonly StockBoard[];
  /** Knives and guides the shop owns. */
  readonly onHand: readonly OnHand[];
  /** Settings of one machine that nobody has set yet: see `isNotSet`. */
  readonly notSet: readonly SettingKey[];
};

/** The name of the workbook cell that holds a setting: `cuttingCircle` → `Shop_cutting_circle`. */
export function cellName(key: string): string {
  return 'Shop_' + key.replace(/[A-Z]/g, (letter) => '_' + letter.toLowerCase());
}

/** Limits of a number setting in the given unit. */
export function limits(setting: NumberSetting, unit: Unit): { min: number; max: number } {
  const scale = scaleOf(setting.measure, unit);
  return { min: setting.min * scale, max: setting.max * scale };
}

function scaleOf(measure: Measure, unit: Unit): number {
  if (measure === 'length') return perInch(unit);
  return measure === 'feed' ? perFootPerMinute(unit) : 1;
}

export function defaultStandards(unit: Unit = 'in'): Standards {
  const values: Record<string, number | string> = {};
  for (const { key } of SETTINGS) values[key] = neutral(key, unit);
  values['unit'] = unit;
  return {
    ...(values as unknown as Omit<Standards, 'stock' | 'onHand' | 'notSet'>),
    ...{ stock: defaultStock(unit), onHand: [], notSet: MACHINE_KEYS },
  };
}

const MACHINE_KEYS = (SETTINGS as readonly Setting[]).flatMap(({ key, ofMachine }) =>
  ofMachine ? [key as SettingKey] : [],
);

/** Whether this is one machine's setting that nobody has set: the neutral figure stands in. Setting it to that figure sets it. */
export function isNotSet(standards: Standards, key: SettingKey): boolean {
  return standards.notSet.includes(key) && standards[key] === neutral(key, standards.unit);
}

function neutral(key: SettingKey, unit: Unit): number | string {
  const setting = (SETTINGS as readonly Setting[]).find((each) => each.key === key)!;
  return unit === 'mm' && 'metric' in setting && setting.metric !== undefined ? setting.metric : setting.value;
}

/** The same settings with one of the machine's not set again. */
export function withNotSet(standards: Standards, key: SettingKey): Standards {
  if (!MACHINE_KEYS.includes(key)) return standards;
  const notSet = MACHINE_KEYS.filter((each) => each === key || standards.notSet.includes(each));
  return { ...standards, [key]: neutral(key, standards.unit), notSet };
}

/** The machine's settings that are not set yet, in their order. */
export function settingsNotSet(standards: Standards): readonly NumberSetting[] {
  return (SETTINGS as readonly Setting[]).filter(
    (setting): setting is NumberSetting => setting.ofMachine === true && isNotSet(standards, setting.key as SettingKey),
  );
}

/**
 * The settings with some values replaced; the first value outside its limits is refused in a sentence. The unit comes first:
 * the limits of the others are in it. A new unit converts nothing: whoever changes it starts from that unit's defaults.
 */
export function withSettings(standards: Standards, changes: Partial<Record<SettingKey, unknown>>): Result<Standards> {
  const next: Record<string, unknown> = { ...standards };
  for (const setting of SETTINGS as readonly Setting[]) {
    if (!(setting.key in changes)) continue;
    const read = readSetting(setting, changes[setting.key as SettingKey], next['unit'] as Unit);
    if (!read.ok) return read;
    next[setting.key] = read.value;
  }
  next['notSet'] = standards.notSet.filter((key) => !(key in changes));
  return ok(next as unknown as Standards);
}

/** A setting's value as typed, checked against its limits. Blank is refused: every setting has a value. */
export function readSetting(setting: Setting, given: unknown, unit: Unit): Result<number | string> {
  if (setting.measure === 'choice') {
    const word = String(given ?? '')
      .trim()
      .toLowerCase();
    const found = setting.choices.find((choice) => choice === word);
    return found === undefined
      ? refuse(`${setting.label} must be one of ${setting.choices.join(', ')}; got ${shown(given)}.`)
      : ok(found);
  }
  if (setting.measure === 'text') {
    const text = typeof given === 'string' || typeof given === 'number' ? String(given).trim() : '';
    return text === '' ? refuse(`${setting.label} must not be blank.`) : ok(text);
  }
  const { min, max } = limits(setting, unit);
  const whole = setting.measure === 'count';
  if (typeof given !== 'number' || !(given >= min && given <= max) || (whole && !Number.isInteger(given))) {
    const kind = whole ? 'a whole number' : 'a number';
    return refuse(`${setting.label} must be ${kind} from ${round(min)} to ${round(max)}; got ${shown(given)}.`);
  }
  return ok(given);
}

function shown(given: unknown): string {
  return typeof given === 'number' ? figure(given) : quoted(String(given ?? ''));
}

function round(limit: number): number {
  return Number(limit.toPrecision(6));
}
