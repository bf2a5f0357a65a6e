import type { ICellData, ICommandInfo, IExecutionOptions, IRange } from '@univerjs/core';
import type { EngineCore } from '../engine';
import { forgetPlaces } from '../forgetPlaces';
import type { GridFunction } from '../functions';
import { calculateByLibrary, markDirty, merged, quietConfig, type Dirty } from './dirty';
import { keepArguments, keepGoing } from './keepGoing';
import { Graph, NO_TRACES, type Traces } from './graph';
import { Run } from './run';
import type { Telling } from './telling';
import { Templates } from './template';
import { Turns } from './turns';
import { CellValues } from './value';

/** What a command's change makes dirty, as the library knows it. */
type Cause = { getDirtyData(command: ICommandInfo): Dirty };
type Cells = Readonly<Record<number, Readonly<Record<number, ICellData | null>>>>;

/** Mutations that leave every value and formula where it is. All others have the formulas read again. */
const HARMLESS =
  /^formula\.mutation\.set-(formula|array|trigger|cell|query|image)|^sheet\.mutation\.(add|remove)-worksheet-merge|^sheet\.mutation\.set-(frozen|tab-color|gridlines|(row|col)-(data|hidden|visible)|worksheet-(col-width|row-height|row-auto|row-is|order|hidden|default|permission|protection|range|right))|protection$|theme(-style)?$|gridlines|filter|numfmt/;
/** How long the grid is left alone, in ms, before formulas that were changed are read ahead. */
const AHEAD_MS = 150;
const MOVES_NAMES = /defined-name|-sheet$|worksheet-name/;

/**
 * Calculates the workbook in the library's place. The library gathers changes for a tenth of a second, looks at every
 * formula after each, and finds anew which reads which; here formulas are read once for all cells of one form, who reads
 * whom is kept until a formula changes, and only what a changed value leads to is calculated. What a formula needs beyond
 * the rules kept here the library calculates as before: a single formula, or, where it can't be told before what a formula
 * reads, the workbook.
 */
export class Calculation {
  private readonly values: CellValues;
  private readonly templates: Templates;
  private readonly causeOf: (id: string) => Cause | undefined;
  private graph: Graph | null = null;
  private namesMoved = false;
  /** Of the last calculation. */
  private before: Traces = NO_TRACES;
  /** The library's own knowledge of who reads whom is of the formulas as they stand. */
  private libraryKnows = false;
  private muted = 0;
  /** Formulas that the grid writes where they stand: each that was typed once more, as it keeps it. */
  private readonly echoes = new WeakSet<Cells>();
  private waiting: Dirty[] = [];
  private running: Promise<void> | null = null;
  private current: Run | null = null;
  /** Formulas being read: null comes out where they were changed meanwhile. */
  private reading: Promise<Graph | null> | null = null;
  /** Counts what changes formulas, names or sheets. */
  private changes = 0;
  private ahead: ReturnType<typeof setTimeout> | undefined;
  private ended = false;
  /** Why the library calculated the whole workbook the last time; null where it didn't. */
  handedOver: string | null = null;

  constructor(
    private readonly engine: EngineCore,
    functions: readonly GridFunction[],
    private readonly telling: Telling,
  ) {
    this.values = new CellValues(engine.library);
    this.templates = new Templates(engine, new Map(functions.map((fn) => [fn.name.toUpperCase(), fn])));
    const causes = engine.injector.get(engine.library.engineFormula.IActiveDirtyManagerService);
    const causeOf = causes.get.bind(causes);
    this.causeOf = (id) => causeOf(id) ?? undefined;
    // Who asks what a change makes dirty is the library's own timer: it has nothing left to do.
    causes.get = () => undefined;
    this.keepFormulaData();
    keepGoing(engine);
    keepArguments(engine);
    this.listen();
  }

  /** Waits until every change made so far has been calculated through. */
  async settled(): Promise<void> {
    do {
      await Promise.resolve();
      await this.running;
    } while (this.running !== null);
  }

  /** While `change` is made, what follows from it is known, and is not calculated. */
  without<T>(change: () => T): T {
    this.muted++;
    try {
      return change();
    } finally {
      this.muted--;
    }
  }

  /** Has formulas calculated, as if they had just been typed. */
  again(sheetId: string, areas: readonly IRange[]): void {
    const unitId = this.engine.workbook.getUnitId();
    if (areas.length > 0) this.add({ dirtyRanges: areas.map((range) => ({ unitId, sheetId, range })) });
  }

  /** The library reads every formula of the workbook at each edit, to find that none was changed. */
  private keepFormulaData(): void {
    const model = this.engine.injector.get(this.engine.library.engineFormula.FormulaDataModel);
    const update = model.updateFormulaData.bind(model);
    model.updateFormulaData = (unit, sheet, cells) =>
      this.changesFormulas(sheet, cells as Cells) ? update(unit, sheet, cells) : {};
    // And at each sheet that is put in or taken out, to tell of formulas that the graph finds by itself.
    const all = model.getFormulaData.bind(model);
    model.getFormulaData = () => (this.muted > 0 ? {} : all());
  }

  private listen(): void {
    const { core, engineFormula, sheets } = this.engine.library;
    const commands = this.engine.injector.get(core.ICommandService);
    commands.beforeCommandExecuted((command, options) => {
      if (command.id !== sheets.SetRangeValuesMutation.id || options?.['applyFormulaCalculationResult']) return;
      const { subUnitId, cellValue } = command.params as { subUnitId: string; cellValue?: Cells };
      if (!cellValue || !changesValues(cellValue)) return;
      if (options?.onlyLocal && this.holds(subUnitId, cellValue)) this.echoes.add(cellValue);
      // A formula that is typed over while all are read would be read, or not, by chance.
      else if (this.reading !== null && this.changesFormulas(subUnitId, cellValue)) this.moved();
    });
    commands.onCommandExecuted((command: Readonly<ICommandInfo>, options?: IExecutionOptions) => {
      if (command.type !== core.CommandType.MUTATION || options?.['applyFormulaCalculationResult']) return;
      if (command.id === sheets.SetRangeValuesMutation.id) {
        const { subUnitId, cellValue } = command.params as { subUnitId: string; cellValue?: Cells };
        if (!cellValue || !changesValues(cellValue)) return;
        if (!this.echoes.has(cellValue) && this.changesFormulas(subUnitId, cellValue)) this.moved();
        if (options?.onlyLocal) return;
      } else if (command.id === engineFormula.SetFormulaCalculationStartMutation.id || !HARMLESS.test(command.id)) {
        this.moved();
        if ((this.namesMoved ||= MOVES_NAMES.test(command.id))) this.telling.unknown();
      }
      const cause = this.causeOf(command.id);
      if (cause && this.muted === 0) this.add(cause.getDirtyData(command as ICommandInfo));
    });
  }

  private moved(): void {
    this.graph = null;
    this.reading = null;
    this.changes++;
    this.libraryKnows = false;
    // What it has worked out is of formulas that are no more: it is begun again.
    this.current?.stop();
    this.readAhead();
  }

  /** Nothing is read ahead any more: the grid is taken down. */
  end(): void {
    this.ended = true;
    this.changes++;
    clearTimeout(this.ahead);
  }

  /** Reads the formulas while nothing else is to be done, so that the next edit finds them read. */
  private readAhead(): void {
    clearTimeout(this.ahead);
    if (this.ended) return;
    this.ahead = setTimeout(() => {
      if (this.running !== null) return this.readAhead();
      // What fails here fails again at the next change, and is told then.
      this.preparedGraph().catch(() => undefined);
    }, AHEAD_MS);
  }

  private async preparedGraph(): Promise<void> {
    const graph = await this.graphRead();
    if (graph === null || graph.beyond !== null) return;
    const turns = new Turns(this.engine.library);
    const wanted = () => this.graph === graph && this.running === null && !this.ended;
    for (const { template, reads } of graph.order)
      if (template.steps && !(await turns.take(template.steps(reads), wanted))) return;
  }

  /** The formulas as they stand; null where they were changed while they were read. */
  private graphRead(): Promise<Graph | null> {
    if (this.graph) return Promise.resolve(this.graph);
    return (this.reading ??= this.begunReading());
  }

  private async begunReading(): Promise<Graph | null> {
    const { engine, changes } = this;
    engine.injector.get(engine.library.engineFormula.IFormulaCurrentConfigService).load(quietConfig(engine));
    if (this.namesMoved) {
      this.namesMoved = false;
      forgetPlaces(engine);
      this.templates.forget();
    }
    const graph = new Graph(engine, this.values, this.templates);
    const wanted = () => changes === this.changes;
    if (!(await new Turns(engine.library).take(graph.read(), wanted)) || !wanted()) return null;
    this.reading = null;
    return (this.graph = graph);
  }

  /** Whether the formulas about to be written stand in these very cells already. */
  private holds(sheetId: string, cells: Cells): boolean {
    const matrix = this.engine.workbook.getSheetBySheetId(sheetId)?.getCellMatrix();
    return Object.entries(cells).every(([row, line]) =>
      Object.entries(line ?? {}).every(([column, cell]) => {
        const present = matrix?.getValue(Number(row), Number(column)) as ICellData | undefined;
        return !!cell?.f && cell.f === present?.f && (cell.si ?? null) === (present.si ?? null);
      }),
    );
  }

  /** Whether the cells written, or those that they are written over, have formulas. */
  private changesFormulas(sheetId: string, cells: Cells): boolean {
    const sheet = this.engine.workbook.getSheetBySheetId(sheetId);
    const known = this.graph?.sheets.get(sheetId);
    for (const [row, line] of Object.entries(cells))
      for (const [column, cell] of Object.entries(line ?? {})) {
        if (cell?.f || cell?.si || known?.isFormula(Number(row), Number(column))) return true;
        const present = sheet?.getCellMatrix().getValue(Number(row), Number(column)) as ICellData | undefined;
        if (present?.f || present?.si) return true;
      }
    return false;
  }

  private add(dirty: Dirty): void {
    this.waiting.push(dirty);
    this.current?.stop();
    // All that one command changes is calculated together.
    this.running ??= Promise.resolve().then(() => this.calculateAll());
  }

  private async calculateAll(): Promise<void> {
    try {
      await this.telling.begins();
      while (this.waiting.length > 0 && !this.ended) {
        const dirty = this.waiting.splice(0);
        try {
          if (!(await this.calculated(dirty))) this.waiting.unshift(...dirty);
        } catch (thrown) {
          this.moved();
          await this.byLibrary(dirty, thrown instanceof Error ? thrown.message : String(thrown));
        }
      }
    } finally {
      // In the same breath as the last look at what waits: what comes now starts anew.
      this.running = null;
      this.telling.ends();
    }
  }

  /** False where a new change came between: nothing is written then. */
  private async calculated(dirty: readonly Dirty[]): Promise<boolean> {
    const { engineFormula } = this.engine.library;
    const { injector } = this.engine;
    const graph = await this.graphRead();
    // Changes that came while it was read are calculated together with these.
    if (graph === null || this.graph !== graph || this.waiting.length > 0) return false;
    const config = injector.get(engineFormula.IFormulaCurrentConfigService);
    config.load(quietConfig(this.engine));
    injector.get(engineFormula.IFormulaRuntimeService).reset();
    const beyond = graph.beyond ?? (this.othersCalculate() ? 'rules of cells are formulas, too' : null);
    if (beyond !== null) return this.byLibrary(dirty, beyond).then(() => true);
    this.handedOver = null;
    if (graph.hidesMatter) {
      const model = injector.get(engineFormula.FormulaDataModel);
      config.load({ ...quietConfig(this.engine), rowData: model.getHiddenRowsFiltered() });
    }
    markDirty(graph, dirty);
    graph.touchMoved(this.before);
    const run = new Run(this.engine, graph, this.values);
    this.current = run;
    const done = await run.calculate().finally(() => (this.current = null));
    if (!done) return false;
    this.before = graph.traces();
    run.write();
    return true;
  }

  private othersCalculate(): boolean {
    const { engineFormula } = this.engine.library;
    const others = this.engine.injector.get(engineFormula.IOtherFormulaManagerService).getOtherFormulaData();
    const features = this.engine.injector
      .get(engineFormula.IFeatureCalculationManagerService)
      .getReferenceExecutorMap();
    return Object.keys(others).length > 0 || features.size > 0;
  }

  private async byLibrary(dirty: readonly Dirty[], why: string): Promise<void> {
    this.handedOver = why;
    this.before = NO_TRACES;
    if (!this.libraryKnows) forgetPlaces(this.engine);
    this.libraryKnows = true;
    await calculateByLibrary(this.engine, merged(dirty));
    // Its results stand in the cells; formulas that are ours to calculate are read from there again.
    if (this.graph?.beyond === null) this.graph = null;
  }
}

/** A cell that is only given another look changes nothing. */
function changesValues(cells: Cells): boolean {
  return Object.values(cells).some((line) =>
    Object.values(line ?? {}).some((cell) => !cell || Object.keys(cell).some((key) => key !== 's' && key !== 'custom')),
  );
}
