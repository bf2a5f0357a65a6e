import type { HeadWords } from '../head/words';
import type { Standards } from '../standards';
import { figure, quote } from './figure';
import type { Findings, Given } from './given';
import { NOT_GIVEN, type Opening, type OpeningField, type Problem } from './opening';
import { readRemarks, withdrawnBy, withdrawnMark } from './remarks';
import { resolveShape } from './resolve';
import { cellText } from './cell';
import { cellsOf, type RawOpening } from './rowCells';
import { RowLengths } from './rowLengths';
import { endsOf, headOf, quantityOf, textOf } from './rowWords';

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
  const lengths = new RowLengths(raw, standards, say);

  const mark = textOf(raw, 'mark', say) ?? '';
  // Cells that may have moved put the whole row in doubt; without a span nothing is computed.
  if (raw.doubt !== null) say.problem('span', raw.doubt);
  for (const text of raw.more) say.note(`The remarks go on in the row below: ${quote(text)}.`);
  const remarks = [...cellsOf(raw, 'remarks').map(({ cell }) => cellText(cell)), ...raw.more].join('; ');
  const facts = readRemarks(remarks);
  const quantity = quantityOf(raw, say);
  const named = headOf(raw, say);
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
  const ofShape = lengths.ofShape();
  const casing = lengths.ofCasing();
  const wide = ofShape.width?.value;
  if (
    named.riseOf &&
    head !== null &&
    wide !== undefined &&
    ofShape.rise === undefined &&
    ofShape.radius === undefined
  ) {
    ofShape.rise = { value: named.riseOf(wide) };
    say.note(`Rise ${figure(named.riseOf(wide))} is that of an equilateral head on the width ${figure(wide)}.`);
  }
  const resolved = resolveShape(ofShape, head, inDoubt, standards, say);
  const shape = named.spanOf ? atSpring(resolved, named.spanOf, say) : resolved;
  let ends = endsOf(raw, say);
  let leg = orStandard('leg', ofShape.leg, say);
  if (ends === null && facts.ends !== null && !problems.some(({ field }) => field === 'ends')) {
    ends = facts.ends.ends;
    say.note(`The ends are taken from the remarks: ${quote(facts.ends.said)}.`);
  }
  if (ends === null && named.ends && !problems.some(({ field }) => field === 'ends')) {
    ends = named.ends;
    say.note('The ends are taken from the head, which is said to stand on legs.');
  }
  if (facts.legsToFloor) {
    ends ??= 'legs';
    if (leg === null && ofShape.springHeight?.value !== undefined && !problems.some(({ field }) => field === 'leg')) {
      leg = ofShape.springHeight.value;
      say.note(`The remarks ask for legs to the floor, so each leg is the spring height ${figure(leg)}.`);
    } else if (leg === null)
      say.problem('leg', 'The remarks ask for legs to the floor; please give the spring height or the leg length.');
  }
  const withdrawn = withdrawal(raw, mark, remarks);
  if (withdrawn !== null) say.problem('quantity', `${withdrawn}; please confirm whether this opening is wanted.`);

  const opening: Opening = {
    row: raw.row,
    source: raw.source,
    mark,
    quantity,
    ...shape,
    reveal: orStandard('reveal', lengths.given('reveal'), say),
    face: orStandard('face', casing.face, say),
    thickness: orStandard('thickness', casing.thickness, say),
    species: textOf(raw, 'species', say),
    ends,
    leg,
    profile: textOf(raw, 'profile', say),
    ...NOT_GIVEN,
    remarks: remarks === '' ? null : remarks,
    notes,
    problems,
    ...(Object.keys(rough).length > 0 ? { rough } : {}),
  };
  if (mark === '') notes.push('This opening has no mark.');
  return { ...opening, ...inDoubtAsNull(problems) };
}

/** A length that may be left to the shop's standard: null where it is blank or in doubt. */
function orStandard(field: OpeningField, given: Given | undefined, say: Findings): number | null {
  if (given?.fault !== undefined) say.problem(field, given.fault);
  return given?.value ?? null;
}

/** Where the row says that the opening is out of the job: in its remarks, its mark, or a column that means nothing else. */
function withdrawal(raw: RawOpening, mark: string, remarks: string): string | null {
  const said = withdrawnBy(remarks);
  if (said !== null) return `The remarks say ${quote(said)}`;
  const marked = withdrawnMark(mark);
  if (marked !== null) return `The mark says ${quote(marked)}`;
  for (const { index, key, heading } of raw.block) {
    const word = key === null ? withdrawnBy(cellText(raw.cells[index])) : null;
    if (word !== null) return `${heading === '' ? `Column ${index + 1}` : quote(heading)} says ${quote(word)}`;
  }
  return null;
}

/** What is in doubt is not used, even where a figure could be read; a mark stays, to find the row by. */
function inDoubtAsNull(problems: readonly Problem[]): Partial<Record<Exclude<OpeningField, 'mark'>, null>> {
  const fields = problems.flatMap(({ field }) => (field === 'mark' ? [] : [[field, null] as const]));
  return Object.fromEntries(fields);
}

type Resolved = ReturnType<typeof resolveShape>;

/** A horseshoe whose width is given where it is widest, with the width at its spring line in place of that. */
function atSpring(shape: Resolved, spanOf: NonNullable<HeadWords['spanOf']>, say: Findings): Resolved {
  if (shape.span === null) return shape;
  if (shape.rise === null) {
    say.problem('span', 'The width is that at the widest; please give the rise, which the span follows from.');
    return { ...shape, span: null };
  }
  const span = spanOf(shape.span, shape.rise);
  if (!span.ok) {
    say.problem('span', `There is no such horseshoe: ${span.message}.`);
    return { ...shape, span: null };
  }
  say.note(`Span ${figure(span.value)} at the spring line, of a horseshoe ${figure(shape.span)} wide at its widest.`);
  return { ...shape, span: span.value };
}
