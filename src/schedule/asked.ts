import type { Extra } from '../extras';
import { quote } from './figure';
import type { Answers, OpeningField, Problem, Question } from './opening';

/*
 * How anything in a list is asked about. A reader that goes through rows calls `RowChanges.ask(draft)`: what was answered is done to
 * the row, and what was not stays open as a problem of `draft.field`, so that the row isn't priced. Another room that knows of a row
 * what this one can't (a page on which a mark may read W3 or WS) puts its drafts into `Table.asks`, by the row's number; they are
 * asked as any other. An id must be the same for the same table read again, and names a row by `:12` where it is of that row alone;
 * rows asked by the same id have one answer, which `id@12` overrules for one of them.
 */

/** So many units of the listed width, mulled: under one head, or a head over each with a mull casing between. */
export interface Together {
  readonly units: number;
  readonly heads: 'one' | 'each';
}

/** One answer a question can have, and what follows from it for a row. */
export interface Choice {
  readonly label: string;
  /** Two rows as they would read by this answer. */
  readonly example?: string;
  /** Values for the row, as they could be typed; `radius` is not one of the opening's own. */
  readonly set?: Readonly<Partial<Record<OpeningField | 'radius', string>>>;
  /** What goes with each opening, at the shop's price list. */
  readonly extras?: readonly Extra[];
  /** Straight molding of the same profile besides, as a column of it would say: `40 ft`, `2 @ 96`. */
  readonly straight?: string;
  /** Units that stand side by side. */
  readonly together?: Together;
  /** The row is no opening of this job. */
  readonly leaveOut?: boolean;
}

/** The row is no opening of this job. */
export const LEAVE_OUT: Choice = { label: 'leave out', leaveOut: true };
/** Nothing changes. */
export const AS_LISTED: Choice = { label: 'priced as listed' };

export interface Draft {
  readonly id: string;
  readonly about: string;
  readonly text: string;
  /** The text without its examples, where each choice has its own. */
  readonly lead?: string;
  /** The proposed one first. */
  readonly choices: readonly Choice[];
  /** What of an opening stays unknown until it is answered. */
  readonly field: OpeningField;
}

/** Where a row stands: its number, and a letter from the second opening of the same row on. */
export interface RowAt {
  readonly row: number;
  readonly at: string;
}

/** The answers that were given, and the questions that are still open. */
export class Asked {
  private readonly drafts = new Map<string, Draft>();
  private readonly byRow = new Map<string, string>();
  private readonly whole = new Map<string, string>();
  private readonly used = new Set<string>();
  private readonly keys = new Map<string, string>();
  /** Of what remarks may mean, all that is proposed was taken. */
  private asProposed = false;
  /** What of the answers could not be used. */
  readonly refused: string[] = [];

  constructor(answers: Answers) {
    for (const [key, answer] of Object.entries(answers)) {
      // Never what every opening's own remarks are to be.
      if (key.toLowerCase() === 'remarks') {
        this.takeAsProposed(answer);
        continue;
      }
      const at = key.lastIndexOf('@');
      const rows = at < 0 ? null : rowsOf(key.slice(at + 1));
      if (rows === null) this.whole.set(key.toLowerCase(), answer);
      for (const row of rows ?? []) {
        const id = `${key.slice(0, at).toLowerCase()}@${row}`;
        this.byRow.set(id, answer);
        this.keys.set(id, key);
      }
    }
  }

  /** The text given for a question of one row, or for all its rows; null where there is none. */
  answer(id: string, raw?: RowAt): string | null {
    if (this.whole.size === 0 && this.byRow.size === 0) return null;
    const key = id.toLowerCase();
    const given = raw === undefined ? null : this.ofOne(key, raw.at);
    if (given !== null) return given;
    const all = this.whole.get(key);
    if (all !== undefined) this.used.add(key);
    return all ?? null;
  }

  /** The text given for a question of the row at this place alone. */
  ofOne(id: string, at: string): string | null {
    const own = `${id.toLowerCase()}@${at}`;
    const given = this.byRow.get(own);
    if (given === undefined) return null;
    this.used.add(this.keys.get(own) ?? '');
    return given;
  }

  /** Whether the row itself was answered for, not only all rows of the question. */
  isOwn(id: string, { at }: RowAt): boolean {
    return this.byRow.has(`${id.toLowerCase()}@${at}`);
  }

  /** What was chosen for the row; null, and the question stands, where nothing was. */
  choose(draft: Draft, raw: RowAt): Choice | null {
    const given = this.answer(draft.id, raw) ?? this.proposed(draft);
    if (given === null) return this.open(draft);
    const wanted = plain(given);
    const chosen = draft.choices.find(({ label }) => plain(label) === wanted);
    if (chosen !== undefined) return chosen;
    const accepted = draft.choices.map(({ label }) => quote(label)).join(' or ');
    this.refuse(`The answer ${quote(given)} to ${quote(draft.id)} is not one of ${accepted}.`);
    return this.open(draft);
  }

  private takeAsProposed(given: string): void {
    if (plain(given) === 'as proposed') this.asProposed = true;
    else this.refuse(`The answer ${quote(given)} to "remarks" is not "as proposed".`);
  }

  private proposed({ about, choices }: Draft): string | null {
    return this.asProposed && about === 'remarks' ? (choices[0]?.label ?? null) : null;
  }

  refuse(sentence: string): void {
    if (!this.refused.includes(sentence)) this.refused.push(sentence);
  }

  private open(draft: Draft): null {
    if (!this.drafts.has(draft.id)) this.drafts.set(draft.id, draft);
    return null;
  }

  /** The answers that answered nothing. */
  unused(): readonly string[] {
    const rows = [...new Set(this.keys.values())].filter((key) => !this.used.has(key));
    return [...[...this.whole.keys()].filter((key) => !this.used.has(key)), ...rows];
  }

  /** Every open question with its rows: those of the list in the order they came up, then those of rows, alike ones as one. */
  questions(openings: readonly { readonly at: string; readonly problems: readonly Problem[] }[]): readonly Question[] {
    const rows = new Map<string, Set<number>>();
    const single = new Map<string, { problem: Problem; id: string; at: string[]; rows: number[] }>();
    for (const { at: own, problems } of openings)
      for (const problem of problems) {
        const at = problem.at ?? own;
        const id = problem.question ?? problem.field;
        if (this.drafts.has(id)) {
          const there = rows.get(id);
          if (there) there.add(problem.row);
          else rows.set(id, new Set([problem.row]));
          continue;
        }
        // What a companion shares with its opening is asked with the opening.
        if (problem.question !== undefined) continue;
        const alike = `${id}\n${problem.message}`;
        const there = single.get(alike);
        if (there === undefined) single.set(alike, { problem, id, at: [at], rows: [problem.row] });
        else if (there.at.at(-1) !== at) {
          there.at.push(at);
          there.rows.push(problem.row);
        }
      }
    const ofList = [...this.drafts.values()].flatMap(({ id, about, text, lead, choices }): Question[] => {
      const asked = rows.get(id);
      if (asked === undefined) return [];
      const question = { id, rows: [...asked], about, text, choices: choices.map(({ label }) => label) };
      return [
        lead === undefined ? question : { ...question, lead, examples: choices.map(({ example = '' }) => example) },
      ];
    });
    const ofRows = [...single.values()].map(({ problem, id, at, rows: asked }): Question => ({
      id: `${id}@${inRanges(at)}`,
      rows: asked,
      about: problem.field,
      field: problem.field,
      text: problem.message,
      choices: problem.choices ?? [],
    }));
    return [...ofList, ...ofRows];
  }
}

/** The id of a question about what a list says: never with an `@` of its own, which parts an id from rows. */
export function idOf(kind: string, said: string): string {
  return `${kind}:${said.replace(/\s*@\s*/g, ' at ')}`;
}

/** The rows that a question or an answer of single rows names (`head@12-14`: 12, 13 and 14) and what of them; null for any other. */
export function rowsNamed(id: string): { readonly of: string; readonly rows: readonly string[] } | null {
  const at = id.lastIndexOf('@');
  const rows = at < 0 ? null : rowsOf(id.slice(at + 1));
  return rows === null ? null : { of: id.slice(0, at), rows };
}

function plain(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/g, ' ');
}

/** `12`, `12b`, `12.2`, `12-14,18` → each row; null for anything else. */
function rowsOf(text: string): readonly string[] | null {
  const rows: string[] = [];
  for (const part of text.split(',')) {
    const range = /^\s*(\d{1,7})(?:-(\d{1,7})|([b-z]?(?:\.[1-9])?))?\s*$/.exec(part);
    if (range === null) return null;
    const [, from = '', to, letter] = range;
    if (to === undefined) rows.push(from + (letter ?? ''));
    else if (Number(to) < Number(from) || Number(to) - Number(from) > 200_000) return null;
    else for (let row = Number(from); row <= Number(to); row += 1) rows.push(String(row));
  }
  return rows;
}

function inRanges(at: readonly string[]): string {
  const parts: string[] = [];
  for (let index = 0; index < at.length; index += 1) {
    const from = at[index] ?? '';
    let last = index;
    while (/^\d+$/.test(at[last] ?? '') && at[last + 1] === String(Number(at[last]) + 1)) last += 1;
    parts.push(last > index ? `${from}-${at[last]}` : from);
    index = last;
  }
  return parts.join(',');
}
