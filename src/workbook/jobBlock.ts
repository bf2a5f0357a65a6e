import { BLANK_JOB, JOB_FIELDS, JOB_GROUPS, jobCellName, type Job, type JobField, type JobKey } from '../job/fields';
import { jobFieldText, withJob } from '../job/readField';
import { ok, refuse, type Result } from '../result';
import type { CellValue, Table } from '../schedule/opening';
import type { Unit } from '../unit';
import type { Cell, Validation } from './sheet';

/** Above the job's fields on the Standards sheet, and how they are found there again. */
export const JOB_HEADING = 'Job at hand';

/** The job's fields as rows of the Standards sheet, the first in row `first`: a value each, named `Job_…` in the workbook. */
export function jobRows(job: Job, unit: Unit, first: number) {
  const rows: (Cell | null)[][] = [[{ value: JOB_HEADING, style: 'group' }]];
  const names: { name: string; ref: string }[] = [];
  const validations: Validation[] = [];
  for (const group of JOB_GROUPS) {
    rows.push([{ value: group, style: 'unit' }]);
    for (const field of (JOB_FIELDS as readonly JobField[]).filter((one) => one.group === group)) {
      const row = first + rows.length;
      rows.push(fieldRow(field, job, unit));
      names.push({ name: jobCellName(field.key as JobKey), ref: `Standards!$B$${row}` });
      if (field.measure === 'choice')
        validations.push({
          range: `B${row}`,
          rule: { kind: 'list', choices: field.choices },
          message: `${field.label} is one of ${field.choices.join(', ')}.`,
        });
    }
  }
  return { rows, names, validations };
}

function fieldRow(field: JobField, job: Job, unit: Unit): Cell[] {
  const value = jobFieldText(job[field.key as JobKey]);
  const wrap = field.measure === 'lines' || field.measure === 'priced' ? { wrap: true } : {};
  const text = (said: string, style: Cell['style'] = 'text'): Cell => ({ value: said, style });
  return [
    text(field.label),
    { value, style: 'input', format: formatOf(field), ...wrap },
    text(''),
    text(unitOf(field, unit)),
    text(field.measure === 'choice' ? field.choices.join(', ') : ''),
    text(jobCellName(field.key as JobKey), 'note'),
    text(field.note, 'note'),
  ];
}

function formatOf({ measure }: JobField): string {
  if (measure === 'percent') return '0.00##%';
  return measure === 'money' || measure === 'moneyPerLength' ? '#,##0.00' : '@';
}

function unitOf({ measure }: JobField, unit: Unit): string {
  if (measure === 'percent') return '%';
  if (measure === 'money') return '$';
  if (measure === 'moneyPerLength') return unit === 'in' ? '$/ft' : '$/m';
  return measure === 'lines' || measure === 'priced' ? 'a line each' : '';
}

/**
 * The job from the Standards sheet as its user may have changed it; blank where the sheet has none. Refused: the first value
 * that can't be used.
 */
export function readJob(table: Table): Result<Job> {
  const given = new Map<JobKey, CellValue>();
  const from = table.rows.findIndex((row) => row[0] === JOB_HEADING);
  if (from < 0) return ok(BLANK_JOB);
  for (const row of table.rows.slice(from + 1)) {
    const field = JOB_FIELDS.find(({ label }) => label === row[0]);
    // The first of its name is the job's: lists below may hold any words.
    if (field && !given.has(field.key)) given.set(field.key, row[1] ?? null);
  }
  const job = withJob(BLANK_JOB, Object.fromEntries(given));
  return job.ok ? job : refuse(`${table.name}: ${job.message}`);
}
