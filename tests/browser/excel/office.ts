import type { FromWorker } from '../../../taskpane/pane/build/parts';
import { FakeWorkbook } from '../../excel/fakeExcel';

type Sheets = NonNullable<ConstructorParameters<typeof FakeWorkbook>[0]>;

/** Stands in for office.js: the strict fake of Excel in the page, which the test reaches as `fakeBook`. */
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
book.install();
globalThis.fakeBook = book;
globalThis.beforeSync = (when, act) => {
  const sync = book.sync.bind(book);
  book.sync = async () => {
    if (when(book)) {
      book.sync = sync;
      await act(book);
    }
    return sync();
  };
};

globalThis.workerSaid = [];
globalThis.Worker = class extends Worker {
  constructor(...given: ConstructorParameters<typeof Worker>) {
    super(...given);
    this.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => globalThis.workerSaid.push(data));
  }
};

const { Office: office } = globalThis as unknown as { Office: { context: object } };
Object.assign(office, { HostType: { Excel: 'Excel' }, onReady: async () => ({ host: 'Excel' }) });
Object.assign(office.context, {
  contentLanguage: 'en-US',
  officeTheme: { bodyBackgroundColor: '#F3F3F3', bodyForegroundColor: '#000000' },
});
Object.assign(globalThis, { CustomFunctions: { associate: () => undefined, Error, ErrorCode: {} } });
