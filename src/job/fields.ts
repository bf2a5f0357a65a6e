/** What a field of the job holds; decides how it is typed, checked and shown. */
export type JobMeasure =
  | 'text'
  | 'lines' // several lines of text
  | 'money'
  | 'moneyPerLength' // per foot, or per meter
  | 'percent' // held as a fraction, 0.0625
  | 'choice'
  | 'priced'; // lines of words, quantity and unit price

interface Base {
  readonly key: string;
  readonly group: JobGroup;
  readonly label: string;
  readonly measure: JobMeasure;
  readonly note: string;
}
interface ChoiceField extends Base {
  readonly measure: 'choice';
  /** The first holds until another is chosen. */
  readonly choices: readonly string[];
}
interface AmountField extends Base {
  readonly measure: 'money' | 'moneyPerLength' | 'percent';
  /** The least is 0, which stands for none. */
  readonly max: number;
}
interface WordsField extends Base {
  readonly measure: 'text' | 'lines' | 'priced';
}
export type JobField = ChoiceField | AmountField | WordsField;

export const JOB_GROUPS = ['Shop on paper', 'Job', 'Lines', 'Charges', 'Conditions'] as const;
export type JobGroup = (typeof JOB_GROUPS)[number];

/** Everything about a job that is not an opening, once. All is blank, or 0, or the first choice, until somebody says so. */
// prettier-ignore
export const JOB_FIELDS = [
  { key: 'shopName', group: 'Shop on paper', label: "Shop's name", measure: 'text', note: 'Stands on top of the proposal.' },
  { key: 'shopLines', group: 'Shop on paper', label: 'Lines below it', measure: 'lines', note: 'Address, telephone, license: a line each.' },

  { key: 'paper', group: 'Shop on paper', label: 'Paper', measure: 'choice', choices: ['letter', 'A4'], note: '' },

  { key: 'job', group: 'Job', label: 'Job', measure: 'text', note: 'What is built, and where.' },
  { key: 'customer', group: 'Job', label: 'Customer', measure: 'text', note: '' },
  { key: 'attention', group: 'Job', label: 'Attention', measure: 'text', note: '' },
  { key: 'address', group: 'Job', label: 'Address', measure: 'lines', note: '' },
  { key: 'ourNumber', group: 'Job', label: 'Our number', measure: 'text', note: '' },
  { key: 'date', group: 'Job', label: 'Date', measure: 'text', note: 'As it shall be printed.' },
  { key: 'validFor', group: 'Job', label: 'Valid for', measure: 'text', note: 'Such as 30 days.' },
  { key: 'preparedBy', group: 'Job', label: 'Prepared by', measure: 'text', note: '' },

  { key: 'linesBy', group: 'Lines', label: 'A line for each', measure: 'choice', choices: ['opening', 'place', 'head'], note: 'opening: with its unit price; place (floor, elevation, room) or head: one amount for all of it.' },
  { key: 'drawings', group: 'Lines', label: 'Drawings by mark', measure: 'choice', choices: ['not shown', 'shown'], note: 'Small ones below the prices, alike openings once. They stand in files; a sheet written into an open workbook has none.' },
  { key: 'extras', group: 'Lines', label: 'Other lines', measure: 'priced', note: 'Straight footage, blocks, whatever is no opening. A line each: words; quantity; unit price. A unit price below 0 is a credit.' },
  { key: 'alternates', group: 'Lines', label: 'Alternates', measure: 'lines', note: 'Marks of openings that are priced apart and not in the total, a line each.' },

  { key: 'setups', group: 'Charges', label: 'Knives, guides and set-ups', measure: 'choice', choices: ['in the prices', 'on a line of their own'], note: 'A price agreed for an opening holds its part already.' },
  { key: 'finishRate', group: 'Charges', label: 'Priming or finish', measure: 'moneyPerLength', max: 1000, note: 'For each foot (metric: meter) of molding along its outside edge, legs to the spring line included. 0: none.' },
  { key: 'finishWords', group: 'Charges', label: 'What the finish is', measure: 'text', note: 'Such as Priming, one coat.' },
  { key: 'discount', group: 'Charges', label: 'Discount', measure: 'percent', max: 1, note: 'Of everything above it: lines, set-ups, finish.' },
  { key: 'minimum', group: 'Charges', label: 'Minimum charge', measure: 'money', max: 1e6, note: 'What the job comes to at least, before delivery and tax: the difference stands on a line of its own, on the Proposal and below the total of the Takeoff as filled.' },
  { key: 'deliveryCharge', group: 'Charges', label: 'Delivery charge', measure: 'money', max: 1e6, note: '' },
  { key: 'taxRate', group: 'Charges', label: 'Tax', measure: 'percent', max: 1, note: '' },
  { key: 'taxOn', group: 'Charges', label: 'Tax is on', measure: 'choice', choices: ['everything', 'everything but delivery'], note: 'What is taxed differs by state: ask.' },

  { key: 'delivery', group: 'Conditions', label: 'Delivery', measure: 'text', note: 'When and where, in words.' },
  { key: 'leadTime', group: 'Conditions', label: 'Lead time', measure: 'choice', choices: ['not shown', 'shown'], note: "Weeks from the job's machine hours and the shop's machine hours in a week (Standards)." },
  { key: 'included', group: 'Conditions', label: 'Included', measure: 'lines', note: 'A line each.' },
  { key: 'notIncluded', group: 'Conditions', label: 'Not included', measure: 'lines', note: 'A line each: installation, site measuring, finishing…' },
  { key: 'assumptions', group: 'Conditions', label: 'Assumptions', measure: 'lines', note: 'A line each.' },
  { key: 'terms', group: 'Conditions', label: 'Terms', measure: 'lines', note: '' },
] as const satisfies readonly JobField[];

type Entry = (typeof JOB_FIELDS)[number];
export type JobKey = Entry['key'];

/** A line that is no opening: words, how many, and what one costs in whole cents; below 0 is a credit. */
export interface PricedLine {
  readonly words: string;
  readonly quantity: number;
  readonly unitPrice: number;
}

type ValueOf<E> = E extends { measure: 'choice'; choices: readonly (infer C)[] }
  ? C
  : E extends { measure: 'text' }
    ? string
    : E extends { measure: 'lines' }
      ? readonly string[]
      : E extends { measure: 'priced' }
        ? readonly PricedLine[]
        : number;

/** A job as it is quoted: who, what, and by which rules it is charged. */
export type Job = { readonly [E in Entry as E['key']]: ValueOf<E> };
export type JobValue = Job[JobKey];

/** The name of the workbook cell that holds a field: `taxRate` → `Job_tax_rate`. */
export function jobCellName(key: JobKey): string {
  return 'Job_' + key.replace(/[A-Z]/g, (letter) => '_' + letter.toLowerCase());
}

export const BLANK_JOB: Job = Object.fromEntries(
  (JOB_FIELDS as readonly JobField[]).map((field) => [field.key, blankOf(field)]),
) as unknown as Job;

function blankOf(field: JobField): string | number | readonly string[] {
  switch (field.measure) {
    case 'choice':
      return field.choices[0]!;
    case 'text':
      return '';
    case 'lines':
    case 'priced':
      return [];
    default:
      return 0;
  }
}
