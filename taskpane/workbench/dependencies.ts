import type { Injector } from '@univerjs/core';
import type { FormulaDependencyTree, IFormulaDependencyTree } from '@univerjs/engine-formula';
import type { GridLibrary } from './library';

/** The ranges a formula was entered under, as its own or as those of the formula it shares and how far it is from it. */
interface Entered {
  readonly ranges: string;
  readonly right: number;
  readonly down: number;
}

/**
 * The grid keeps an index from ranges to the formulas that look at them, and at each calculation enters every formula into
 * it again, also where it still stands as it did: a fifth of the time of an edit with 300 openings, half with 1,000, and an
 * index that grows with each. Here only formulas that are new or look elsewhere than before are entered.
 *
 * A formula changed, moved or deleted gets another id from the grid, and a clearing of the index, which takes out what
 * others say of a sheet too, is followed by entering everything: what is kept here can lack nothing that the grid has.
 */
export function keepDependencies({ engineFormula }: GridLibrary, injector: Injector): void {
  const index = injector.get(engineFormula.IDependencyManagerService);
  const entered = new Map<number, Entered>();
  /** Each calculation makes its formulas' objects anew, so a text is good for as long as its object. */
  const texts = new WeakMap<FormulaDependencyTree, string>();
  const textOf = (tree: FormulaDependencyTree) => {
    const text = texts.get(tree) ?? JSON.stringify(tree.rangeList);
    texts.set(tree, text);
    return text;
  };

  const enter = index.addDependencyRTreeCache.bind(index);
  index.addDependencyRTreeCache = (tree: IFormulaDependencyTree) => {
    const own = 'refTree' in tree ? tree.refTree : tree;
    if (!own) return enter(tree);
    const now: Entered = { ranges: textOf(own), right: tree.refOffsetX, down: tree.refOffsetY };
    const before = entered.get(tree.treeId);
    if (before?.ranges === now.ranges && before.right === now.right && before.down === now.down) return;
    entered.set(tree.treeId, now);
    enter(tree);
  };

  const forgetting = <Given extends unknown[]>(clear: (...given: Given) => void) => {
    const clearIndex = clear.bind(index);
    return (...given: Given) => {
      entered.clear();
      clearIndex(...given);
    };
  };
  index.reset = forgetting(index.reset);
  index.clearFormulaDependency = forgetting(index.clearFormulaDependency);
  index.clearOtherFormulaDependency = forgetting(index.clearOtherFormulaDependency);
  index.clearFeatureFormulaDependency = forgetting(index.clearFeatureFormulaDependency);
  index.removeFormulaDependencyByDefinedName = forgetting(index.removeFormulaDependencyByDefinedName);

  const remove = index.removeFormulaDependency.bind(index);
  index.removeFormulaDependency = (unitId, sheetId, row, column) => {
    const id = index.getFormulaDependency(unitId, sheetId, row, column);
    if (id != null) entered.delete(id);
    remove(unitId, sheetId, row, column);
  };
}
