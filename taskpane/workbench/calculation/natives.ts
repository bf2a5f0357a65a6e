import { roundTo } from '../../../src/rounding';
import { asNumber, asText, asTruth, BEYOND } from './operators';
import type { RangeCells } from './range';
import { CellError, type Scalar } from './value';

/** The ranges of one cell's formula, in the order in which its form names them. */
export type Frame = readonly RangeCells[];

/** A part of a formula, ready to be worked out for any cell that has the form. */
export interface Part {
  /** Of a single value. */
  readonly scalar?: (at: Frame) => Scalar;
  /** Of several, in rows. */
  readonly rows?: (at: Frame) => readonly (readonly Scalar[])[];
  /** Of a reference. */
  readonly range?: (at: Frame) => RangeCells;
  /** Of a constant. */
  readonly constant?: Scalar;
}

type Native = (args: readonly Part[]) => Part | null;

const isScalar = (part: Part | undefined): part is Part & Required<Pick<Part, 'scalar'>> => part?.scalar !== undefined;

/** Values of all arguments: of a reference only the cells' own numbers count, as spreadsheets do it. */
function eachNumber(args: readonly Part[], at: Frame, see: (value: number) => void): CellError | null {
  for (const part of args) {
    if (part.range || part.rows) {
      const rows = part.range ? part.range(at).values() : part.rows!(at);
      for (const row of rows)
        for (const cell of row) {
          if (cell instanceof CellError) return cell;
          if (typeof cell === 'number') see(cell);
        }
      continue;
    }
    const value = asNumber(part.scalar!(at));
    if (value instanceof CellError) return value;
    see(value);
  }
  return null;
}

function gathered(start: number, add: (sum: number, value: number) => number): Native {
  return (args) => ({
    scalar(at) {
      let sum = start;
      const error = eachNumber(args, at, (value) => (sum = add(sum, value)));
      // Without any number the greatest and the least are 0.
      return error ?? (Number.isFinite(sum) ? sum : 0);
    },
  });
}

/** A rule for one value, which goes cell by cell over several. */
function eachValue(rule: (value: Scalar) => Scalar): Native {
  return ([part, ...rest]) => {
    if (!part || rest.length > 0) return null;
    if (isScalar(part)) return { scalar: (at) => rule(part.scalar(at)) };
    return { rows: (at) => part.rows!(at).map((row) => row.map(rule)) };
  };
}

/** Of a reference only the cells' own figures and truth values count, as spreadsheets do it; without any there is no answer. */
function logical(stop: boolean): Native {
  return (args) => ({
    scalar(at) {
      let found: boolean | null = null;
      for (const part of args)
        for (const row of part.range?.(at).values() ?? part.rows?.(at) ?? [[part.scalar!(at)]])
          for (const cell of row) {
            if ((part.range || part.rows) && (cell === null || typeof cell === 'string')) continue;
            const truth = asTruth(cell);
            if (truth instanceof CellError) return truth;
            if (found === null || truth === stop) found = truth;
          }
      return found ?? new CellError('#VALUE!');
    },
  });
}

/** What is looked for: text with signs that stand for others is the library's. */
function wanted(value: Scalar): number | string | boolean | CellError {
  if (value === null || (typeof value === 'string' && /[*?~]/.test(value))) throw BEYOND;
  return value;
}

export const NATIVES: Readonly<Record<string, Native>> = {
  IF: ([condition, yes, no]) => {
    if (!isScalar(condition) || !isScalar(yes) || (no && !isScalar(no))) return null;
    return {
      scalar(at) {
        const truth = asTruth(condition.scalar(at));
        if (truth instanceof CellError) return truth;
        return truth ? yes.scalar(at) : no ? no.scalar!(at) : false;
      },
    };
  },
  IFERROR: ([value, instead]) => {
    if (!isScalar(value) || !isScalar(instead)) return null;
    return {
      scalar(at) {
        const found = value.scalar(at);
        return found instanceof CellError ? instead.scalar(at) : found;
      },
    };
  },
  AND: logical(false),
  OR: logical(true),
  NOT: eachValue((value) => {
    const truth = asTruth(value);
    return truth instanceof CellError ? truth : !truth;
  }),
  ISERROR: eachValue((value) => value instanceof CellError),
  ISNUMBER: eachValue((value) => typeof value === 'number'),
  ISFORMULA: ([part, ...rest]) => {
    if (!part?.range || rest.length > 0) return null;
    const { range } = part;
    if (isScalar(part)) return { scalar: (at) => range(at).isFormula(0, 0) };
    return {
      rows(at) {
        const cells = range(at);
        return cells.values().map((row, down) => row.map((_, across) => cells.isFormula(down, across)));
      },
    };
  },
  N: ([part]) =>
    isScalar(part)
      ? {
          scalar(at) {
            const value = part.scalar(at);
            if (typeof value === 'number' || value instanceof CellError) return value;
            return value === true ? 1 : 0;
          },
        }
      : null,
  SUM: gathered(0, (sum, value) => sum + value),
  MAX: gathered(-Infinity, Math.max),
  MIN: gathered(Infinity, Math.min),
  COUNT: (args) =>
    args.every((part) => part.range)
      ? {
          scalar(at) {
            let count = 0;
            for (const { range } of args)
              for (const row of range!(at).values()) count += row.filter((cell) => typeof cell === 'number').length;
            return count;
          },
        }
      : null,
  ROUND: ([amount, digits]) => {
    if (!isScalar(amount) || typeof digits?.constant !== 'number' || !Number.isInteger(digits.constant)) return null;
    const decimals = digits.constant;
    if (decimals < 0) return null;
    return {
      scalar(at) {
        const value = asNumber(amount.scalar(at));
        return value instanceof CellError ? value : roundTo(decimals, value);
      },
    };
  },
  SUMPRODUCT: (args) => ({
    scalar(at) {
      const blocks = args.map(
        (part) => (part.range ? part.range(at).values() : part.rows?.(at)) ?? [[part.scalar!(at)]],
      );
      const [first] = blocks;
      const [height, width] = [first!.length, first![0]!.length];
      if (blocks.some((rows) => rows.length !== height || rows[0]!.length !== width)) return new CellError('#VALUE!');
      let sum = 0;
      for (let row = 0; row < height; row++)
        for (let column = 0; column < width; column++) {
          let product = 1;
          for (const rows of blocks) {
            const cell = rows[row]![column]!;
            if (cell instanceof CellError) return cell;
            product *= typeof cell === 'number' ? cell : 0;
          }
          sum += product;
        }
      return sum;
    },
  }),
  COUNTIF: ([part, criterion]) => {
    if (!part?.range || !criterion) return null;
    const { range } = part;
    const counted = (cells: RangeCells, value: Scalar): Scalar => {
      if (value instanceof CellError || value === null || typeof value === 'boolean') throw BEYOND;
      if (typeof value === 'string' && /^[<>=]|[*?~]/.test(value)) throw BEYOND;
      return cells.count(value);
    };
    if (isScalar(criterion)) return { scalar: (at) => counted(range(at), criterion.scalar(at)) };
    return {
      rows(at) {
        const cells = range(at);
        return criterion.rows!(at).map((row) => row.map((value) => counted(cells, value)));
      },
    };
  },
  VLOOKUP: ([key, table, column, near]) => {
    const across = column?.constant;
    const exact = near?.constant === false || near?.constant === 0;
    if (!isScalar(key) || !table?.range || typeof across !== 'number' || across < 1 || !exact) return null;
    const { range } = table;
    return {
      scalar(at) {
        const value = wanted(key.scalar(at));
        if (value instanceof CellError) return value;
        const cells = range(at);
        if (across > cells.columns) return new CellError('#REF!');
        const row = cells.find(0, value);
        return row === undefined ? new CellError('#N/A') : cells.at(row, across - 1);
      },
    };
  },
  MATCH: ([key, list, near]) => {
    if (!isScalar(key) || !list?.range || near?.constant !== 0) return null;
    const { range } = list;
    return {
      scalar(at) {
        const value = wanted(key.scalar(at));
        if (value instanceof CellError) return value;
        const cells = range(at);
        if (cells.columns !== 1) throw BEYOND;
        const row = cells.find(0, value);
        return row === undefined ? new CellError('#N/A') : row + 1;
      },
    };
  },
  INDEX: ([table, row, column, ...rest]) => {
    if (!table?.range || !isScalar(row) || (column && !isScalar(column)) || rest.length > 0) return null;
    const { range } = table;
    const place = (at: Frame, part: Part): number | CellError => {
      const value = asNumber(part.scalar!(at));
      return value instanceof CellError ? value : Math.trunc(value);
    };
    if (column?.constant === 0)
      return {
        rows(at) {
          const down = place(at, row);
          if (down instanceof CellError) return [[down]];
          const cells = range(at);
          if (down < 1 || down > cells.rows) return [[new CellError('#REF!')]];
          return [Array.from({ length: cells.columns }, (_, across) => cells.at(down - 1, across))];
        },
      };
    return {
      scalar(at) {
        const cells = range(at);
        const down = place(at, row);
        if (down instanceof CellError) return down;
        const across = column ? place(at, column) : 1;
        if (across instanceof CellError) return across;
        // A single row is counted across, and a 0 stands for all.
        if (down < 1 || across < 1 || (!column && cells.columns > 1)) throw BEYOND;
        return down > cells.rows || across > cells.columns ? new CellError('#REF!') : cells.at(down - 1, across - 1);
      },
    };
  },
  TEXTJOIN: ([between, skip, ...parts]) => {
    if (typeof between?.constant !== 'string' || typeof skip?.constant !== 'boolean') return null;
    const [sign, skips] = [between.constant, skip.constant];
    return {
      scalar(at) {
        const words: string[] = [];
        for (const part of parts) {
          const rows = part.range ? part.range(at).values() : (part.rows?.(at) ?? [[part.scalar!(at)]]);
          for (const row of rows)
            for (const cell of row) {
              const text = asText(cell);
              if (text instanceof CellError) return text;
              if (text !== '' || !skips) words.push(text);
            }
        }
        return words.join(sign);
      },
    };
  },
};

/** Functions of single values that the library calculates as well as it does within a cell. */
export const OF_SCALARS: ReadonlySet<string> = new Set([
  ...['TRIM', 'TEXT', 'LEFT', 'RIGHT', 'MID', 'LEN', 'FIND', 'SUBSTITUTE', 'UPPER', 'LOWER', 'EXACT', 'CHAR', 'FIXED'],
  ...['ABS', 'SQRT', 'ROUNDUP', 'ROUNDDOWN', 'INT', 'MOD', 'PI', 'SIN', 'COS', 'TAN', 'ASIN', 'ACOS', 'ATAN'],
  ...['DEGREES', 'RADIANS', 'ISTEXT', 'ISBLANK', 'NA', 'REPT'],
]);
