import type { EngineCore } from './engine';

/**
 * The grid keeps formulas as it has read them, each name replaced by where it stood, and which cells each formula reads, of
 * sheets that are gone, too. When names or sheets have moved it is made to forget both, and reads all formulas again;
 * otherwise `Shares` would be looked up where it stood before the last filling. Never in the middle of a calculation, which
 * reads its formulas first and works with what it has read.
 */
export function forgetPlaces({ library: { engineFormula }, injector }: Pick<EngineCore, 'library' | 'injector'>): void {
  // Every key holds the empty text: all formulas are forgotten.
  injector.get(engineFormula.IFunctionService).deleteFormulaAstCacheKey('');
  // All that this does is to empty what it keeps; the service goes on as new.
  injector.get(engineFormula.LexerTreeBuilder).dispose();
  injector.get(engineFormula.IDependencyManagerService).reset();
}
