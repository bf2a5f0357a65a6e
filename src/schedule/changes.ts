import type { Extra } from '../extras';
import type { Asked, Choice, Draft, Together } from './asked';
import type { ColumnUnit } from './columnUnit';
import { FIELDS } from './fieldKinds';
import type { Opening, OpeningField, Problem } from './opening';
import type { RawOpening } from './rowCells';

/** A row of the list as it reads so far. */
export interface Read {
  readonly changes: RowChanges;
  readonly opening: Opening;
}

/** What answers make of a row, and what of it is still asked. */
export class RowChanges {
  readonly fields: Partial<Record<OpeningField | 'radius', string>> = {};
  /** Those of them that follow from a choice: their bare lengths are in the unit of the row's own words. */
  private readonly chosen = new Set<OpeningField | 'radius'>();
  readonly open: Problem[] = [];
  /** Fields for which an open question proposes a value: what the row lacks of them is asked once. */
  readonly proposed = new Set<OpeningField>();
  private readonly ids = new Set<string>();
  readonly notes: string[] = [];
  /** What was confirmed to go with it. */
  readonly extras: Extra[] = [];
  /** Straight molding of its profile besides, as confirmed; null: none. */
  straight: string | null = null;
  /** What is known of its high side, in words that go with its remarks; null: nothing. */
  hand: string | null = null;
  /** Units that stand side by side, as answered. */
  together: Together | null = null;
  /** Which choice was answered for figures that are written in a manner of the list. */
  readonly manners = new Map<string, number>();
  /** The unit of its figures without one, where that is not the list's. */
  unit: ColumnUnit | null = null;
  /** Why the row is no opening of this job; null where it is one. */
  leftOut: string | null = null;

  constructor(
    readonly raw: RawOpening,
    private readonly asked: Asked,
  ) {
    for (const field of FIELDS) {
      const typed = asked.answer(field, raw);
      if (typed !== null) this.fields[field] = typed;
    }
  }

  /** Whether this row itself was answered for. */
  isOwn(id: string): boolean {
    return this.asked.isOwn(id, this.raw);
  }

  /** Whether this question came up for the row. */
  wasAsked(id: string): boolean {
    return this.ids.has(id);
  }

  /** Whether this question was asked for the row and is not answered. */
  isOpen(id: string): boolean {
    return this.open.some(({ question }) => question === id);
  }

  /** What was answered for a field of the row at this place alone. */
  answerAt(field: OpeningField, at: string): string | null {
    return this.asked.ofOne(field, at);
  }

  /** Whether the field follows from a choice, in the words of the list. */
  isChosen(field: OpeningField | 'radius'): boolean {
    return this.chosen.has(field);
  }

  private choose(field: OpeningField | 'radius', text: string): void {
    if (this.fields[field] !== undefined) return;
    this.fields[field] = text;
    this.chosen.add(field);
  }

  /** Asks what only the user can say of the row; what was answered is done to it. */
  ask(draft: Draft): Choice | null {
    this.ids.add(draft.id);
    const chosen = this.asked.choose(draft, this.raw);
    if (chosen === null) {
      const { field, text: message, id: question, choices } = draft;
      for (const { set = {} } of choices)
        for (const key of Object.keys(set)) this.proposed.add((key === 'radius' ? 'rise' : key) as OpeningField);
      this.open.push({ row: this.raw.row, field, message, question, choices: choices.map(({ label }) => label) });
      return null;
    }
    // A figure that somebody gave for this very row stands above what follows from an answer for many.
    for (const [field, text] of Object.entries(chosen.set ?? {})) this.choose(field as OpeningField, text);
    if (chosen.straight !== undefined) this.straight ??= chosen.straight;
    if (chosen.together) this.together = chosen.together;
    for (const extra of chosen.extras ?? [])
      if (!this.extras.some(({ kind }) => kind === extra.kind)) this.extras.push(extra);
    if (chosen.leaveOut) this.leftOut ??= draft.text;
    else this.notes.push(`${draft.text} Answered: ${chosen.label}.`);
    return chosen;
  }
}
