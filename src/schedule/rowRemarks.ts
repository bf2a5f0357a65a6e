import type { Extra } from '../extras';
import { idOf } from './asked';
import type { RowChanges } from './changes';
import { extrasOfColumns } from './extraCells';
import { quote } from './figure';
import { CHANGES_NOTHING, REMARK_MEANINGS } from './remarkMeanings';
import { readRemarks } from './remarks';
import { readQuantity } from './readQuantity';
import { cellsOf } from './rowCells';
import { straightMarks } from './straightMarks';

/** A period ends a clause, but not one of "No. 1". */
const CLAUSE = /[;\n]|(?<!\bno)\.(?=\s|$)|,(?=\s)|\s[-–—]\s/i;
/** Longer remarks are looked at as far as this. */
const LONGEST_TEXT = 2000;

/**
 * Asks about everything in a row's remarks that may change what is bought; `where` is the heading of a column that nothing else is
 * read from. A remark that changes nothing ("verify in field") is carried along and asks nothing.
 */
export function askRemarks(changes: RowChanges, text: string, where: string | null): void {
  const plain = straightMarks(text.slice(0, LONGEST_TEXT)).replace(/\s+/g, ' ');
  if (!/[a-z\d?]/i.test(plain)) return;
  for (const clause of plain.split(CLAUSE)) {
    const left = clause.replace(CHANGES_NOTHING, ' ').trim();
    if (left === '' || isFact(left) || changes.wasAsked(idOf('withdrawn', left.toLowerCase()))) continue;
    askClause(changes, left, where);
  }
}

/** A clause that names a head or how the arc ends and nothing else: the row's reader makes a fact of it. */
function isFact(clause: string): boolean {
  const { head, ends, legsToFloor } = readRemarks(clause);
  return head !== null || ends !== null || legsToFloor;
}

function askClause(changes: RowChanges, clause: string, where: string | null): void {
  let rest = clause;
  for (const { pattern, means, choices } of REMARK_MEANINGS) {
    const match = pattern.exec(rest);
    if (match === null) continue;
    const offered = choices(match);
    if (offered === null) continue;
    rest = `${rest.slice(0, match.index)} ${rest.slice(match.index + match[0].length)}`;
    if (isSaidAlready(changes, offered[0]?.set) || isCounted(changes, offered[0]?.extras)) continue;
    const said = where === null ? 'The remarks say' : `The column ${quote(where)} says`;
    changes.ask({
      id: idOf('remark', clause.toLowerCase().slice(0, 60)),
      about: 'remarks',
      text: `${said} ${quote(clause)}, which may mean ${means}.`,
      choices: offered,
      field: 'quantity',
    });
    return;
  }
}

/** The columns count every extra that the remark names: theirs are the counts. */
function isCounted({ raw }: RowChanges, extras: readonly Extra[] | undefined): boolean {
  const { extras: counted } = extrasOfColumns(raw);
  return extras !== undefined && extras.every(({ kind }) => counted.some((one) => one.kind === kind));
}

/** The columns say the same: nothing to ask. */
function isSaidAlready({ raw }: RowChanges, set: Readonly<Record<string, string>> | undefined): boolean {
  if (set === undefined) return false;
  const { quantity, species, sides } = set;
  if (quantity !== undefined) {
    const [first] = cellsOf(raw, 'quantity');
    const count = first === undefined ? null : readQuantity(first.cell);
    return count?.ok === true && count.value === Number(quantity);
  }
  const word = species ?? sides;
  if (word === undefined) return false;
  const [own] = cellsOf(raw, species === undefined ? 'sides' : 'species');
  return own !== undefined && String(own.cell).trim().toLowerCase() === word.toLowerCase();
}
