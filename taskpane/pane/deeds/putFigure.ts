import { fail, tell, work, type Bench } from './bench';

/** A figure that was to go into a cell that already holds something. */
export interface Waiting {
  readonly sheet: string;
  readonly address: string;
  readonly holds: string;
  readonly content: string | number;
}

/** Puts a figure or `=…` into the selected cell. A filled cell is written over only when asked. */
export function putInCell(bench: Bench, content: string | number): Promise<Waiting | null | undefined> {
  return work(bench, 'Writing the cell', async () => {
    const at = await bench.host.cellAt();
    if (!at.ok) return refused(bench, at.message);
    const { sheet, address, formula, value } = at.value;
    if (formula !== '' || (value !== null && value !== '')) {
      return { sheet, address, holds: formula === '' ? String(value) : formula, content };
    }
    return write(bench, { sheet, address, holds: '', content }, false);
  });
}

export function putOver(bench: Bench, waiting: Waiting): Promise<null | undefined> {
  return work(bench, 'Writing the cell', () => write(bench, waiting, true));
}

async function write(bench: Bench, { sheet, address, content }: Waiting, replace: boolean): Promise<null> {
  const written = await bench.host.writeCells(sheet, address, [[content]], replace);
  if (!written.ok) return refused(bench, written.message);
  tell(bench, `Written into ${sheet}, cell ${address}.`);
  return null;
}

function refused(bench: Bench, message: string): null {
  fail(bench, message);
  return null;
}
