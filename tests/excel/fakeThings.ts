import { rangeAddress, type CellRange } from '../../src/workbook/address';
import type { FakeWorkbook } from './fakeExcel';
import {
  addressAt,
  changeable,
  grid,
  inside,
  LAST_COLUMN,
  LAST_ROW,
  moved,
  newSheet,
  rangeOf,
  sizeOf,
  surroundingRegion,
  usedRange,
  WHOLE,
  type Entry,
  type FakeSheet,
} from './fakeSheet';
import { ExcelError, type Thing } from './wire';

const nothing = () => undefined;

export function addSheet(book: FakeWorkbook, name: string): FakeSheet {
  const taken = book.sheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  if (taken) throw new ExcelError('ItemAlreadyExists');
  if (name.length > 31 || /[[\]:*?/\\]/.test(name)) throw new ExcelError('InvalidArgument');
  const sheet = newSheet(name);
  book.sheets.push(sheet);
  return sheet;
}

export function workbookThing(book: FakeWorkbook): Thing {
  const known = (key: string) => book.sheets.find(({ id, name }) => id === key || name === key);
  const strict = (key: string) => sheetThing(book, known(key) ?? missing());
  return {
    calls: {
      getSelectedRange: () => rangeThing(book, book.sheet(book.active), rangeOf(book.selected)),
    },
    parts: {
      application: () => ({
        calls: { suspendApiCalculationUntilNextSync: nothing, suspendScreenUpdatingUntilNextSync: nothing },
      }),
      worksheets: () => ({
        items: () => book.sheets.map((sheet) => sheetThing(book, sheet)),
        item: strict,
        calls: {
          getItem: strict,
          getItemOrNullObject: (key: string) => {
            const sheet = known(key);
            return sheet ? sheetThing(book, sheet) : null;
          },
          add: (name: string) => sheetThing(book, addSheet(book, name)),
        },
      }),
      names: () => namesThing(book, book.names),
      settings: () => ({
        item: (key: string) => settingThing(book, key) ?? missing(),
        calls: {
          add: (key: string, value: unknown) => {
            book.settings.set(key, value);
            return settingThing(book, key);
          },
          getItem: (key: string) => settingThing(book, key) ?? missing(),
          getItemOrNullObject: (key: string) => settingThing(book, key),
        },
      }),
    },
  };
}

function missing(): never {
  throw new ExcelError('ItemNotFound');
}

function settingThing(book: FakeWorkbook, key: string): Thing | null {
  if (!book.settings.has(key)) return null;
  return {
    read: { value: () => book.settings.get(key) },
    calls: { delete: () => void book.settings.delete(key) },
  };
}

/** Names of the workbook, or of one sheet. */
function namesThing(book: FakeWorkbook, names: Map<string, string>): Thing {
  const strict = (name: string) => (names.has(name) ? nameThing(names, name) : missing());
  return {
    items: () => [...names.keys()].map((name) => nameThing(names, name)),
    item: strict,
    calls: {
      getItem: strict,
      getItemOrNullObject: (name: string) => (names.has(name) ? nameThing(names, name) : null),
      add: (name: string, formula: string) => {
        if (names.has(name)) throw new ExcelError('ItemAlreadyExists');
        if (!book.sheets.some((sheet) => formula.startsWith(`=${sheet.name}!`)))
          throw new ExcelError('InvalidArgument');
        names.set(name, formula);
        return nameThing(names, name);
      },
    },
  };
}

function nameThing(names: Map<string, string>, name: string): Thing {
  return {
    read: { name: () => name, formula: () => names.get(name) },
    write: { formula: (formula: string) => void names.set(name, formula) },
    calls: { delete: () => void names.delete(name) },
  };
}

function sheetThing(book: FakeWorkbook, sheet: FakeSheet): Thing {
  const there = () => (book.sheets.includes(sheet) ? sheet : missing());
  const range = (where: CellRange) => rangeThing(book, there(), where);
  return {
    id: sheet.id,
    read: { name: () => there().name, visibility: () => sheet.visibility },
    write: {
      name: (name: string) => {
        if (book.sheets.some((each) => each !== sheet && each.name === name)) throw new ExcelError('ItemAlreadyExists');
        there().name = name;
      },
      visibility: (visibility: string) => void (there().visibility = visibility),
    },
    calls: {
      getRange: (address?: string | null) => range(address ? rangeOf(address) : WHOLE),
      getRanges: (list: string) => {
        if (list.length > 8192) throw new ExcelError('InvalidArgument');
        for (const part of list.split(',')) rangeOf(part);
        return { kept: true, parts: { format: () => recorder(there(), `${list} format`) } };
      },
      getRangeByIndexes: (row: number, column: number, rows: number, columns: number) =>
        range({ first: { row, column }, last: { row: row + rows - 1, column: column + columns - 1 } }),
      getUsedRangeOrNullObject: (valuesOnly?: boolean) => {
        const used = usedRange(there(), valuesOnly === true);
        return used && range(used);
      },
      copy: () => sheetThing(book, copyOf(book, there())),
      delete: () => {
        // Excel deletes no very hidden sheet, and not the last one.
        if (there().visibility === 'VeryHidden' || book.sheets.length === 1) throw new ExcelError('InvalidOperation');
        book.sheets = book.sheets.filter((each) => each !== sheet);
      },
      activate: () => void (book.active = there().name),
    },
    parts: {
      protection: () => protectionThing(there()),
      names: () => namesThing(book, there().names),
      freezePanes: () => panesThing(book, there()),
      autoFilter: () => ({
        calls: {
          apply: (area: RangeOf) => void (changeable(there()).filter = rangeAddress(area.where)),
          remove: () => {
            changeable(there()).filter = null;
            sheet.hiddenRows.clear();
          },
        },
      }),
      pageLayout: () => recorder(there(), 'pageLayout'),
      horizontalPageBreaks: () => recorder(there(), 'horizontalPageBreaks'),
    },
  };
}

/** A copied sheet brings along a twin of every name that points at it. */
function copyOf(book: FakeWorkbook, from: FakeSheet): FakeSheet {
  const to = addSheet(book, `${from.name} (2)`);
  to.cells = new Map(from.cells);
  to.formats = new Map(from.formats);
  for (const [name, formula] of book.names) {
    if (formula.startsWith(`=${from.name}!`)) to.names.set(name, formula.replace(from.name, `'${to.name}'`));
  }
  return to;
}

function protectionThing(sheet: FakeSheet): Thing {
  return {
    read: { protected: () => sheet.protected, options: () => ({ allowSort: true }) },
    calls: {
      protect: () => {
        if (sheet.protected) throw new ExcelError('AccessDenied'); // no sheet is locked twice
        sheet.protected = true;
      },
      unprotect: (password?: string | null) => {
        if (sheet.protected && sheet.password !== '' && password !== sheet.password) {
          throw new ExcelError('InvalidArgument');
        }
        sheet.protected = false;
      },
    },
  };
}

function panesThing(book: FakeWorkbook, sheet: FakeSheet): Thing {
  return {
    calls: {
      unfreeze: () => void (sheet.frozen = { rows: 0, columns: 0 }),
      freezeAt: ({ where }: RangeOf) =>
        void (sheet.frozen = { rows: where.last.row + 1, columns: where.last.column + 1 }),
      freezeRows: (rows: number) => void (sheet.frozen = { ...sheet.frozen, rows }),
      freezeColumns: (columns: number) => void (sheet.frozen = { ...sheet.frozen, columns }),
      getLocationOrNullObject: () => {
        const { rows, columns } = sheet.frozen;
        if (rows + columns === 0) return null;
        const last = { row: rows > 0 ? rows - 1 : LAST_ROW, column: columns > 0 ? columns - 1 : LAST_COLUMN };
        return rangeThing(book, sheet, { first: { row: 0, column: 0 }, last });
      },
    },
  };
}

interface RangeOf extends Thing {
  readonly sheet: FakeSheet;
  readonly where: CellRange;
}

function rangeThing(book: FakeWorkbook, sheet: FakeSheet, where: CellRange): RangeOf {
  const { rows, columns } = sizeOf(where);
  const address = rangeAddress(where);
  const there = () => (book.sheets.includes(sheet) ? sheet : missing());
  const thing = (range: CellRange) => rangeThing(book, sheet, range);
  const set = (entries: Entry[][]) => {
    const fits = entries.length === rows && entries.every((row) => row.length === columns);
    if (!fits) throw new ExcelError('InvalidArgument');
    changeable(there());
    grid(where, (at, row, column) => enter(sheet, at, entries[row - where.first.row]![column - where.first.column]!));
  };
  return {
    sheet,
    where,
    kept: true,
    read: {
      formulas: () => grid(where, (at) => there().cells.get(at) ?? ''),
      values: () => grid(where, (at) => there().results.get(at) ?? sheet.cells.get(at) ?? ''),
      numberFormat: () => grid(where, (at) => there().formats.get(at) ?? 'General'),
      rowIndex: () => where.first.row,
      columnIndex: () => where.first.column,
      rowCount: () => rows,
      columnCount: () => columns,
      isEntireRow: () => columns > LAST_COLUMN,
      isEntireColumn: () => rows > LAST_ROW,
      address: () => `${there().name}!${address}`,
      rowHidden: () => {
        const hidden = [...there().hiddenRows].filter((row) => row >= where.first.row && row <= where.last.row).length;
        return hidden === 0 ? false : hidden === rows ? true : null;
      },
    },
    write: {
      formulas: set,
      values: set,
      numberFormat: (format: string | string[][]) => {
        changeable(there());
        grid(where, (at, row, column) =>
          sheet.formats.set(
            at,
            typeof format === 'string' ? format : format[row - where.first.row]![column - where.first.column]!,
          ),
        );
      },
      columnHidden: (hidden: boolean) => void changeable(there()).looks.set(`${address} columnHidden`, hidden),
      rowHidden: (hidden: boolean) => {
        changeable(there());
        for (const row of hidden ? [] : [...sheet.hiddenRows]) {
          if (row >= where.first.row && row <= where.last.row) sheet.hiddenRows.delete(row);
        }
      },
    },
    parts: {
      worksheet: () => sheetThing(book, there()),
      format: () => recorder(there(), `${address} format`),
      dataValidation: () => recorder(there(), `${address} dataValidation`),
      conditionalFormats: () => ({
        calls: {
          add: (type: string) => recorder(there(), `${address} conditionalFormat ${type}`),
          clearAll: () => {
            for (const name of changeable(there()).looks.keys())
              if (name.includes(' conditionalFormat ')) sheet.looks.delete(name);
          },
        },
      }),
    },
    calls: {
      // Of a large array office.js asks this first, and then sets it in parts.
      _ValidateArraySize: (height: number, width: number) => {
        if (height !== rows || width !== columns) throw new ExcelError('InvalidArgument');
      },
      getRow: (row: number) => {
        const at = where.first.row + row;
        return thing({ first: { ...where.first, row: at }, last: { ...where.last, row: at } });
      },
      getBoundingRect: (other: RangeOf) => thing({ first: where.first, last: other.where.last }),
      // Neither rows nor columns are shown again by it.
      clear: () => {
        for (const kept of [changeable(there()).cells, sheet.formats, sheet.looks, sheet.results]) kept.clear();
      },
      copyFrom: (from: RangeOf | string, type: string) =>
        copy(
          typeof from === 'string' ? { sheet: there(), where: rangeOf(from) } : from,
          { sheet: there(), where },
          type,
        ),
      getSurroundingRegion: () => thing(surroundingRegion(there(), where)),
      getUsedRangeOrNullObject: (valuesOnly?: boolean) => {
        const used = inside(where, usedRange(there(), valuesOnly === true));
        return used && thing(used);
      },
      getSpecialCellsOrNullObject: (type: string) => {
        if (type !== 'Visible') throw new ExcelError('InvalidArgument');
        return visibleThing(there(), where, thing);
      },
      getCell: (row: number, column: number) => {
        const at = { row: where.first.row + row, column: where.first.column + column };
        return thing({ first: at, last: at });
      },
      select: () => {
        if (book.active !== there().name) throw new ExcelError('InvalidSelection');
        book.selected = address;
      },
    },
  };
}

function enter(sheet: FakeSheet, at: string, entry: Entry): void {
  if (entry === null || entry === undefined) return; // leaves the cell as it is
  sheet.results.delete(at);
  if (entry === '') sheet.cells.delete(at);
  else sheet.cells.set(at, typeof entry === 'string' && entry.startsWith("'") ? entry.slice(1) : entry);
}

type Place = Pick<RangeOf, 'sheet' | 'where'>;

/** Repeats the source over the target, as Excel does where the target is the larger. */
function copy(from: Place, to: Place, type: string): void {
  changeable(to.sheet);
  const whole = sizeOf(from.where).rows > LAST_ROW;
  const source = whole ? usedRange(from.sheet, false) : from.where;
  if (source === null) return;
  const size = sizeOf(source);
  const target = whole ? source : to.where;
  grid(target, (at, row, column) => {
    const down = (row - target.first.row) % size.rows;
    const right = (column - target.first.column) % size.columns;
    const origin = { row: source.first.row + down, column: source.first.column + right };
    const place = addressAt(origin.row, origin.column);
    const entry = from.sheet.cells.get(place);
    if (entry === undefined) to.sheet.cells.delete(at);
    else to.sheet.cells.set(at, moved(entry, row - origin.row, column - origin.column));
    const format = from.sheet.formats.get(place);
    if (type === 'All' && format !== undefined) to.sheet.formats.set(at, format);
  });
}

/** The rows that are shown, each run of them an area. */
function visibleThing(sheet: FakeSheet, where: CellRange, thing: (range: CellRange) => Thing): Thing | null {
  const areas: { first: number; last: number }[] = [];
  for (let row = where.first.row; row <= where.last.row; row++) {
    if (sheet.hiddenRows.has(row)) continue;
    const open = areas.at(-1);
    if (open && open.last === row - 1) open.last = row;
    else areas.push({ first: row, last: row });
  }
  if (areas.length === 0) return null;
  const ranges = areas.map(({ first, last }) => ({
    first: { row: first, column: where.first.column },
    last: { row: last, column: where.last.column },
  }));
  return {
    kept: true,
    read: { address: () => ranges.map(rangeAddress).join(',') },
    parts: { areas: () => ({ items: () => ranges.map(thing) }) },
  };
}

/** Takes any property set on it, however deep, and any call, and notes it. */
function recorder(sheet: FakeSheet, path: string): Thing {
  return {
    anything: (name) => recorder(sheet, `${path}.${name}`),
    note: (name, value) => void changeable(sheet).looks.set(`${path}.${name}`, value),
    done: (name, args) => void changeable(sheet).looks.set(`${path}.${name}`, args),
  };
}
