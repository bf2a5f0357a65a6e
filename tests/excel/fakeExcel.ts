import { addressAt, type FakeSheet } from './fakeSheet';
import { addSheet, workbookThing } from './fakeThings';
import { ExcelError, Server, type Request } from './wire';

/** Excel on the web refuses a request, and an answer, over 5 MB. */
export const MOST_BYTES = 5_000_000;

/**
 * A workbook at the other end of Microsoft's office.js, as strict as Excel on the web: a request and its answer are at most
 * 5 MB each, arrays must fit their range, the first action that fails ends the request, a locked sheet refuses cells, looks
 * and filters, a password is asked for. What is only looks is noted, not drawn, and nothing calculates.
 */
export class FakeWorkbook {
  sheets: FakeSheet[] = [];
  names = new Map<string, string>();
  settings = new Map<string, unknown>();
  active = '';
  selected = 'A1';
  /** The user is typing in a cell. */
  editing = false;
  /** A fault for the n-th request from now (1: the next): its actions up to `after` are done, the next one fails. */
  fault: { sync: number; after: number; code: string } | null = null;
  /** Of each request: how many actions it asked for, its bytes and those of its answer. */
  syncs: { actions: number; bytes: number; answer: number }[] = [];
  /** The last requests, for a test to look into. */
  requests: Request[] = [];
  /** The ExcelApi set that it knows: 1.9 is what the manifest asks for. */
  api = 9;
  readonly #server = new Server(() => workbookThing(this));

  constructor(sheets: Record<string, readonly (readonly (string | number | boolean | null)[])[]> = { Sheet1: [] }) {
    for (const [name, rows] of Object.entries(sheets)) {
      const sheet = addSheet(this, name);
      for (const [row, cells] of rows.entries()) {
        for (const [column, value] of cells.entries()) {
          if (value !== null) sheet.cells.set(addressAt(row, column), value);
        }
      }
    }
    this.active = this.sheets[0]?.name ?? '';
  }

  sheet(name: string): FakeSheet {
    const sheet = this.sheets.find((each) => each.name === name);
    if (!sheet) throw new ExcelError('ItemNotFound');
    return sheet;
  }

  /** A picture of everything that must be as it was after a failure. */
  snapshot(): unknown {
    const sheets = this.sheets.map(({ looks: _looks, id: _id, ...kept }) => kept);
    return structuredClone({ sheets, names: this.names, settings: this.settings });
  }

  /** One request and its answer. A test may put something in its place that acts before or after it. */
  async sync(body: string): Promise<string> {
    const request = JSON.parse(body) as Request;
    const sync = { actions: request.Actions.length, bytes: bytesOf(body), answer: 0 };
    this.syncs.push(sync);
    this.requests.push(request);
    if (this.editing) throw new LineError(EDITING);
    if (sync.bytes > MOST_BYTES) throw new LineError(REQUEST_TOO_LARGE);
    const fault = this.fault && --this.fault.sync === 0 ? this.fault : null;
    if (fault) this.fault = null;
    const answer = this.#server.answer(request, (at) => {
      if (fault && at >= fault.after) throw new ExcelError(fault.code);
    });
    const text = JSON.stringify(answer);
    sync.answer = bytesOf(text);
    if (sync.answer > MOST_BYTES) throw new LineError(ANSWER_TOO_LARGE);
    return text;
  }

  /** What office.js sends its requests through: `OSF.DDA.RichApi`. */
  line(): object {
    const executeRichApiRequestAsync = (message: readonly string[], done: (result: object) => void) => {
      this.sync(message[BODY]!).then(
        (text) => done({ status: 'succeeded', value: { data: [200, [], text] } }),
        (thrown: unknown) => {
          const code = thrown instanceof LineError ? thrown.code : OTHER;
          done({ status: 'failed', error: { code, message: thrown instanceof Error ? thrown.message : '' } });
        },
      );
    };
    return { executeRichApiRequestAsync };
  }

  /** The part of `Office` that the add-in and office.js look at. */
  office(): object {
    return {
      HostType: { Excel: 'Excel' },
      PlatformType: { Mac: 'Mac', OfficeOnline: 'OfficeOnline' },
      onReady: async () => ({ host: 'Excel' }),
      context: {
        platform: 'OfficeOnline',
        contentLanguage: 'en-US',
        officeTheme: { bodyBackgroundColor: '#F3F3F3', bodyForegroundColor: '#000000' },
        requirements: {
          isSetSupported: (set: string, version = '1.1') =>
            set === 'ExcelApi' ? Number(version.split('.')[1]) <= this.api : set.startsWith('RichApiRuntime'),
        },
      },
    };
  }
}

/** Where a request's text stands in what office.js hands over. */
const BODY = 4;
// Office's numbers for why the line itself refuses (office.js, RichApiMessageUtility and Excel.RequestContext).
const [EDITING, REQUEST_TOO_LARGE, ANSWER_TOO_LARGE, OTHER] = [5004, 5103, 5104, 5001];

class LineError extends Error {
  constructor(readonly code: number) {
    super(`the line refused: ${code}`);
  }
}

const utf8 = new TextEncoder();
const bytesOf = (text: string) => utf8.encode(text).length;
