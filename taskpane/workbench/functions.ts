import type { BaseFunction, BaseValueObject, FunctionVariantType, IFunctionInfo } from '@univerjs/engine-formula';
import { refuse, type Result } from '../../src/result';
import type { EngineCore, PlainValue } from './engine';
import type { GridLibrary } from './library';

/** A worksheet function as the grid needs it: what its argument help says, and the call. */
export interface GridFunction {
  /** As typed in a cell: `ARCH.RADIUS`. */
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly { readonly name: string; readonly description: string; readonly optional: boolean }[];
  /** Arguments as Excel hands them over: a range as rows, a blank as null. */
  call(args: readonly (PlainValue | PlainValue[][])[]): Result<PlainValue | readonly (readonly PlainValue[])[]>;
  /** Of a call that takes long: work that it then finds done, step by step, so that the page need not stand still. */
  readonly steps?: (args: readonly (PlainValue | PlainValue[][])[]) => Iterable<void>;
}

/** Calls a function; where it throws, that is its refusal. */
export function callFunction(
  fn: GridFunction,
  args: readonly (PlainValue | PlainValue[][])[],
): ReturnType<GridFunction['call']> {
  try {
    return fn.call(args);
  } catch (thrown) {
    return refuse(`${fn.name} failed: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
}

export function registerFunctions(
  { library, injector }: Pick<EngineCore, 'library' | 'injector'>,
  functions: readonly GridFunction[],
): void {
  const { IFunctionService } = library.engineFormula;
  injector.get(IFunctionService).registerExecutors(...functions.map((fn) => executor(library, fn)));
  injector
    .get(library.sheetsFormula.IDescriptionService)
    .registerDescriptions(functions.map((fn) => argumentHelp(library, fn)));
}

function argumentHelp({ engineFormula }: GridLibrary, fn: GridFunction): IFunctionInfo {
  return {
    functionName: fn.name,
    functionType: engineFormula.FunctionType.User,
    description: fn.description,
    abstract: fn.description.split(/(?<=[.;:])\s/)[0] ?? fn.description,
    functionParameter: fn.parameters.map(({ name, description, optional }) => ({
      name,
      detail: description,
      example: name,
      require: optional ? 0 : 1,
      repeat: 0,
    })),
  };
}

function executor({ engineFormula }: GridLibrary, fn: GridFunction): BaseFunction {
  const refusal = (message: string) => {
    const error = engineFormula.ErrorValueObject.create(engineFormula.ErrorType.VALUE, message);
    error.withCustomData({ error: message });
    return error;
  };

  class WorksheetFunction extends engineFormula.BaseFunction {
    // Any number of arguments: the function itself says in words what is missing or too much.
    override minParams = -1;
    override maxParams = -1;

    /** Text stays text: the grid would make a date of "1/2" and a 3 of "3'". */
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...variants: FunctionVariantType[]): FunctionVariantType {
      const args: (PlainValue | PlainValue[][])[] = [];
      for (const variant of variants) {
        const argument = plainArgument(variant as BaseValueObject);
        if (argument.error) return argument.error;
        args.push(argument.value);
      }
      const result = callFunction(fn, args);
      return result.ok ? valueObject(engineFormula, result.value) : refusal(result.message);
    }
  }
  return new WorksheetFunction(fn.name);
}

type FormulaEngine = GridLibrary['engineFormula'];
type Argument =
  { readonly value: PlainValue | PlainValue[][]; readonly error?: undefined } | { readonly error: BaseValueObject };

/** An error in any cell of an argument is the answer, as with Excel's own functions. */
function plainArgument(variant: BaseValueObject): Argument {
  if (variant.isError()) return { error: variant };
  if (!variant.isArray()) return { value: plainScalar(variant) };
  const array = variant as InstanceType<FormulaEngine['ArrayValueObject']>;
  const rows: PlainValue[][] = [];
  for (let row = 0; row < array.getRowCount(); row++) {
    rows.push([]);
    for (let column = 0; column < array.getColumnCount(); column++) {
      const cell = array.get(row, column);
      if (cell?.isError()) return { error: cell };
      rows[row]!.push(cell ? plainScalar(cell) : null);
    }
  }
  // A reference to one cell comes as an array too.
  const single = rows.length === 1 && rows[0]!.length === 1;
  return { value: single ? rows[0]![0]! : rows };
}

function plainScalar(object: BaseValueObject): PlainValue {
  return object.isNull() ? null : object.getValue();
}

function valueObject(
  engineFormula: FormulaEngine,
  value: PlainValue | readonly (readonly PlainValue[])[],
): FunctionVariantType {
  if (value === null) return engineFormula.NullValueObject.create();
  if (typeof value === 'number') return engineFormula.NumberValueObject.create(value);
  if (typeof value === 'boolean') return engineFormula.BooleanValueObject.create(value);
  if (typeof value === 'string') return engineFormula.StringValueObject.create(value);
  return engineFormula.ArrayValueObject.create({
    calculateValueList: value.map((row) => row.map((cell) => valueObject(engineFormula, cell) as BaseValueObject)),
    rowCount: value.length,
    columnCount: value[0]?.length ?? 0,
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
}
