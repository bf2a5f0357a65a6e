import { columnLetters, rangeAddress, readRange, type CellRange } from '../../src/workbook/address';

/**
 * A workbook behind the part of Office.js that the adapter uses, as strict as Excel on the web: commands wait for
 * `sync`, a value is there only after `load` and `sync`, arrays must fit their range, a request is at most 5 MB, one
 * command's failure drops the rest, and a protected sheet refuses. What is only looks is recorded, not drawn.
 */
export interface FakeSheet {
  name: string;
  visibility: string;
  protected: boolean;
  frozen: { readonly rows: number; readonly columns: number };
  /** Formula or constant by address; an apostrophe in front of a text is taken off, as Excel does. */
  cells: Map<string, string | number | boolean>;
  formats: Map<string, string>;
  /** Everything else that was set: "A1:C1 format.font.bold" → true. */
  looks: Map<string, unknown>;
}

export class FakeWorkbook {
  sheets: FakeSheet[] = [];
  names = new Map<string, string>();
  settings = new Map<string, unknown>();
  active = '';
  selected = 'A1';
  /** The user is typing in a cell. */
  editing = false;
  /** A fault for the n-th sync from now (1: the next): its commands up to `after` are done, the next one fails. */
  fault: { sync: number; after: number; code: string } | null = null;
  /** Commands and bytes of each sync that went through or failed. */
  syncs: { commands: number; bytes: number }[] = [];
  queue: { bytes: number; run: () => void }[] = [];
  /** The ExcelApi set that it knows: 1.9 is what the manifest asks for. */
  api = 9;

  constructor(sheets: Record<string, readonly (readonly (string | number | boolean | null)[])[]> = { Sheet1: [] }) {
    for (const [name, rows] of Object.entries(sheets)) {
      const sheet = addSheet(this, name);
      for (const [row, cells] of rows.entries()) {
        for (const [column, value] of cells.entries()) {
          if (value !== null) sheet.cells.set(`${columnLetters(column)}${row + 1}`, value);
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
    return structuredClone({
      sheets: this.sheets.map(({ looks: _, ...kept }) => kept),
      names: this.names,
    });
  }

  async sync(): Promise<void> {
    const queue = this.queue.splice(0);
    const bytes = queue.reduce((sum, command) => sum + command.bytes, 0);
    this.syncs.push({ commands: queue.length, bytes });
    if (this.editing) throw new ExcelError('InvalidOperationInCellEditMode');
    if (bytes > 5_000_000) throw new ExcelError('RequestPayloadSizeLimitExceeded');
    const fault = this.fault && --this.fault.sync === 0 ? this.fault : null;
    if (fault) this.fault = null;
    for (const [at, command] of queue.entries()) {
      if (fault && at >= fault.after) throw new ExcelError(fault.code);
      command.run();
    }
    if (fault) throw new ExcelError(fault.code);
  }

  /** Puts itself where the adapter looks for Excel. */
  install(): void {
    const context = makeContext(this);
    Object.assign(globalThis, {
      Excel: { run: async (...args: unknown[]) => (args.at(-1) as (c: unknown) => Promise<unknown>)(context) },
      Office: {
        context: {
          requirements: { isSetSupported: (_: string, version: string) => Number(version.split('.')[1]) <= this.api },
        },
      },
    });
  }
}

export class ExcelError extends Error {
  constructor(readonly code: string) {
    super(`Excel refused: ${code}`);
  }
}

const NOT_FROZEN = { rows: 0, columns: 0 };

function addSheet(book: FakeWorkbook, name: string): FakeSheet {
  if (book.sheets.some((sheet) => sheet.name === name)) throw new ExcelError('ItemAlreadyExists');
  if (name.length > 31) throw new ExcelError('InvalidArgument');
  const sheet: FakeSheet = {
    name,
    visibility: 'Visible',
    protected: false,
    frozen: NOT_FROZEN,
    cells: new Map(),
    formats: new Map(),
    looks: new Map(),
  };
  book.sheets.push(sheet);
  return sheet;
}

type Members = Record<string, unknown>;
interface Shape<S> {
  /** Finds the thing when a command runs; null for a null object. */
  find: () => S | null;
  read?: Record<string, (state: S) => unknown>;
  write?: Record<string, (state: S, value: never) => void>;
  members?: Members;
}

/** An Office.js proxy object: reads need load and sync, writes and methods wait for sync. */
function proxy<S>(book: FakeWorkbook, shape: Shape<S>): unknown {
  const loaded = new Map<string, unknown>();
  let isNull: boolean | null = null;
  const load = (spec: unknown) => {
    const names = typeof spec === 'string' ? spec.split(',').map((name) => name.trim()) : Object.keys(spec as object);
    command(book, 0, () => {
      const state = shape.find();
      isNull = state === null;
      if (state === null) return;
      for (const name of names) {
        const top = name.split('/')[0]!;
        const reader = shape.read?.[top];
        if (!reader) throw new Error(`the fake has no property ${name} to load`);
        loaded.set(top, reader(state));
      }
    });
    return object;
  };
  const object: unknown = new Proxy(
    {},
    {
      get(_, key) {
        if (typeof key === 'symbol' || key === 'then') return undefined;
        if (key === 'load') return load;
        if (key === 'isNullObject') {
          if (isNull === null) throw new Error('isNullObject is not known before load and sync');
          return isNull;
        }
        if (shape.members && key in shape.members) return shape.members[key];
        if (loaded.has(key)) return loaded.get(key);
        throw new Error(`${key} was read without load and sync`);
      },
      set(_, key, value) {
        const writer = shape.write?.[String(key)];
        if (!writer) throw new Error(`the fake has no property ${String(key)} to set`);
        command(book, JSON.stringify(value).length, () => {
          const state = shape.find();
          if (state === null) throw new ExcelError('ItemNotFound');
          writer(state, value as never);
        });
        return true;
      },
    },
  );
  return object;
}

function command(book: FakeWorkbook, bytes: number, run: () => void): void {
  book.queue.push({ bytes: bytes + 40, run });
}

function makeContext(book: FakeWorkbook): unknown {
  const on = (find: () => FakeSheet | null) => sheetProxy(book, find);
  const known = (name: string) => book.sheets.find((sheet) => sheet.name === name) ?? null;
  const strict = (name: string) => on(() => known(name) ?? missing());
  const context = {
    sync: () => book.sync(),
    application: { suspendApiCalculationUntilNextSync: nothing, suspendScreenUpdatingUntilNextSync: nothing },
    workbook: {
      worksheets: proxy(book, {
        find: () => book,
        read: { items: (state) => state.sheets.map(({ name, visibility }) => ({ name, visibility })) },
        members: {
          getItem: strict,
          getItemOrNullObject: (name: string) => on(() => known(name)),
          add: (name: string) => command(book, 0, () => void addSheet(book, name)),
        },
      }),
      names: {
        getItem: (name: string) => nameProxy(book, name, true),
        getItemOrNullObject: (name: string) => nameProxy(book, name, false),
        add: (name: string, formula: string) =>
          command(book, 0, () => {
            if (book.names.has(name)) throw new ExcelError('ItemAlreadyExists');
            if (!book.sheets.some((sheet) => formula.startsWith(`=${sheet.name}!`)))
              throw new ExcelError('InvalidArgument');
            book.names.set(name, formula);
          }),
      },
      settings: {
        add: (key: string, value: unknown) => command(book, 0, () => void book.settings.set(key, value)),
        getItemOrNullObject: (key: string) =>
          proxy(book, {
            find: () => (book.settings.has(key) ? book.settings : null),
            read: { value: (state) => state.get(key) },
          }),
      },
      getSelectedRange: () =>
        rangeProxy(
          book,
          () => book.sheet(book.active),
          () => rangeOf(book.selected),
        ),
    },
  };
  return context;
}

const nothing = () => undefined;
function missing(): never {
  throw new ExcelError('ItemNotFound');
}

function nameProxy(book: FakeWorkbook, name: string, strict: boolean): unknown {
  return proxy(book, {
    find: () => (book.names.has(name) ? book.names : strict ? missing() : null),
    read: { formula: (state) => state.get(name) },
    write: { formula: (state, value) => void state.set(name, value) },
    members: { delete: () => command(book, 0, () => void (book.names.delete(name) || missing())) },
  });
}

function rangeOf(address: string): CellRange {
  const columns = /^([A-Z]+):([A-Z]+)$/.exec(address);
  const read = readRange(columns ? `${columns[1]}1:${columns[2]}1048576` : address);
  if (!read.ok) throw new ExcelError('InvalidArgument');
  return read.value;
}

function sheetProxy(book: FakeWorkbook, find: () => FakeSheet | null): unknown {
  const needed = () => find() ?? missing();
  const range = (address: string) => rangeProxy(book, needed, () => rangeOf(address));
  return proxy(book, {
    find,
    read: { name: (sheet) => sheet.name },
    write: {
      name: (sheet, value) => void (sheet.name = value),
      visibility: (sheet, value) => void (sheet.visibility = value),
    },
    members: {
      getRange: (address?: string) => (address === undefined ? wholeProxy(book, needed) : range(address)),
      getRanges: (list: string) => {
        if (list.length > 8192) throw new ExcelError('InvalidArgument');
        for (const part of list.split(',')) rangeOf(part);
        return { format: recorder(book, needed, `${list} format`) };
      },
      getRangeByIndexes: (row: number, column: number, rows: number, columns: number) =>
        rangeProxy(book, needed, () => ({
          first: { row, column },
          last: { row: row + rows - 1, column: column + columns - 1 },
        })),
      getUsedRangeOrNullObject: () =>
        rangeProxy(
          book,
          () => find() ?? null,
          () => usedRange(find()),
        ),
      copy: () => {
        const copied: { name: string } = { name: '' };
        command(book, 0, () => {
          const from = needed();
          copied.name = `${from.name} (2)`;
          const to = addSheet(book, copied.name);
          to.cells = new Map(from.cells);
          to.formats = new Map(from.formats);
        });
        let found: FakeSheet | null = null;
        return sheetProxy(book, () => (found ??= book.sheet(copied.name)));
      },
      delete: () =>
        command(book, 0, () => {
          const sheet = needed();
          // Excel will not delete a very hidden sheet.
          if (sheet.visibility === 'VeryHidden') throw new ExcelError('InvalidOperation');
          if (book.sheets.length === 1) throw new ExcelError('InvalidOperation');
          book.sheets = book.sheets.filter((each) => each !== sheet);
        }),
      activate: () => command(book, 0, () => void (book.active = needed().name)),
      protection: proxy(book, {
        find,
        read: { protected: (sheet) => sheet.protected, options: () => ({ allowSort: true }) },
        members: {
          protect: () =>
            command(book, 0, () => {
              // Excel protects no sheet that is protected already.
              if (needed().protected) throw new ExcelError('AccessDenied');
              needed().protected = true;
            }),
          unprotect: () => command(book, 0, () => void (needed().protected = false)),
        },
      }),
      freezePanes: {
        unfreeze: () => command(book, 0, () => void (needed().frozen = NOT_FROZEN)),
        freezeAt: (at: { where: () => CellRange }) =>
          command(book, 0, () => {
            const { row, column } = at.where().last;
            needed().frozen = { rows: row + 1, columns: column + 1 };
          }),
        freezeRows: (rows: number) => command(book, 0, () => void (needed().frozen = { ...needed().frozen, rows })),
        freezeColumns: (columns: number) =>
          command(book, 0, () => void (needed().frozen = { ...needed().frozen, columns })),
        getLocationOrNullObject: () =>
          proxy(book, {
            find: () => {
              const { rows, columns } = needed().frozen;
              return rows + columns > 0 ? { rows, columns } : null;
            },
            read: {
              rowIndex: () => 0,
              columnIndex: () => 0,
              rowCount: ({ rows }) => rows || 1_048_576,
              columnCount: ({ columns }) => columns || 16_384,
              isEntireRow: ({ columns }) => columns === 0,
              isEntireColumn: ({ rows }) => rows === 0,
            },
          }),
      },
      pageLayout: recorder(book, needed, 'pageLayout'),
    },
  });
}

/** The whole sheet. */
function wholeProxy(book: FakeWorkbook, find: () => FakeSheet): unknown {
  const from = { sheet: find };
  return {
    from,
    clear: () =>
      command(book, 0, () => {
        const sheet = changeable(find());
        sheet.cells.clear();
        sheet.formats.clear();
        sheet.looks.clear();
      }),
    copyFrom: (other: { from: { sheet: () => FakeSheet } }) =>
      command(book, 0, () => {
        const sheet = changeable(find());
        sheet.cells = new Map(other.from.sheet().cells);
        sheet.formats = new Map(other.from.sheet().formats);
      }),
  };
}

function changeable(sheet: FakeSheet): FakeSheet {
  if (sheet.protected) throw new ExcelError('AccessDenied');
  return sheet;
}

function usedRange(sheet: FakeSheet | null): CellRange | null {
  if (sheet === null || sheet.cells.size === 0) return null;
  const all = [...sheet.cells.keys()].map((address) => rangeOf(address).first);
  return {
    first: { row: Math.min(...all.map(({ row }) => row)), column: Math.min(...all.map(({ column }) => column)) },
    last: { row: Math.max(...all.map(({ row }) => row)), column: Math.max(...all.map(({ column }) => column)) },
  };
}

function grid<T>(range: CellRange, at: (address: string) => T): T[][] {
  const rows: T[][] = [];
  for (let row = range.first.row; row <= range.last.row; row++) {
    const cells: T[] = [];
    for (let column = range.first.column; column <= range.last.column; column++) {
      cells.push(at(`${columnLetters(column)}${row + 1}`));
    }
    rows.push(cells);
  }
  return rows;
}

function rangeProxy(book: FakeWorkbook, find: () => FakeSheet | null, where: () => CellRange | null): unknown {
  const state = () => {
    const sheet = find();
    const range = where();
    return sheet === null || range === null ? null : { sheet, range };
  };
  const needed = () => state() ?? missing();
  return proxy(book, {
    find: state,
    read: {
      formulas: ({ sheet, range }) => grid(range, (address) => sheet.cells.get(address) ?? ''),
      values: ({ sheet, range }) => grid(range, (address) => sheet.cells.get(address) ?? ''),
      numberFormat: ({ sheet, range }) => grid(range, (address) => sheet.formats.get(address) ?? 'General'),
      rowIndex: ({ range }) => range.first.row,
      columnIndex: ({ range }) => range.first.column,
      rowCount: ({ range }) => range.last.row - range.first.row + 1,
      columnCount: ({ range }) => range.last.column - range.first.column + 1,
      address: ({ sheet, range }) => `${sheet.name}!${rangeAddress(range)}`,
    },
    write: {
      formulas: ({ sheet, range }, rows: (string | number | boolean)[][]) => {
        const [height, width] = [range.last.row - range.first.row + 1, range.last.column - range.first.column + 1];
        if (rows.length !== height || rows.some((row) => row.length !== width)) throw new ExcelError('InvalidArgument');
        changeable(sheet);
        let at = 0;
        const flat = rows.flat();
        grid(range, (address) => {
          const entry = flat[at++]!;
          if (typeof entry === 'number' && !Number.isFinite(entry)) throw new ExcelError('InvalidArgument');
          if (entry === '') sheet.cells.delete(address);
          else sheet.cells.set(address, typeof entry === 'string' && entry.startsWith("'") ? entry.slice(1) : entry);
        });
      },
      numberFormat: ({ sheet, range }, format: string) =>
        void grid(range, (address) => sheet.formats.set(address, format)),
      columnHidden: ({ sheet, range }, hidden) => void sheet.looks.set(`${rangeAddress(range)} columnHidden`, hidden),
    },
    members: {
      where,
      worksheet: proxy(book, { find, read: { name: (sheet) => sheet.name } }),
      format: recorder(
        book,
        () => needed().sheet,
        () => `${rangeAddress(needed().range)} format`,
      ),
      dataValidation: recorder(
        book,
        () => needed().sheet,
        () => `${rangeAddress(needed().range)} dataValidation`,
      ),
      getSurroundingRegion: () => rangeProxy(book, find, () => usedRange(find()) ?? where()),
      getUsedRangeOrNullObject: () => rangeProxy(book, find, () => inside(where(), usedRange(find()))),
      getCell: () => rangeProxy(book, find, () => ({ first: needed().range.first, last: needed().range.first })),
      select: () => command(book, 0, () => void (book.selected = rangeAddress(needed().range))),
      group: () =>
        command(book, 0, () => void needed().sheet.looks.set(`${rangeAddress(needed().range)} grouped`, true)),
      hideGroupDetails: nothing,
    },
  });
}

function inside(range: CellRange | null, used: CellRange | null): CellRange | null {
  if (range === null || used === null) return null;
  return {
    first: { row: Math.max(range.first.row, used.first.row), column: Math.max(range.first.column, used.first.column) },
    last: { row: Math.min(range.last.row, used.last.row), column: Math.min(range.last.column, used.last.column) },
  };
}

/** Takes any property set on it, however deep, and any call, and notes it when the command runs. */
function recorder(book: FakeWorkbook, find: () => FakeSheet, path: string | (() => string)): unknown {
  const at = () => (typeof path === 'string' ? path : path());
  return new Proxy(nothing as object, {
    get: (_, key) => recorder(book, find, () => `${at()}.${String(key)}`),
    set: (_, key, value) => {
      command(
        book,
        JSON.stringify(value).length,
        () => void changeable(find()).looks.set(`${at()}.${String(key)}`, value),
      );
      return true;
    },
    apply: (_, __, args: unknown[]) => {
      command(book, 0, () => void find().looks.set(at(), args));
      return recorder(book, find, () => `${at()}(${args.join(',')})`);
    },
  });
}
