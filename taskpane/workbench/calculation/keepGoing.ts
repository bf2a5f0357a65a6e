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
