import type { HeadWords } from '../head/words';
import type { Standards } from '../standards';
import { extrasOfColumns } from './extraCells';
import { readField, readMoney, readSides } from './answerField';
import { FIELD_KINDS } from './fieldKinds';
import type { RowChanges } from './changes';
import { cellText } from './cell';
import type { ColumnUnit } from './columnUnit';
import { figure, quote } from './figure';
import type { Findings, Given, GivenLengths } from './given';
import type { MeaningKey } from './meanings';
import { type Opening, type OpeningField, type OpeningInputs, type Problem } from './opening';
import { readQuantity } from './readQuantity';
import { readRemarks } from './remarks';
import { resolveShape } from './resolve';
import { mannerId, type Writings } from './manners';
import { cellsOf, remarksOf, type RawOpening } from './rowCells';
import { RowLengths } from './rowLengths';
import { underOneHead } from './together';
import { endsOf, headOf, quantityOf, textOf } from './rowWords';

/** How figures of a list are read where neither their cells nor their headings say so. */
export interface ListReading {
  readonly unit: ColumnUnit;
  readonly standards: Standards;
}

/**
 * Reads one opening. Nothing is dropped: what can't be read, contradicts or is missing becomes a problem, and so does every question
 * about the row that is open. What was answered stands in place of what the row gives.
 */
export function readRow(changes: RowChanges, { unit, standards }: ListReading): Opening {
  const { raw } = changes;
  const notes = [...raw.notes, ...changes.notes];
  const problems: Problem[] = [...changes.open];
  const rough: { span?: number; rise?: number } = {};
  const asked: Writings['asked'] = new Map();
  const say: Findings = {
    note: (sentence) => void notes.push(sentence),
    problem: (field, message, choices) => {
      const [writing] = [...asked].flatMap(([said, one]) => (message.includes(said) ? [one] : []));
      problems.push({ row: raw.row, field, message, ...(choices ? { choices } : {}), ...(writing ? { writing } : {}) });
    },
    rough: (field, figure) => void (rough[field] = figure),
    headIsMeant: changes.fields.head !== undefined,
    riseIsMeant: changes.fields.rise !== undefined,
  };
  const lengths = new RowLengths(raw, standards, say, changes.unit ?? unit, { answered: changes.manners, asked });
  const typed = new Typed(changes, lengths, standards, say);

  const mark = typed.has('mark') ? (typed.value('mark') ?? '') : (textOf(raw, 'mark', say) ?? '');
  for (const text of raw.more) say.note(`The remarks go on in the row below: ${quote(text)}.`);
  const said = remarksOf(raw);
  const facts = readRemarks(said);
  const remarks = [said, changes.hand ?? ''].filter((text) => text !== '').join('; ');
  const quantity = typed.has('quantity') ? typed.value('quantity') : quantityOf(raw, say);
  const named = typed.has('head')
    ? { head: typed.value('head'), inDoubt: problems.some(({ field }) => field === 'head') }
    : headOf(raw, say);
  let head = named.head;
  if (!typed.has('head')) {
    if (head === null && !named.inDoubt && facts.head !== null) {
      head = facts.head.shape;
      say.note(`The head is taken from the remarks: ${quote(facts.head.said)}.`);
    } else if (head !== null && facts.head !== null && facts.head.shape !== head) {
      say.problem(
        'head',
        `The head is given as ${head}, but the remarks say ${quote(facts.head.said)}; please say which is right.`,
        [head, facts.head.shape],
      );
      head = null;
    }
  }
  const inDoubt = named.inDoubt || (head === null && problems.some(({ field }) => field === 'head'));
  const ofShape = lengths.ofShape();
  const springHeight = ofShape.springHeight?.value;
  underOneHead(ofShape, changes, standards, say);
  typed.into(ofShape, head);
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
  const riseInInches = typed.has('rise') ? null : lengths.riseInInches();
  const meant = { ...say, riseInInches, riseIsMeant: say.riseIsMeant === true || named.isHigh === true };
  const resolved = resolveShape(ofShape, head, inDoubt, standards, meant);
  const shape = named.spanOf ? atSpring(resolved, named.spanOf, say) : resolved;
  let ends = typed.has('ends') ? typed.value('ends') : endsOf(raw, say);
  let leg = typed.has('leg') ? typed.value('leg') : orStandard('leg', ofShape.leg, say);
  const has = (field: OpeningField) => problems.some((problem) => problem.field === field);
  if (ends === null && facts.ends !== null && !has('ends') && !typed.has('ends')) {
    ends = facts.ends.ends;
    say.note(`The ends are taken from the remarks: ${quote(facts.ends.said)}.`);
  }
  if (ends === null && named.ends && !has('ends') && !typed.has('ends')) {
    ends = named.ends;
    say.note('The ends are taken from the head, which says how it ends.');
  }
  if (facts.legsToFloor && !typed.has('leg')) {
    ends ??= 'legs';
    if (leg === null && springHeight !== undefined && !has('leg')) {
      leg = springHeight;
      say.note(`The remarks ask for legs to the floor, so each leg is the spring height ${figure(leg)}.`);
    } else if (leg === null)
      say.problem('leg', 'The remarks ask for legs to the floor; please give the spring height or the leg length.');
  }
  const given = (field: OpeningField & MeaningKey, read: Given | undefined) =>
    typed.has(field) ? (typed.value(field) as number | null) : orStandard(field, read, say);
  const counts = extrasOfColumns(raw);
  for (const fault of counts.faults) say.problem('quantity', fault);
  // What a column counts stands above what a remark says of it.
  const extras = [
    ...counts.extras,
    ...changes.extras.filter(({ kind }) => counts.extras.every((one) => one.kind !== kind)),
  ];
  const text = (field: 'species' | 'profile' | 'place') =>
    typed.has(field) ? typed.value(field) : textOf(raw, field, say);

  const opening: Opening = {
    row: raw.row,
    ...(raw.at === String(raw.row) ? {} : { at: raw.at }),
    source: raw.source,
    mark,
    quantity,
    head: shape.head,
    span: shape.span,
    rise: shape.rise,
    reveal: given('reveal', lengths.given('reveal')),
    face: given('face', casing.face),
    thickness: given('thickness', casing.thickness),
    species: text('species'),
    ends,
    leg,
    profile: text('profile'),
    place: text('place'),
    remarks: typed.has('remarks') ? typed.value('remarks') : remarks === '' ? null : remarks,
    otherLeg: given('otherLeg', lengths.given('otherLeg')),
    haunch: given('haunch', lengths.given('haunch')),
    arcs: counted('arcs', raw, typed, say),
    segmentsWanted: counted('segmentsWanted', raw, typed, say),
    sides: counted('sides', raw, typed, say),
    priceAgreed: counted('priceAgreed', raw, typed, say),
    notes,
    problems,
    ...(extras.length > 0 ? { extras } : {}),
    ...(Object.keys(rough).length > 0 ? { rough } : {}),
  };
  if (mark === '') notes.push('This opening has no mark.');
  if (problems.length === 0) return opening;
  const isProposed = ({ field, question, writing }: Problem) =>
    question === undefined &&
    (changes.proposed.has(field) || (writing !== undefined && changes.isOpen(mannerId(writing.manner))));
  return { ...opening, ...inDoubtAsNull(problems), problems: problems.filter((problem) => !isProposed(problem)) };
}

/** What was answered for the fields of one row. */
class Typed {
  private readonly values: Partial<OpeningInputs> = {};
  private readonly faulty = new Set<OpeningField>();
  private readonly radius: number | null = null;

  constructor(changes: RowChanges, lengths: RowLengths, { unit }: Standards, say: Findings) {
    for (const [key, text] of Object.entries(changes.fields)) {
      // A radius is not an input of its own: it is read as a length like the rise.
      const field = (key === 'radius' ? 'rise' : key) as OpeningField;
      const isChosen = changes.isChosen(key as OpeningField | 'radius');
      const unfit = isChosen && field === 'face' ? lengths.unfitInWords(field, text) : null;
      const read = readField(field, text, unit, isChosen ? lengths.inWords : unit);
      if (unfit !== null) {
        say.problem(field, unfit.fault, unfit.choices);
        this.faulty.add(field);
      } else if (!read.ok) {
        say.problem(field, `${FIELD_KINDS[field].label} was answered by ${quote(text)}: ${read.message}`);
        this.faulty.add(field);
      } else if (key === 'radius') this.radius = read.value as number;
      else Object.assign(this.values, { [field]: read.value });
    }
  }

  has(field: OpeningField): boolean {
    return Object.hasOwn(this.values, field) || this.faulty.has(field);
  }

  value<F extends OpeningField>(field: F): OpeningInputs[F] | null {
    return this.values[field] ?? null;
  }

  /** Puts what was answered in place of every figure that would give the same. */
  into(given: GivenLengths, head: Opening['head']): void {
    if (this.radius !== null) given.radius = { value: this.radius };
    if (head === 'straight' && this.has('head')) {
      delete given.rise;
      delete given.radius;
    }
    const span = this.value('span');
    if (span !== null) {
      given.width = { value: span };
      delete given.roughWidth;
      delete given.diameter;
      if (head === 'round' || head === 'quarter round') {
        delete given.rise;
        delete given.radius;
        delete given.height;
      }
    }
    const rise = this.value('rise');
    // A rise that was taken out is not the list's any more.
    if (this.has('rise') && rise === null) delete given.rise;
    if (rise !== null) {
      given.rise = { value: rise };
      delete given.radius;
      delete given.diameter;
      delete given.springHeight;
      delete given.headHeight;
      delete given.height;
      delete given.roughHeight;
    }
    if (this.has('leg')) delete given.leg;
  }
}

type CountField = 'arcs' | 'segmentsWanted' | 'sides' | 'priceAgreed';

function counted(field: CountField, raw: RawOpening, typed: Typed, say: Findings): number | null {
  if (typed.has(field)) return typed.value(field);
  const [first] = cellsOf(raw, field);
  if (first === undefined) return null;
  const { label } = FIELD_KINDS[field];
  const text = cellText(first.cell);
  const read =
    field === 'sides'
      ? readSides(text)
      : field === 'priceAgreed'
        ? readMoney(label, text)
        : readQuantity(first.cell, label);
  if (read.ok) {
    if (field === 'sides' && read.value === 2 && !/^\d$/.test(text))
      say.problem(field, `Sides cased says ${quote(text)}; are two casings wanted for each opening?`, ['2', '1']);
    return read.value;
  }
  say.problem(field, read.message.replace('you typed', 'the cell says'));
  return null;
}

/** A length that may be left to the shop's standard: null where it is blank or in doubt. */
function orStandard(field: OpeningField, given: Given | undefined, say: Findings): number | null {
  if (given?.fault !== undefined) say.problem(field, given.fault, given.choices);
  return given?.value ?? null;
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
