import * as v from 'valibot';
import type { OnHand } from './onHand';
import { ok, refuse, type Result } from './result';
import { defaultStandards, isNotSet, SETTINGS, withSettings, type SettingKey, type Standards } from './standards';
import type { Unit } from './unit';

const size = v.pipe(v.number(), v.finite(), v.gtValue(0));
const STOCK = v.array(
  v.strictObject({
    species: v.pipe(v.string(), v.trim(), v.nonEmpty()),
    quarters: size,
    thickness: size,
    width: size,
    length: size,
    pricePerBoardFoot: v.pipe(v.number(), v.finite(), v.minValue(0)),
    onHand: v.optional(v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0))), null),
  }),
);

const ON_HAND: v.GenericSchema<unknown, OnHand[]> = v.array(
  v.variant('kind', [
    v.strictObject({
      ...{ kind: v.picklist(['knife', 'new knife']), profile: v.pipe(v.string(), v.trim(), v.nonEmpty()) },
      ...{ face: size, thickness: size, insideRadius: v.optional(v.null(), null) },
      depth: v.exactOptional(v.nullable(size)),
      passes: v.exactOptional(v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1)))),
      charge: v.exactOptional(v.nullable(v.pipe(v.number(), v.finite(), v.minValue(0)))),
    }),
    v.strictObject({
      ...{
        kind: v.literal('guides'),
        profile: v.pipe(v.string(), v.trim(), v.nonEmpty()),
        face: size,
        thickness: size,
      },
      insideRadius: size,
    }),
  ]),
);

/**
 * The shop's settings and lists as JSON, one entry a line, for the next job and for `--standards`. A setting of the machine that
 * is not set yet is left out, so that it isn't set by reading it back.
 */
export function standardsJson(standards: Standards): string {
  const { notSet: _, ...kept } = standards;
  const given = Object.entries(kept).filter(([key]) => !isNotSet(standards, key as SettingKey));
  return JSON.stringify(Object.fromEntries(given), null, 2) + '\n';
}

/**
 * Reads settings kept as JSON, a setting's key and value in each entry: `{"reveal": 0.25, "stock": […]}`. What is left out
 * stays the default of the unit. Refused, naming `name`: text that isn't such an object, a setting there is not, and the
 * first value outside its limits.
 */
export function readStandardsJson(text: string, name: string): Result<Standards> {
  if (isDeep(text)) return refuse(`"${name}" nests its values more than ${DEEPEST} deep; settings need 3.`);
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch (error) {
    return refuse(`"${name}" is not JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    return refuse(`"${name}" must hold an object such as {"reveal": 0.25}.`);
  }
  const { stock, onHand, ...settings } = given as Record<string, unknown>;
  const unknown = Object.keys(settings).find((key) => !SETTINGS.some((setting) => setting.key === key));
  if (unknown === 'setupMinutes')
    return refuse(`"${name}" has the setting "setupMinutes": give the minutes as "knifeChange" and "guideChange".`);
  if (unknown !== undefined) return refuse(`"${name}" has the setting "${unknown}", which there is not.`);
  const standards = withDefaults(settings);
  if (!standards.ok) return refuse(`"${name}": ${standards.message}`);
  const boards = readList(stock, STOCK, standards.value.stock, `"${name}" has a stock list`);
  if (!boards.ok) return boards;
  const owned = readList(onHand, ON_HAND, standards.value.onHand, `"${name}" has a list of what is on hand`);
  if (!owned.ok) return owned;
  return ok({ ...standards.value, stock: boards.value, onHand: owned.value });
}

function readList<T>(
  given: unknown,
  schema: v.GenericSchema<unknown, T[]>,
  otherwise: readonly T[],
  said: string,
): Result<readonly T[]> {
  if (given === undefined) return ok(otherwise);
  const read = v.safeParse(schema, given);
  if (read.success) return ok(read.output);
  const [issue] = read.issues;
  return refuse(`${said} that can't be used at ${v.getDotPath(issue) ?? 'its top'}: ${issue.message}.`);
}

const DEEPEST = 20;

/** Whether brackets outside texts stand deeper than any settings do; character by character, as a text may be of any length. */
function isDeep(text: string): boolean {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (inText) {
      if (character === '\\') at += 1;
      else if (character === '"') inText = false;
    } else if (character === '"') inText = true;
    else if (character === '[' || character === '{') depth += 1;
    else if (character === ']' || character === '}') depth -= 1;
    if (depth > DEEPEST) return true;
  }
  return false;
}

/** The unit decides the defaults of everything that is not given. */
function withDefaults(settings: Partial<Record<SettingKey, unknown>>): Result<Standards> {
  const unit: Unit = settings.unit === 'mm' ? 'mm' : 'in';
  return withSettings(defaultStandards(unit), settings);
}
