import type { ICommandInfo, Injector } from '@univerjs/core';
import type { GridLibrary } from './library';

/**
 * The grid keeps formulas as it has read them, each name replaced by where it stood, and which cells each formula reads, of
 * sheets that are gone, too. Before a calculation that follows on names or sheets it forgets both, and reads all formulas
 * again; otherwise `Shares` would be looked up where it stood before the last filling.
 */
export function forgetPlaces({ core, engineFormula, sheets }: GridLibrary, injector: Injector): void {
  const { SetDefinedNameMutation, RemoveDefinedNameMutation, SetFormulaCalculationStartMutation } = engineFormula;
  const moves = [SetDefinedNameMutation.id, RemoveDefinedNameMutation.id, sheets.RemoveSheetMutation.id];
  const commands = injector.get(core.ICommandService);
  let outdated = false;
  commands.onCommandExecuted((command: Readonly<ICommandInfo>) => {
    outdated ||= moves.includes(command.id);
  });
  // Never in the middle of one: a calculation reads its formulas first, and works with what it has read.
  commands.beforeCommandExecuted((command: Readonly<ICommandInfo>) => {
    if (!outdated || command.id !== SetFormulaCalculationStartMutation.id) return;
    outdated = false;
    // Every key holds the empty text: all formulas are forgotten.
    injector.get(engineFormula.IFunctionService).deleteFormulaAstCacheKey('');
    // All that this does is to empty what it keeps; the service goes on as new.
    injector.get(engineFormula.LexerTreeBuilder).dispose();
    injector.get(engineFormula.IDependencyManagerService).reset();
  });
}
