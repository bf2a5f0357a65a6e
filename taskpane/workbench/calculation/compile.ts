import type { BaseAstNode, BaseValueObject } from '@univerjs/engine-formula';
import type { PlainValue } from '../engine';
import { callFunction, type GridFunction } from '../functions';
import type { GridLibrary } from '../library';
import { NATIVES, OF_SCALARS, type Frame, type Part } from './natives';
import { BEYOND, operatorOf } from './operators';
import { plainRows } from './range';
import { KIND, type Executor, type Reference } from './template';
import { CellError, type Scalar } from './value';

/** A formula worked out for a cell: one value, or rows of them, which spill. */
export type Compiled = (at: Frame) => Scalar | readonly (readonly Scalar[])[];

/** Work that a formula's own call finds done; it changes no value. */
export type Steps = (at: Frame) => Iterable<void>;

interface Form {
  readonly places: ReadonlyMap<BaseAstNode, number>;
  readonly references: readonly Reference[];
  readonly executorOf: (name: string) => Executor | null;
  readonly functions: ReadonlyMap<string, GridFunction>;
}

/**
 * A formula's tree as closures. Null where anything in it has a rule that isn't kept here, and for a formula that spills,
 * other than a worksheet function of ours: the library works these out.
 */
export function compileFormula(library: GridLibrary, ast: BaseAstNode, form: Form): Compiled | null {
  const top = topOf(ast);
  if (!top) return null;
  const own = ownCall(library, top, form);
  if (own) return own;
  const scalar = partOf(library, top, form)?.scalar;
  // A formula that comes to a blank shows a 0.
  return scalar ? (at) => scalar(at) ?? 0 : null;
}

/** Of a formula that is one call of a function of ours which has steps. */
export function stepsOf(library: GridLibrary, ast: BaseAstNode, form: Form): Steps | null {
  const call = givenTo(library, topOf(ast), form);
  const steps = call?.own.steps;
  if (!call || !steps) return null;
  return (at) => {
    const given = call.given(at);
    return given instanceof CellError ? [] : steps(given);
  };
}

function topOf(ast: BaseAstNode): BaseAstNode | undefined {
  return (ast.nodeType as number) === KIND.root ? ast.getChildren()[0] : ast;
}

function partOf(library: GridLibrary, node: BaseAstNode, form: Form): Part | null {
  const place = form.places.get(node);
  if (place !== undefined) return referencePart(form.references[place]!, place);
  const token = node.getToken();
  switch (node.nodeType as number) {
    case KIND.none:
      return { scalar: () => null, constant: null };
    case KIND.error:
      return constant(new CellError(token));
    case KIND.value:
      return constantPart(token);
    case KIND.operator:
      return operatorPart(
        token,
        node.getChildren().map((child) => partOf(library, child, form)),
      );
    case KIND.prefix:
      return token === '-' ? operatorPart('-', [{ scalar: () => 0 }, childPart(library, node, form)]) : null;
    case KIND.suffix:
      return token === '%' ? operatorPart('/', [childPart(library, node, form), { scalar: () => 100 }]) : null;
    case KIND.call:
      return callPart(library, node, form);
    default:
      return null;
  }
}

function childPart(library: GridLibrary, node: BaseAstNode, form: Form): Part | null {
  const [child] = node.getChildren();
  return child ? partOf(library, child, form) : null;
}

function referencePart({ first, last }: Reference, place: number): Part {
  const range = (at: Frame) => at[place]!;
  if (first === last) return { scalar: (at) => at[place]!.at(0, 0), range };
  return { rows: (at) => at[place]!.values(), range };
}

function constantPart(token: string): Part | null {
  const trimmed = token.trim();
  if (/^".*"$/s.test(trimmed)) return constant(trimmed.slice(1, -1));
  if (trimmed === 'TRUE' || trimmed === 'FALSE') return constant(trimmed === 'TRUE');
  if (trimmed.startsWith('#')) return constant(new CellError(trimmed));
  const number = Number(trimmed);
  return trimmed === '' || Number.isNaN(number) ? null : constant(number);
}

function constant(value: Scalar): Part {
  return { scalar: () => value, constant: value };
}

function operatorPart(sign: string, [one, other]: readonly (Part | null)[]): Part | null {
  const rule = operatorOf(sign);
  if (!rule || !one || !other) return null;
  const { scalar: left } = one;
  const { scalar: right } = other;
  if (left && right) return { scalar: (at) => rule(left(at), right(at)) };
  const rowsOf = (part: Part, at: Frame) => part.rows?.(at) ?? [[part.scalar!(at)]];
  return {
    rows(at) {
      const [first, second] = [rowsOf(one, at), rowsOf(other, at)];
      const height = Math.max(first.length, second.length);
      const width = Math.max(first[0]!.length, second[0]!.length);
      const cell = (rows: readonly (readonly Scalar[])[], row: number, column: number): Scalar => {
        const line = rows.length === 1 ? rows[0]! : rows[row];
        const found = line?.length === 1 ? line[0] : line?.[column];
        return found === undefined ? new CellError('#N/A') : found;
      };
      return Array.from({ length: height }, (_, row) =>
        Array.from({ length: width }, (_, column) => rule(cell(first, row, column), cell(second, row, column))),
      );
    },
  };
}

function callPart(library: GridLibrary, node: BaseAstNode, form: Form): Part | null {
  const own = ownCall(library, node, form);
  if (own)
    return {
      scalar(at) {
        const value = own(at);
        // Of several cells each counts, as what is around the call has it.
        if (Array.isArray(value)) throw BEYOND;
        return value as Scalar;
      },
    };
  const name = node.getToken().toUpperCase();
  const args: Part[] = [];
  for (const child of node.getChildren()) {
    const part = partOf(library, child, form);
    if (!part) return null;
    args.push(part);
  }
  const native = Object.hasOwn(NATIVES, name) ? NATIVES[name]! : null;
  if (native) return args.length > 0 ? native(args) : null;
  const executor = OF_SCALARS.has(name) ? form.executorOf(name) : null;
  if (!executor || args.some(({ scalar }) => !scalar)) return null;
  if (args.length < executor.minParams || args.length > executor.maxParams) return null;
  return {
    scalar(at) {
      const given = args.map(({ scalar }) => valueObject(library, scalar!(at)));
      try {
        return scalarOf(executor.calculate(...given) as BaseValueObject);
      } catch {
        // Where the library fails at it, its own way says so in the cell.
        throw BEYOND;
      }
    },
  };
}

function ownCall(library: GridLibrary, node: BaseAstNode, form: Form): Compiled | null {
  const call = givenTo(library, node, form);
  if (!call) return null;
  return (at) => {
    const given = call.given(at);
    if (given instanceof CellError) return given;
    const called = callFunction(call.own, given);
    return called.ok ? called.value : new CellError('#VALUE!', called.message);
  };
}

type Given = (PlainValue | PlainValue[][])[];

/** A worksheet function of ours and what it is given, its ranges as the rows that are kept for all cells. */
function givenTo(
  library: GridLibrary,
  node: BaseAstNode | undefined,
  form: Form,
): { readonly own: GridFunction; readonly given: (at: Frame) => Given | CellError } | null {
  const own =
    (node?.nodeType as number | undefined) === KIND.call
      ? form.functions.get(node!.getToken().toUpperCase())
      : undefined;
  if (!node || !own) return null;
  const args: Part[] = [];
  for (const child of node.getChildren()) {
    const part = partOf(library, child, form);
    if (!part) return null;
    args.push(part);
  }
  const given = (at: Frame): Given | CellError => {
    const values: Given = [];
    for (const { scalar, range, rows } of args) {
      if (scalar) {
        const value = scalar(at);
        if (value instanceof CellError) return value;
        values.push(value);
        continue;
      }
      const plain = range ? range(at).plain() : plainRows(rows!(at));
      if ('error' in plain) return plain.error;
      // A block of one cell is that cell.
      values.push(plain.rows.length === 1 && plain.rows[0]!.length === 1 ? plain.rows[0]![0]! : plain.rows);
    }
    return values;
  };
  return { own, given };
}

export function valueObject({ engineFormula }: GridLibrary, value: Scalar): BaseValueObject {
  if (value === null) return engineFormula.NullValueObject.create();
  if (typeof value === 'number') return engineFormula.NumberValueObject.create(value);
  if (typeof value === 'boolean') return engineFormula.BooleanValueObject.create(value);
  if (typeof value === 'string') return engineFormula.StringValueObject.create(value);
  const error = engineFormula.ErrorValueObject.create(
    value.kind as Parameters<typeof engineFormula.ErrorValueObject.create>[0],
    value.sentence ?? undefined,
  );
  if (value.sentence !== null) error.withCustomData({ error: value.sentence });
  return error;
}

/** A single value of the library's; of a block its first. */
export function scalarOf(object: BaseValueObject): Scalar {
  const one = object.isArray() ? (object as unknown as { getFirstCell(): BaseValueObject }).getFirstCell() : object;
  if (one.isError()) {
    const sentence: unknown = one.getCustomData()?.['error'];
    return new CellError(String(one.getValue()), typeof sentence === 'string' ? sentence : null);
  }
  return one.isNull() ? null : one.getValue();
}
