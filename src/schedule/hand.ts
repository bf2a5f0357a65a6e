import { readHead } from '../head/words';
import { SHAPES } from '../head/shapes';
import { idOf } from './asked';
import type { RowChanges } from './changes';
import { cellText } from './cell';
import { quote } from './figure';
import { cellsOf, remarksOf } from './rowCells';
import { handIn, headOf } from './rowWords';

/*
 * Left and right of heads with one high side (quarter round, half segmental, quarter ellipse, shed), where a column or the head's own
 * cell says so. Which side of a left-hand head is high is no settled custom, so it is asked once for each hand; what is known goes
 * with the opening's remarks, which the bench's tickets tell left from right by. The curve and its price are the same either way.
 */

const HEADING =
  /^(?:hand|handing|hand of (?:head|arch|opening|casing)|left right|l r|lh rh|(?:high|tall|peak) (?:side|end)|(?:slope|rake) (?:side|end|direction))$/;
const OF_THE_HIGH_SIDE = /high|tall|peak/;
const SIDES = ['left', 'right'] as const;
type Side = (typeof SIDES)[number];
const HIGH_SIDE = /\b(?:high|tall|peak|crown)[a-z]* (?:side |end )?(?:at |on |is )?(?:the )?(left|right)\b/i;

/** Whether a column by such a heading, in normal form, gives left or right. */
export function isHandHeading(name: string): boolean {
  return HEADING.test(name);
}

/** What a cell of such a column says of its opening; gives whether the head has a hand at all. */
export function takeHand(changes: RowChanges, text: string, heading: string, name: string): boolean {
  if (!hasHighSide(changes)) return false;
  const where = `The column ${quote(heading)} says ${quote(text)}`;
  const side = sideOf(text);
  if (side === null) {
    // Pairs, counts of each, and words that only the bench can judge.
    changes.hand = SAYS_BOTH.test(text) ? text : `${heading}: ${text}`;
    changes.notes.push(`${where}, which goes with the remarks.`);
  } else if (OF_THE_HIGH_SIDE.test(name)) takeSide(changes, side, where);
  else askSide(changes, side);
  return true;
}

/** `1/4 round LH`: the hand that a head's own cell names, where no column did. */
export function takeNamedHand(changes: RowChanges): void {
  if (changes.hand !== null || changes.wasAsked(idOf('hand', 'left')) || changes.wasAsked(idOf('hand', 'right')))
    return;
  const [first] = cellsOf(changes.raw, 'head');
  const said = first === undefined ? null : handIn(cellText(first.cell));
  const side = said === null ? null : sideOf(said);
  if (first !== undefined && side !== null && hasHighSide(changes)) askSide(changes, side);
}

const SAYS_BOTH = /\b(?:l\.?h|left|pair|both|r\.?h|right)\b/i;

function sideOf(text: string): Side | null {
  if (/^l(?:\.?h\.?|eft)?(?:[ -]?hand(?:ed)?)?\.?$/i.test(text)) return 'left';
  return /^r(?:\.?h\.?|ight)?(?:[ -]?hand(?:ed)?)?\.?$/i.test(text) ? 'right' : null;
}

function takeSide(changes: RowChanges, side: Side, where: string): void {
  const other = HIGH_SIDE.exec(remarksOf(changes.raw))?.[1]?.toLowerCase();
  if (other === side || changes.fields.remarks !== undefined) return;
  if (other === undefined) {
    changes.hand = `high side ${side}`;
    changes.notes.push(`${where}: the high side is ${side}.`);
    return;
  }
  changes.open.push({
    row: changes.raw.row,
    field: 'remarks',
    message: `${where}, but the remarks have the high side ${other}; please give the remarks as they should be.`,
    choices: [side, other].map((one) => `high side ${one}`),
  });
}

function askSide(changes: RowChanges, side: Side): void {
  if (HIGH_SIDE.test(remarksOf(changes.raw)) || changes.fields.remarks !== undefined) return;
  const ordered = side === 'left' ? SIDES : [...SIDES].reverse();
  const chosen = changes.ask({
    id: idOf('hand', side),
    about: 'columns',
    text: `Heads with one high side are given as ${side} hand; at which side are they high, seen from where the casing is?`,
    choices: ordered.map((one) => ({ label: `high side ${one}` })),
    field: 'quantity',
  });
  if (chosen !== null) changes.hand = chosen.label;
}

function hasHighSide({ raw, fields }: RowChanges): boolean {
  const answered = fields.head === undefined ? null : readHead(fields.head);
  const head = answered === null ? headOf(raw, SILENT).head : answered.ok ? answered.value : null;
  return head !== null && SHAPES[head].highSide;
}

const SILENT = { note: () => undefined, problem: () => undefined, rough: () => undefined };
