import * as v from 'valibot';
import { ok, refuse, type Result } from '../result';
import { BLANK_JOB, JOB_FIELDS, type Job, type JobKey } from './fields';
import { withJob } from './readField';

const ENTRIES = v.record(v.string(), v.unknown());
/** Text far longer than any job. */
const MOST_CHARACTERS = 200_000;

/** A job as JSON, one entry a line, for `--job` and for the next offer to the same customer. */
export function jobJson(job: Job): string {
  return JSON.stringify(job, null, 2) + '\n';
}

/**
 * Reads a job kept as JSON, a field's key and value in each entry: `{"customer": "…", "taxRate": 0.0625, "terms": ["…"]}`. What
 * is left out stays blank. Refused, naming `name`: text that isn't such an object, a field there is not, and the first value
 * that can't be used.
 */
export function readJobJson(text: string, name: string): Result<Job> {
  if (text.length > MOST_CHARACTERS)
    return refuse(`"${name}" is too long for a job: at most ${MOST_CHARACTERS} characters.`);
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch (error) {
    return refuse(`"${name}" is not JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
  const entries = Array.isArray(given) ? null : v.safeParse(ENTRIES, given);
  if (!entries?.success) return refuse(`"${name}" must hold an object such as {"customer": "…", "taxRate": 0.0625}.`);
  const unknown = Object.keys(entries.output).find((key) => !JOB_FIELDS.some((field) => field.key === key));
  if (unknown !== undefined)
    return refuse(
      `"${name}" has the field "${unknown}", which a job has not; it has ${JOB_FIELDS.map(({ key }) => key).join(', ')}.`,
    );
  const job = withJob(BLANK_JOB, entries.output as Partial<Record<JobKey, unknown>>);
  return job.ok ? ok(job.value) : refuse(`"${name}": ${job.message}`);
}
