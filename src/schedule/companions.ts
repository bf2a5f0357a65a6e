import type { Standards } from '../standards';
import { readField } from './answerField';
import { FIELD_KINDS, FIELDS } from './fieldKinds';
import { quote } from './figure';
import type { RowChanges } from './changes';
import type { Opening, OpeningField, OpeningInputs, Problem } from './opening';

/*
 * Rows that stand behind an opening and come of the same source row: straight molding of its casing, a mull casing, the middle ones
 * of three heads. Each is named by a place of its own (`12.2`), so that what is answered for it doesn't change the opening, and says
 * of what it shares with the opening that it is asked there.
 */

/** A companion at its place, 2 being the first behind the opening, with what was answered for it alone. */
export function atItsPlace(companion: Opening, place: number, changes: RowChanges, { unit }: Standards): Opening {
  const { raw } = changes;
  const at = `${raw.at}.${place}`;
  const inputs: Partial<OpeningInputs> = {};
  const faults: Problem[] = [];
  for (const field of FIELDS) {
    const text = changes.answerAt(field, at);
    if (text === null) continue;
    const read = readField(field, text, unit);
    if (read.ok) Object.assign(inputs, { [field]: read.value });
    else {
      const message = `${FIELD_KINDS[field].label} was answered by ${quote(text)}: ${read.message}`;
      faults.push({ row: raw.row, field, message, at });
    }
  }
  const isAnswered = (field: OpeningField) =>
    Object.hasOwn(inputs, field) || faults.some((fault) => fault.field === field);
  const open = companion.problems.filter(({ field, question }) => question !== undefined || !isAnswered(field));
  return { ...companion, ...inputs, at, problems: [...open, ...faults] };
}

/** A problem of the opening in one of its companions: it is asked, and answered, with the opening. */
export function askedWith(raw: RowChanges['raw'], problem: Problem): Problem {
  return problem.question === undefined ? { ...problem, question: `${problem.field}@${raw.at}` } : problem;
}
