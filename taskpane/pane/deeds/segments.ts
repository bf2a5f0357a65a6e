import { wantedBy, type SegmentSavings } from '../../../src/takeoff/segmentChange';
import type { Table } from '../../../src/schedule/opening';
import { refuse, ok, type Result } from '../../../src/result';
import { columnLetters } from '../../../src/workbook/address';
import { isTakeoffHeading, placesIn, planState, readTakeoff } from '../../../src/workbook/takeoff/read';
import { count } from '../format';
import { fail as failed, tell, work, type Bench } from './bench';
import { planInputs } from './plans';

/** Numbers of segments that cost less, and the rows that they were found for. */
export interface SegmentProposals {
  readonly savings: SegmentSavings;
  readonly rows: Table['rows'];
}

const WHAT = 'Trying other numbers of segments';
const CHANGED = 'The Takeoff was changed meanwhile: look for other numbers of segments again.';

/** Other numbers of segments that cost less, which Stock names from now on; undefined where they can't be told, which is told. */
export function findSegments(bench: Bench): Promise<SegmentProposals | undefined> {
  return work(
    bench,
    WHAT,
    async (signal) => {
      const { host, core, store } = bench;
      const fail = (message: string) => {
        failed(bench, message);
        return undefined;
      };
      const takeoff = await currentTakeoff(bench);
      if (!takeoff.ok) return fail(takeoff.message);
      const given = await planInputs(bench, takeoff.value);
      if (!given.ok) return fail(given.message);
      const made = await core.renewPlan({ ...given.value.inputs, savings: true }, signal, (done, of) =>
        store.send({ type: 'working', work: { what: WHAT, done, of, canStop: true } }),
      );
      if (!made.ok) return fail(made.message);
      const after = await host.readSheet('Takeoff');
      if (!after.ok) return fail(after.message);
      if (!isSame(after.value, takeoff.value.rows)) return fail(CHANGED);
      const { sheets, savings } = made.value;
      const stock = sheets.filter(({ name }) => name === 'Stock');
      const written = await host.writeSheets(stock, { replace: ['Stock'], quiet: true, signal });
      if (!written.ok) return fail(written.message);
      return { savings: savings!, rows: takeoff.value.rows };
    },
    true,
  );
}

/** Writes the numbers proposed as segments wanted, as if somebody had typed them. Gives whether they are written. */
export async function takeSegments(bench: Bench, { savings, rows }: SegmentProposals): Promise<boolean> {
  const taken = await work(bench, 'Writing the segments wanted', async () => {
    const takeoff = await currentTakeoff(bench);
    const blocks = !takeoff.ok
      ? takeoff
      : isSame(takeoff.value, rows)
        ? segmentCells(takeoff.value, wantedBy(savings.changes))
        : refuse(CHANGED);
    const written = blocks.ok ? await bench.host.overwrite('Takeoff', blocks.value) : blocks;
    if (!written.ok) {
      failed(bench, written.message);
      return false;
    }
    const marks = savings.changes.flatMap((change) => change.marks);
    tell(bench, `Segments wanted are written for ${count(marks.length, 'opening')}: ${marks.join(', ')}.`);
    return true;
  });
  return taken ?? false;
}

/** The filled Takeoff, whose plan is made from its rows as they stand. */
async function currentTakeoff({ host }: Bench): Promise<Result<Table>> {
  const takeoff = await host.readSheet('Takeoff');
  if (!takeoff.ok) return takeoff;
  if (takeoff.value === null) return refuse('Fill the workbook first: segments are planned from its rows.');
  const older = planState(takeoff.value);
  if (older !== '') return refuse(`${older} Bring it up to date, then other numbers of segments can be looked for.`);
  return ok(takeoff.value);
}

function isSame(takeoff: Table | null, rows: Table['rows']): boolean {
  return takeoff !== null && JSON.stringify(takeoff.rows) === JSON.stringify(rows);
}

/** The cells of segments wanted, by the number of each opening: rows may stand in any order. */
function segmentCells(takeoff: Table, wanted: ReadonlyMap<number, number>) {
  const headings = takeoff.rows.find(isTakeoffHeading) ?? [];
  const column = placesIn(headings).get('segmentsWanted') ?? -1;
  if (column < 0) return refuse('The Takeoff has no column “Segments wanted”: fill the workbook again.');
  const rows = readTakeoff(takeoff, null, 'in') ?? [];
  return ok(
    rows.flatMap(({ no, sheetRow }) => {
      const segments = wanted.get(no);
      return segments === undefined ? [] : [{ address: `${columnLetters(column)}${sheetRow}`, rows: [[segments]] }];
    }),
  );
}
