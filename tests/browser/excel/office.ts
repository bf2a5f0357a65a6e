import type { FromWorker } from '../../../taskpane/pane/build/parts';
import { FakeWorkbook } from '../../excel/fakeExcel';

type Sheets = NonNullable<ConstructorParameters<typeof FakeWorkbook>[0]>;

/** The strict fake of Excel behind Microsoft's code in the page, which the test reaches as `fakeBook`. */
declare global {
  var sheetsAtStart: Sheets;
  var fakeBook: FakeWorkbook;
  /** Does something to the workbook before the first sync for which `when` holds; the sync waits for it. */
  var beforeSync: (when: (book: FakeWorkbook) => boolean, act: (book: FakeWorkbook) => void | Promise<void>) => void;
  /** What the worker beside the page has said: the workbook as the core built it there. */
  var workerSaid: FromWorker[];
  /** Lets a sync go on that a test holds. */
  var letGo: () => void;
}

const book = new FakeWorkbook(globalThis.sheetsAtStart);
const page = globalThis as unknown as { OSF: { DDA: { RichApi: object } }; Office: object };
page.OSF.DDA.RichApi = book.line();
page.Office = book.office();
globalThis.fakeBook = book;
globalThis.beforeSync = (when, act) => {
  const sync = book.sync.bind(book);
  book.sync = async (body) => {
    if (when(book)) {
      book.sync = sync;
      await act(book);
    }
    return sync(body);
  };
};

globalThis.workerSaid = [];
globalThis.Worker = class extends Worker {
  constructor(...given: ConstructorParameters<typeof Worker>) {
    super(...given);
    this.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => globalThis.workerSaid.push(data));
  }
};

Object.assign(globalThis, { CustomFunctions: { associate: () => undefined, Error, ErrorCode: {} } });
