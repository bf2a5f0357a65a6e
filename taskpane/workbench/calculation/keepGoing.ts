import type { BaseValueObject, FunctionVariantType } from '@univerjs/engine-formula';
import type { EngineCore } from '../engine';
import { valueObject } from './compile';
import { CellError } from './value';

/** A formula that the library fails at is an error value: thrown on, it would end all its calculation for good. */
export function keepGoing({ library, injector }: EngineCore): void {
  const { engineFormula } = library;
  const interpreter = injector.get(engineFormula.Interpreter);
  const [execute, executeAsync] = [interpreter.execute.bind(interpreter), interpreter.executeAsync.bind(interpreter)];
  const failed = ({ node }: Parameters<typeof execute>[0], thrown: unknown) => {
    node?.resetCalculationState();
    const why = `The formula couldn't be worked out: ${thrown instanceof Error ? thrown.message : String(thrown)}.`;
    return valueObject(library, new CellError('#VALUE!', why));
  };
  interpreter.execute = (data) => {
    try {
      return execute(data);
    } catch (thrown) {
      return failed(data, thrown);
    }
  };
  interpreter.executeAsync = (data) => executeAsync(data).catch((thrown: unknown) => failed(data, thrown));
}

/** SORT sorts the very rows that it is given, which other formulas over the same cells are given, too: they are put back. */
export function keepArguments({ library, injector }: EngineCore): void {
  const sort = injector.get(library.engineFormula.IFunctionService).getExecutor('SORT');
  if (!sort) return;
  const calculate = sort.calculate.bind(sort) as (...variants: BaseValueObject[]) => FunctionVariantType;
  sort.calculate = (...variants) => {
    const array = variants[0] as BaseValueObject | undefined;
    const rows = array?.isArray() ? [...array.getArrayValue()] : null;
    const sorted = calculate(...(variants as BaseValueObject[]));
    if (rows !== null) array!.setArrayValue(rows as BaseValueObject[][]);
    return sorted;
  };
}
