import { readHead } from '../head/words';
import { AS_LISTED, LEAVE_OUT, idOf, type Choice, type Draft } from './asked';
import type { RowChanges } from './changes';
import { cellText, isBlank } from './cell';
import { listed, quote } from './figure';
import { isHandHeading, takeHand } from './hand';
import { normalHeading } from './headingText';
import type { Choices, Column } from './layout';
import { MEANINGS, meaningOf, type MeaningKey } from './meanings';
import type { Unread } from './opening';
import { askRemarks } from './rowRemarks';
import { readQuantity } from './readQuantity';
import { cellsOf } from './rowCells';

/*
 * Columns that nothing is read from. One that may change what is bought, by its heading or by its cells, is asked about before a
 * row that has something in it is priced; the others are named among what was not read.
 */

interface Unused {
  readonly column: Column;
  readonly heading: string;
  readonly name: string;
  readonly cells: readonly { readonly changes: RowChanges; readonly text: string }[];
}

/** Headings that have nothing to do with casing over an opening. */
const ELSEWHERE =
  /\b(?:hardware|hdwe?|hw|lockset|lock|handing|hand|swing|hinge|closer|threshold|glass|glazing|glazed|lites?|grids?|grilles?|muntin|screen|shade|blind|u|u ?factor|u ?value|shgc|nfrc|vt|fire|rating|label|stc|finish|paint|color|colour|manufacturer|mfr|maker|vendor|supplier|brand|model|series|catalog|product|sill|jamb|wall|header|lintel|plate|sheathing|details?|dtl|sheet|dwg|drawing|elev|elevation|keynote|spec|section|assembly|ref|guid|uuid|ifc|price|cost|amount|usd|extension|extended|weight|lbs?|area|sf|sq|sqft|volume|perimeter|date|delivery|ship|lead|image|photo|barcode|csi|code|category|class|family|workset|design option|host|orientation|azimuth|facing|construction|operation|operable|function|egress|tempered|leaf|panel|slab|frame|sash|set|stool|apron|flashing|caulk|sealant|anchor)\b/;
/** "Door thickness", "Frame material". */
const OF_A_DOOR = /^(?:door|leaf|panel|frame|slab) (?:thickness|thick|thk|material|mat|matl|mtl)$/;
const COUNTS =
  /\b(?:\d+(?:st|nd|rd|th)|first|second|third|fourth|fifth|ground|lower|upper|main|basement|bsmt|attic|garage|levels?|lvl|floors?|flr|fl|stor(?:e?y|ies)|bldg|building|block|lot|phase|wing|plan|apt|tower|north|south|east|west|lh|rh|left|right|qty|quan\w*|pairs?|prs?|count|units?|total)\b/;
const SIDE = /\b(int|interior|inside|ext|exterior|outside)\b/;
const STATUS =
  /\b(?:status|scope|action|disposition|work|condition|phase|alternates?|alt|bid|addend\w*|existing|new|includ\w*|contract|furnished|supplied|provided|option\w*|revision|rev|change|approved|hold|void|nic|by)\b/;
const CHANGES_NO_STATUS =
  /^(?:new(?: work| construction)?|ok|okay|yes|y|x|approved|open|active|final|confirmed|released|base(?: bid)?|in|included?|for construction|ifc|issued|current|0|-|a|proposed|as built)$/i;
/** Headings that speak of what is bought without being one that is known. */
const MATTERS =
  /\b(?:arch(?:ed)?|crown|springs?|springline|curve[ds]?|bend|heads?|tops?|stilt|legs?|casings?|trim|mou?ldings?|wood|species|lumber|material|profile|radius|radii|rad|r|dia|diameter|rise|span|chord|width|height|ht|wd|sides?|reveal|thickness|thk|ends?|returns?|segments?|returns|backband|keystone|key|extras?|add|finished|clear|net|fo|opening|qty|quantity|pcs|pieces|[rwh] ?\d)\b/;

/** A column by such a heading tells what is to be done with the opening. */
export function isStatusHeading(heading: string): boolean {
  const name = normalHeading(heading.slice(0, 80));
  return STATUS.test(name) && !ELSEWHERE.test(name);
}

const NOT_USED_CHOICE: Choice = { label: 'not used' };
const HEAD: Choice = { label: meaningOf('head').label };
const SIZE: Choice = { label: meaningOf('size').label };
/** More kinds of cells than this are no status. */
const MOST_VALUES = 8;

/** What the unused columns of a list come to: meanings that were chosen for them, and those of which nothing was read. */
export interface ColumnsAsked {
  readonly choices: Choices;
  readonly unread: readonly Unread[];
}

export function askColumns(all: readonly RowChanges[]): ColumnsAsked {
  const unused = unusedColumns(all);
  const choices: Partial<Record<number, MeaningKey>> = {};
  const unread: Unread[] = [];
  const left = askSides(unused, askCounts(unused, all), choices);
  for (const one of left) {
    const { heading, name, cells, column } = one;
    const leftAlone =
      column.leftAlone ?? (OF_A_DOOR.test(name) ? "it is the door's or its frame's, not the casing's" : undefined);
    let why = leftAlone ?? 'the heading is none that is known';
    if (leftAlone !== undefined) {
      // Said, and never asked.
    } else if (isHandHeading(name)) {
      const used = cells.filter(({ changes, text }) => takeHand(changes, text, heading, name));
      if (used.length > 0) continue;
      why = 'no head of its rows has a high side';
    } else if (isStatusHeading(heading) && askStatus(one)) why = 'it was asked about';
    else if (MATTERS.test(name) && !ELSEWHERE.test(name) && cells.length > 0) {
      const draft = meaningDraft(one);
      const chosen = cells.map(({ changes }) => changes.ask(draft))[0] ?? null;
      const meaning = MEANINGS.find(({ label }) => label === chosen?.label);
      if (meaning !== undefined) {
        choices[column.index] = meaning.key;
        continue;
      }
      if (chosen !== null) choices[column.index] = 'ignore';
      why = chosen === null ? 'it is asked about' : 'it was answered so';
    } else {
      if (!ELSEWHERE.test(name))
        for (const { changes, text } of cells) if (/[a-z]{2}/i.test(text)) askRemarks(changes, text, heading);
      if (ELSEWHERE.test(name)) why = 'it says nothing of the casing';
    }
    unread.push({ what: `column ${quote(heading)}`, why });
  }
  return { choices, unread };
}

function unusedColumns(all: readonly RowChanges[]): readonly Unused[] {
  const found = new Map<string, { column: Column; cells: { changes: RowChanges; text: string }[] }>();
  for (const changes of all) {
    const { block, cells } = changes.raw;
    for (const column of block) {
      if (column.key !== null || column.heading === '') continue;
      const name = `${normalHeading(column.heading)} ${column.index}`;
      let one = found.get(name);
      if (one === undefined) found.set(name, (one = { column, cells: [] }));
      const cell = cells[column.index] ?? null;
      if (!isBlank(cell)) one.cells.push({ changes, text: cellText(cell) });
    }
  }
  return [...found.values()].map(({ column, cells }) => ({
    column,
    heading: column.heading,
    name: normalHeading(column.heading),
    cells,
  }));
}

/** Columns of counts, by floor or by hand: where they add up to the quantity nothing is asked. Gives back the others. */
function askCounts(unused: readonly Unused[], all: readonly RowChanges[]): readonly Unused[] {
  const hasColumn = all.some(({ raw }) => raw.block.some(({ key }) => key === 'quantity'));
  const isEveryRow = (filled: number) => filled * 2 > all.length;
  const isCount = ({ name, cells, column }: Unused) =>
    column.leftAlone === undefined &&
    (COUNTS.test(name) || (!hasColumn && isEveryRow(cells.length) && !countsUp(cells))) &&
    !ELSEWHERE.test(name) &&
    !/\b(?:width|height|rise|radius|size|casing|trim|wood|elev)\b/.test(name) &&
    cells.length > 0 &&
    cells.every(({ text }) => /^\d{1,4}(?:\.0+)?(?: ?ea\.?)?$/.test(text));
  const found = unused.filter(isCount);
  if (found.length === 0) return unused;
  const total = found.length > 1 && !hasColumn ? found.find(({ name }) => /\btotals?\b/.test(name)) : undefined;
  const counts = found.filter((one) => one !== total);
  const sums = new Map<RowChanges, number>();
  for (const { cells } of counts)
    for (const { changes, text } of cells) sums.set(changes, (sums.get(changes) ?? 0) + parseInt(text, 10));
  const names = listed(counts.map(({ heading }) => quote(heading)));
  const totals = new Map(total?.cells.map(({ changes, text }) => [changes.raw, parseInt(text, 10)] as const));
  const quantity = ({ raw }: RowChanges) => {
    const [first] = cellsOf(raw, 'quantity');
    const count = first === undefined ? null : readQuantity(first.cell);
    return count?.ok ? count.value : (totals.get(raw) ?? null);
  };
  const hasQuantity = hasColumn || total !== undefined;
  const agree = all.every((changes) => quantity(changes) === (sums.get(changes) ?? null) || !sums.has(changes));
  if (!agree || !hasQuantity) {
    for (const changes of all) {
      if (hasQuantity && quantity(changes) === (sums.get(changes) ?? 0)) continue;
      if (hasColumn && !sums.has(changes)) continue;
      const sum = sums.get(changes) ?? 0;
      const bySum: Choice =
        sum === 0 ? { label: 'their sum', leaveOut: true } : { label: 'their sum', set: { quantity: String(sum) } };
      changes.ask({
        id: 'counts',
        about: 'columns',
        text: hasQuantity
          ? `The columns ${names} hold counts that do not add up to the quantity; which is right?`
          : `The columns ${names} hold counts and no column is the quantity; is it their sum?`,
        choices: hasQuantity
          ? [bySum, { label: 'the quantity column' }]
          : [bySum, { label: 'one of each', set: { quantity: '1' } }],
        field: 'quantity',
      });
    }
  }
  if (total !== undefined)
    for (const { changes, text } of total.cells)
      if (sums.get(changes) === parseInt(text, 10)) {
        changes.fields.quantity ??= text;
        changes.notes.push(`The quantity is the total of ${names}.`);
      }
  return unused.filter((one) => !found.includes(one));
}

function countsUp(cells: Unused['cells']): boolean {
  return (
    cells.length >= 2 &&
    cells.every(
      ({ text }, index) => index === 0 || parseInt(text, 10) === parseInt(cells[index - 1]?.text ?? '', 10) + 1,
    )
  );
}

const NOUNS: readonly { readonly pattern: RegExp; readonly key: MeaningKey; readonly noun: string }[] = [
  { pattern: /\b(?:species|wood|material|mat|lumber)\b/, key: 'species', noun: 'wood' },
  { pattern: /\b(?:profile|pattern|knife|type|style)\b/, key: 'profile', noun: 'profile' },
  { pattern: /\b(?:reveal)\b/, key: 'reveal', noun: 'reveal' },
  { pattern: /\b(?:casings?|trim|mou?ldings?|architrave|face)\b/, key: 'face', noun: 'casing' },
];

/** One column for the inside and one for the outside: which of the two is priced is asked, once for each pair. */
function askSides(
  unused: readonly Unused[],
  left: readonly Unused[],
  choices: Partial<Record<number, MeaningKey>>,
): readonly Unused[] {
  const taken = new Set<Unused>();
  for (const { pattern, key, noun } of NOUNS) {
    const group = left.filter(
      (one) =>
        !taken.has(one) &&
        one.column.leftAlone === undefined &&
        SIDE.test(one.name) &&
        pattern.test(one.name) &&
        one.cells.length > 0,
    );
    if (group.length === 0) continue;
    for (const one of group) taken.add(one);
    const draft: Draft = {
      id: `side:${noun}`,
      about: 'columns',
      text: `${group.length === 1 ? 'The column' : 'The columns'} ${listed(group.map(({ heading }) => quote(heading)))} may give the ${noun} of one side of the wall; by which is the ${noun} priced?`,
      choices: [...group.map(({ heading }) => ({ label: heading })), { label: 'none of them' }],
      field: key === 'species' || key === 'profile' || key === 'reveal' ? key : 'face',
    };
    const rows = new Map(group.flatMap(({ cells }) => cells.map(({ changes }) => [changes, true] as const)));
    const chosen = [...rows.keys()].map((changes) => changes.ask(draft))[0] ?? null;
    if (chosen !== null) for (const { column } of group) choices[column.index] = 'ignore';
    const picked = group.find(({ heading }) => heading === chosen?.label);
    if (picked !== undefined)
      choices[picked.column.index] =
        key === 'face' && !picked.cells.some(({ text }) => /\d/.test(text)) ? 'profile' : key;
  }
  return left.filter((one) => !taken.has(one) && unused.includes(one));
}

/** A column that tells what is to be done with an opening: each of its words is asked about, unless it changes nothing. */
function askStatus({ heading, name, cells }: Unused): boolean {
  const words = new Set(cells.map(({ text }) => text.toLowerCase()));
  if (words.size > MOST_VALUES) return false;
  let any = false;
  for (const { changes, text } of cells) {
    if (CHANGES_NO_STATUS.test(text)) continue;
    any = true;
    changes.ask({
      id: idOf('column', `${name}=${text.toLowerCase().slice(0, 60)}`),
      about: 'columns',
      text: `The column ${quote(heading)} says ${quote(text)}; is the opening wanted?`,
      choices: [LEAVE_OUT, AS_LISTED],
      field: 'quantity',
    });
  }
  return any;
}

/** A heading that speaks of the opening or its casing and is none that is known. */
function meaningDraft({ heading, name, cells }: Unused): Draft {
  const examples = [...new Set(cells.map(({ text }) => text))].slice(0, 3).map(quote);
  const most = (pattern: RegExp) => cells.filter(({ text }) => pattern.test(text)).length * 2 > cells.length;
  const figures = most(/^[\d'".\s/-]+(?:mm|cm|in|ft)?$/i);
  const withFigures = most(/\d/);
  const offered = MEANINGS.filter(({ key, kind }) =>
    key === 'ignore' || key === 'unit'
      ? false
      : figures
        ? kind === 'length' || kind === 'quantity' || kind === 'size'
        : withFigures || kind !== 'length',
  );
  const namesHeads = cells.every(({ text }) => readHead(text).ok);
  // 36 x 80 under "Clear" is a size, whatever is clear of it.
  const likely = namesHeads ? HEAD : most(/^\d[\d'" ./-]*\s*[x×]\s*\d/i) ? SIZE : null;
  const others = offered.flatMap(({ label }) => (label === likely?.label ? [] : [{ label }]));
  return {
    id: idOf('column', name),
    about: 'columns',
    text: `The column ${quote(heading)} (${listed(examples)}) may change what is bought; what does it hold?`,
    choices: [...(likely === null ? [] : [likely]), NOT_USED_CHOICE, ...others],
    field: 'quantity',
  };
}
