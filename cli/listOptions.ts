import { ok, refuse, type Result } from '../src/result';
import type { Answers } from '../src/schedule/opening';
import type { HowToRead } from '../src/schedule/readSchedule';
import { readBytes } from './files';

/** The options by which a command is told what a list doesn't say itself. */
export const LIST_OPTIONS = {
  sheet: { type: 'string' },
  unit: { type: 'string' },
  unnamed: { type: 'string' },
  answers: { type: 'string' },
} as const;

export const LIST_HELP = `  --sheet NAME        the sheet of a workbook to read; by itself it takes the one that reads most like a schedule
  --unit in|ft|mm|cm  the unit of figures that have none
  --unnamed ask|leave|straight
                      rows that name no head and give no rise: ask about them (by itself), leave them out, straight heads
  --answers FILE.json answers to the questions that --json lists: {"id": "choice"}; "remarks": "as proposed" takes what is
                      proposed for every remark, "rise@12": "6 1/2" gives a figure of row 12
`;

export interface ListValues {
  readonly sheet?: string | undefined;
  readonly unit?: string | undefined;
  readonly unnamed?: string | undefined;
  readonly answers?: string | undefined;
}

/** How a list is to be read. */
export interface ListHow {
  readonly sheet: string | null;
  readonly how: HowToRead;
}

const UNITS = ['in', 'ft', 'mm', 'cm'] as const;
const UNNAMED = ['ask', 'leave', 'straight'] as const;

/** Why the options can't be; null where they can. */
export function unfitListOptions({ unit, unnamed }: ListValues): string | null {
  if (unit !== undefined && !UNITS.some((one) => one === unit))
    return `--unit must be one of ${UNITS.join(', ')}; got "${unit}".`;
  if (unnamed !== undefined && !UNNAMED.some((one) => one === unnamed))
    return `--unnamed must be one of ${UNNAMED.join(', ')}; got "${unnamed}".`;
  return null;
}

export async function readListOptions({ sheet, unit, unnamed, answers }: ListValues): Promise<Result<ListHow>> {
  const given = answers === undefined ? ok({}) : await readAnswers(answers);
  if (!given.ok) return given;
  const ownUnit = UNITS.find((one) => one === unit);
  const ofUnnamed = UNNAMED.find((one) => one === unnamed);
  return ok({
    sheet: sheet ?? null,
    how: {
      answers: given.value,
      ...(ownUnit === undefined ? {} : { unit: ownUnit }),
      ...(ofUnnamed === undefined ? {} : { unnamed: ofUnnamed }),
    },
  });
}

async function readAnswers(path: string): Promise<Result<Answers>> {
  const bytes = await readBytes(path);
  if (!bytes.ok) return bytes;
  let given: unknown;
  try {
    given = JSON.parse(new TextDecoder().decode(bytes.value));
  } catch (error) {
    return refuse(`"${path}" is not JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    return refuse(`"${path}" must hold an object such as {"unit": "mm"}.`);
  const entries = Object.entries(given as Record<string, unknown>);
  const odd = entries.find(([, value]) => typeof value !== 'string' && typeof value !== 'number');
  if (odd !== undefined) return refuse(`"${path}": the answer to "${odd[0]}" must be text or a number.`);
  return ok(Object.fromEntries(entries.map(([id, value]) => [id, String(value)])));
}
