import type { Standards } from '../standards';
import { figure, quote } from './figure';
import type { Findings } from './given';
import type { Opening, OpeningField, Problem } from './opening';
import { readRemarks } from './remarks';
import { resolveShape } from './resolve';
import { RowReader, type RawOpening } from './rowReader';

/** Reads one opening. Nothing is dropped: what can't be read, contradicts or is missing becomes a problem. */
export function readRow(raw: RawOpening, standards: Standards): Opening {
  const notes = [...raw.notes];
  const problems: Problem[] = [];
  const rough: { span?: number; rise?: number } = {};
  const say: Findings = {
    note: (sentence) => void notes.push(sentence),
    problem: (field, message) => void problems.push({ row: raw.row, field, message }),
    rough: (field, figure) => void (rough[field] = figure),
  };
  const row = new RowReader(raw, standards, say);

  const mark = row.plainText('mark', 'mark') ?? '';
  // Cells that may have moved put the whole row in doubt; without a span nothing is computed.
  if (raw.doubt !== null) say.problem('span', raw.doubt);
  for (const text of raw.more) say.note(`The remarks go on in the row below: ${quote(text)}.`);
  const remarks = [...row.texts('remarks'), ...raw.more];
  const facts = readRemarks(remarks.join('; '));
  const quantity = row.quantity();
  const named = row.head();
  let head = named.head;
  if (head === null && !named.inDoubt && facts.head !== null) {
    head = facts.head.shape;
    say.note(`The head is taken from the remarks: ${quote(facts.head.said)}.`);
  } else if (head !== null && facts.head !== null && facts.head.shape !== head) {
    say.problem(
      'head',
      `The head is given as ${head}, but the remarks say ${quote(facts.head.said)}; please say which is right.`,
    );
    head = null;
  }
  const inDoubt = named.inDoubt || (head === null && problems.some(({ field }) => field === 'head'));
  const { lengths, casing } = row.lengths();
  const shape = resolveShape(lengths, head, inDoubt, standards, say);
  let ends = row.ends();
  let leg = row.optional('leg', lengths.leg);
  if (ends === null && facts.ends !== null && !problems.some(({ field }) => field === 'ends')) {
    ends = facts.ends.ends;
    say.note(`The ends are taken from the remarks: ${quote(facts.ends.said)}.`);
  }
  if (facts.legsToFloor) {
    ends ??= 'legs';
    if (leg === null && lengths.springHeight?.value !== undefined && !problems.some(({ field }) => field === 'leg')) {
      leg = lengths.springHeight.value;
      say.note(`The remarks ask for legs to the floor, so each leg is the spring height ${figure(leg)}.`);
    } else if (leg === null)
      say.problem('leg', 'The remarks ask for legs to the floor; please give the spring height or the leg length.');
  }
  if (facts.withdrawn !== null)
    say.problem(
      'quantity',
      `The remarks say ${quote(facts.withdrawn)}; please confirm whether this opening is wanted.`,
    );

  const opening: Opening = {
    row: raw.row,
    source: raw.source,
    mark,
    quantity,
    ...shape,
    reveal: row.optional('reveal', row.given('reveal')),
    face: row.optional('face', row.given('face') ?? casing.face),
    thickness: row.optional('thickness', row.given('thickness') ?? casing.thickness),
    species: row.plainText('species', 'species'),
    ends,
    leg,
    profile: row.plainText('profile', 'profile'),
    notes,
    problems,
    ...(Object.keys(rough).length > 0 ? { rough } : {}),
  };
  if (mark === '') notes.push('This opening has no mark.');
  return { ...opening, ...inDoubtAsNull(problems) };
}

/** What is in doubt is not used, even where a figure could be read; a mark stays, to find the row by. */
function inDoubtAsNull(problems: readonly Problem[]): Partial<Record<Exclude<OpeningField, 'mark'>, null>> {
  const fields = problems.flatMap(({ field }) => (field === 'mark' ? [] : [[field, null] as const]));
  return Object.fromEntries(fields);
}
