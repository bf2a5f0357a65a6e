import type { BaseAstNode } from '@univerjs/engine-formula';
import { relativeForm } from '../../../src/workbook/formulas/relativeForm';
import type { EngineCore } from '../engine';
import type { GridFunction } from '../functions';
import { compileFormula, stepsOf, type Compiled, type Steps } from './compile';
import type { GridLibrary } from '../library';

/** A reference as a formula's form names it; what is not fixed with `$` moves with the cell. */
export interface Reference {
  /** Null: the sheet of the formula. */
  readonly sheet: string | null;
  readonly first: Corner;
  readonly last: Corner;
}

export interface Corner {
  /** Null: the whole column, or the whole row. */
  readonly row: number | null;
  readonly column: number | null;
  readonly fixedRow: boolean;
  readonly fixedColumn: boolean;
}

/** One form of a formula, read once for all cells that have it. */
export interface Template {
  /** The formula in small letters. */
  readonly words: string;
  readonly ast: BaseAstNode;
  readonly references: readonly Reference[];
  /** Null: the library works it out. */
  readonly compiled: Compiled | null;
  /** What can be worked out of it beforehand, step by step, where it takes long; null where it doesn't. */
  readonly steps: Steps | null;
  /** Calculated at every change, as TODAY is. */
  readonly always: boolean;
  /** Reads cells that only its calculation tells. */
  readonly unforeseen: boolean;
  readonly hidesMatter: boolean;
}

/** Kinds of nodes in the library's tree of a formula. */
export const KIND = {
  reference: 1,
  value: 2,
  operator: 3,
  call: 4,
  error: 7,
  root: 9,
  union: 10,
  prefix: 11,
  suffix: 12,
  none: 13,
};
const KNOWN: ReadonlySet<number> = new Set(Object.values(KIND));

function readTemplate(
  library: GridLibrary,
  formula: string,
  ast: BaseAstNode,
  executorOf: (name: string) => Executor | null,
  functions: ReadonlyMap<string, GridFunction>,
): Template {
  const references: Reference[] = [];
  const places = new Map<BaseAstNode, number>();
  let always = false;
  let unforeseen = false;
  let hidesMatter = false;
  const see = (node: BaseAstNode) => {
    const kind = node.nodeType as number;
    always ||= node.isForcedCalculateFunction();
    unforeseen ||= !KNOWN.has(kind) || (kind === KIND.suffix && node.getToken() === '#');
    const reference = referenceOf(library, node);
    if (reference !== null) {
      places.set(node, references.length);
      references.push(reference);
      return;
    }
    if (kind === KIND.reference || kind === KIND.union) unforeseen = true;
    if (kind === KIND.call) {
      const executor = executorOf(node.getToken());
      unforeseen ||= executor?.isAddress() ?? false;
      hidesMatter ||= executor?.needsFilteredOutRows ?? false;
    }
    for (const child of node.getChildren()) see(child);
  };
  see(ast);
  const form = { places, references, executorOf, functions };
  const compiled = always || unforeseen ? null : compileFormula(library, ast, form);
  const steps = compiled && stepsOf(library, ast, form);
  return { words: formula.toLowerCase(), ast, references, compiled, steps, always, unforeseen, hidesMatter };
}

/** What the library knows of a function. */
export type Executor = NonNullable<
  ReturnType<InstanceType<GridLibrary['engineFormula']['FunctionService']>['getExecutor']>
>;

function referenceOf(library: GridLibrary, node: BaseAstNode): Reference | null {
  if ((node.nodeType as number) === KIND.reference) {
    const end = endOf(library, node);
    return end && end.corner.row !== null && end.corner.column !== null
      ? { sheet: end.sheet, first: end.corner, last: end.corner }
      : null;
  }
  if ((node.nodeType as number) !== KIND.union) return null;
  const [one, other] = node.getChildren();
  if ((one?.nodeType as number) !== KIND.reference || (other?.nodeType as number) !== KIND.reference) return null;
  const [first, last] = [endOf(library, one!), endOf(library, other!)];
  if (!first || !last || (last.sheet !== null && last.sheet !== first.sheet)) return null;
  return { sheet: first.sheet, first: first.corner, last: last.corner };
}

/** `$A` and `3` are ends, too: of whole columns and rows. */
const END = /^(\$?)([A-Z]{1,3})?(\$?)(\d+)?$/i;

function endOf(library: GridLibrary, node: BaseAstNode): { sheet: string | null; corner: Corner } | null {
  const { unitId, sheetName, range } = library.engineFormula.deserializeRangeWithSheet(node.getToken().trim());
  const text = node.getToken().trim();
  const own = text.slice(text.lastIndexOf('!') + 1);
  const read = END.exec(own);
  if (unitId !== '' || !read) return null;
  const [, one, letters, other, digits] = read;
  const row = digits === undefined ? null : Number(digits) - 1;
  const column = letters === undefined ? null : range.startColumn;
  if (row === null && column === null) return null;
  return {
    sheet: sheetName === '' ? null : sheetName,
    corner: {
      row,
      column,
      fixedColumn: letters !== undefined && one === '$',
      fixedRow: letters === undefined ? one === '$' : other === '$',
    },
  };
}

/** A formula as it reads in a cell. */
export interface WrittenFormula {
  readonly row: number;
  readonly column: number;
  /** `=…` */
  readonly formula: string;
}

/** A formula that was read, and the cell that its template is written for. */
export interface Form {
  readonly template: Template;
  readonly row: number;
  readonly column: number;
}

/**
 * Forms of formulas, each read once, until names or sheets change. Formulas that read alike as told from their own cells have one
 * form: the library writes every formula below a row that is deleted or put in by itself, and reading one takes a tenth
 * of a millisecond.
 */
export class Templates {
  private readonly kept = new Map<string, Form>();

  constructor(
    private readonly engine: EngineCore,
    private readonly functions: ReadonlyMap<string, GridFunction>,
  ) {}

  forget(): void {
    this.kept.clear();
  }

  of({ formula, row, column }: WrittenFormula): Form {
    const key = relativeForm(formula.slice(1), row, column);
    let form = this.kept.get(key);
    if (!form) {
      const executorOf = (name: string): Executor | null =>
        (this.engine.injector.get(this.engine.library.engineFormula.IFunctionService).getExecutor(name as never) as
          Executor | undefined) ?? null;
      const template = readTemplate(this.engine.library, formula, this.ast(formula), executorOf, this.functions);
      this.kept.set(key, (form = { template, row, column }));
    }
    return form;
  }

  ast(formula: string): BaseAstNode {
    const { library, injector, workbook } = this.engine;
    const { generateAstNode, Lexer, AstTreeBuilder, IFormulaCurrentConfigService } = library.engineFormula;
    return generateAstNode(
      workbook.getUnitId(),
      formula,
      injector.get(Lexer),
      injector.get(AstTreeBuilder),
      injector.get(IFormulaCurrentConfigService),
    );
  }
}
