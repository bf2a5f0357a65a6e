import type { Job, JobField, JobKey } from '../../../src/job/fields';
import { ok, refuse, type Result } from '../../../src/result';
import { takeoff, type Takeoff } from '../../../src/takeoff/takeoff';
import { withPoint } from '../format';
import { fail, tell, work, type Bench } from './bench';
import { download, downloadBytes } from './download';
import { lookForSheets } from './fill';
import { loadShop } from './shop';

const KEY = 'archwright.job';
const FILE_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** The job of this workbook: from its Standards sheet, else what was kept with it. Gives false where that fails, which is told. */
export async function loadJob(bench: Bench): Promise<boolean> {
  const read = await jobOf(bench);
  if (!read.ok) {
    fail(bench, read.message);
    return false;
  }
  bench.store.send({ type: 'job set', job: read.value });
  return true;
}

async function jobOf(bench: Bench): Promise<Result<Job>> {
  const sheet = await bench.host.readSheet('Standards');
  if (!sheet.ok) return sheet;
  const { JOB_HEADING, readJob } = await import('../../../src/workbook/jobBlock');
  if (sheet.value?.rows.some((row) => row[0] === JOB_HEADING)) return readJob(sheet.value);
  const kept = await bench.host.readSetting(KEY);
  if (!kept.ok) return kept;
  if (kept.value === null) return ok(bench.store.get().job);
  const { readJobJson } = await import('../../../src/job/jobJson');
  return readJobJson(kept.value, 'The job kept in this workbook');
}

/** One field as typed; kept in the workbook, and on its Standards sheet where there is one. */
export async function setJobField(bench: Bench, field: JobField, typed: string): Promise<Result<void>> {
  const { jobFieldText, withJob } = await import('../../../src/job/readField');
  const isAmount = field.measure === 'money' || field.measure === 'moneyPerLength' || field.measure === 'percent';
  const given = isAmount ? asShare(field, withPoint(typed, bench.options.locale)) : typed;
  const next = withJob(bench.store.get().job, { [field.key]: given } as Partial<Record<JobKey, unknown>>);
  if (!next.ok) return next;
  const written = await putOnSheet(bench, field, jobFieldText(next.value[field.key as JobKey]));
  return written.ok ? takeJob(bench, next.value) : written;
}

/** A share is typed as a percentage, with its sign or without. */
function asShare({ measure }: JobField, typed: string): string {
  return measure === 'percent' && typed.trim() !== '' && !typed.includes('%') ? `${typed}%` : typed;
}

async function putOnSheet(bench: Bench, { label }: JobField, value: string | number): Promise<Result<void>> {
  const sheet = await bench.host.readSheet('Standards');
  if (!sheet.ok) return sheet;
  if (sheet.value === null) return ok(undefined);
  const { JOB_HEADING } = await import('../../../src/workbook/jobBlock');
  const { rows, firstRow } = sheet.value;
  const from = rows.findIndex((row) => row[0] === JOB_HEADING);
  const at = from < 0 ? -1 : rows.findIndex((row, index) => index > from && row[0] === label);
  return at < 0 ? ok(undefined) : bench.host.writeCells('Standards', `B${firstRow + at}`, [[value]], true);
}

async function takeJob(bench: Bench, job: Job): Promise<Result<void>> {
  bench.store.send({ type: 'job set', job });
  const { jobJson } = await import('../../../src/job/jobJson');
  return bench.host.saveSetting(KEY, jobJson(job));
}

export async function saveJobFile(bench: Bench): Promise<void> {
  const { jobJson } = await import('../../../src/job/jobJson');
  download(bench, [{ name: 'job.json', content: jobJson(bench.store.get().job), type: 'application/json' }]);
}

export function loadJobFile(bench: Bench, file: File): Promise<void> {
  return work(bench, `Reading ${file.name}`, async () => {
    const [{ readJobJson }, { JOB_FIELDS }, { jobFieldText }] = await Promise.all([
      import('../../../src/job/jobJson'),
      import('../../../src/job/fields'),
      import('../../../src/job/readField'),
    ]);
    const read = readJobJson(await file.text(), file.name);
    if (!read.ok) return fail(bench, read.message);
    for (const field of JOB_FIELDS) {
      const written = await putOnSheet(bench, field, jobFieldText(read.value[field.key]));
      if (!written.ok) return fail(bench, written.message);
    }
    const kept = await takeJob(bench, read.value);
    if (!kept.ok) return fail(bench, kept.message);
    tell(bench, 'This job holds now.');
  });
}

/**
 * The takeoff at hand: the workbook's own rows as they stand, priced by its own plan of boards; where it is not filled yet, the
 * chosen list.
 */
export async function takeoffAtHand(bench: Bench): Promise<Result<Takeoff>> {
  if (!(await loadShop(bench))) return refuse('The standards of this workbook can’t be read.');
  const { schedule, standards } = bench.store.get();
  const sheet = await bench.host.readSheet('Takeoff');
  if (!sheet.ok) return sheet;
  const { openingsOfTakeoff } = await import('../../../src/workbook/takeoff/openings');
  const openings = sheet.value === null ? null : openingsOfTakeoff(sheet.value, standards.unit);
  if (openings !== null) {
    const stock = await bench.host.readSheet('Stock');
    const { factorsIn } = await import('../../../src/workbook/planBlock');
    return stock.ok ? ok(takeoff(openings, standards, { factors: factorsIn(stock.value) })) : stock;
  }
  if (!schedule) return refuse('Choose the list of openings first, and fill the workbook.');
  const { planTakeoff } = await import('../../../src/takeoff/planned');
  return ok(planTakeoff(takeoff(schedule.openings, standards)).taken);
}

/** Writes the Proposal sheet. Gives true where one stands already and has to be asked about. */
export async function writeProposal(bench: Bench, replace: boolean): Promise<boolean> {
  const held = await lookForSheets(bench);
  if (!held.ok) {
    fail(bench, held.message);
    return false;
  }
  if (!held.value.includes('Takeoff')) {
    fail(bench, 'Fill the workbook first: the amounts of the proposal follow its Takeoff.');
    return false;
  }
  if (held.value.includes('Proposal') && !replace) return true;
  await work(bench, 'Writing the Proposal sheet', async () => {
    const taken = await takeoffAtHand(bench);
    if (!taken.ok) return fail(bench, taken.message);
    if (!(await loadJob(bench))) return;
    const { liveProposalSheet } = await import('../../../src/workbook/workbook');
    const { job } = bench.store.get();
    const sheet = liveProposalSheet(taken.value, job);
    const written = await bench.host.writeSheets([sheet], { replace: ['Proposal'] });
    if (!written.ok) return fail(bench, written.message);
    const drawings =
      job.drawings === 'shown' ? ' Its drawings stand in the file that Save the proposal alone gives.' : '';
    tell(bench, `The Proposal sheet is written; its amounts follow the takeoff.${drawings}`);
  });
  return false;
}

/** The file that goes to the customer: the proposal and nothing else. */
export function saveProposalAlone(bench: Bench): Promise<void> {
  return work(bench, 'Making the proposal', async () => {
    const taken = await takeoffAtHand(bench);
    if (!taken.ok) return fail(bench, taken.message);
    if (!(await loadJob(bench))) return;
    const [{ proposalFrom }, { proposalDrawings }, { proposalSheet }, { writeXlsx }] = await Promise.all([
      import('../../../src/job/offered'),
      import('../../../src/workbook/proposal/drawings'),
      import('../../../src/workbook/proposal/sheet'),
      import('../../../src/workbook/xlsx'),
    ]);
    const proposal = proposalFrom(taken.value, bench.store.get().job);
    const bytes = writeXlsx([proposalSheet(proposal, null, proposalDrawings(proposal, taken.value))]);
    if (!bytes.ok) return fail(bench, bytes.message);
    downloadBytes(bench, 'proposal.xlsx', new Uint8Array(bytes.value), FILE_TYPE);
    tell(bench, 'proposal.xlsx holds the proposal alone: no cost, no margin, no setting.');
  });
}
