import type { CDPSession, Page } from 'playwright-core';

/** Milliseconds by the clock, and those of them in which the page's thread was at work: a busy machine makes only the first longer. */
export interface Span {
  readonly clock: number;
  readonly work: number;
}

/** What was seen of the page while something was done to it. */
export interface Watched {
  /** The longest in which the page did one thing and took nothing else. */
  readonly task: Span;
  /** The longest between two pictures. */
  readonly picture: Span;
  /** From the last Enter until the values that follow stood in the cells, where any was pressed. */
  readonly values: Span | null;
  /** From the last Enter until the first picture of the grid with what was typed in its cell, or the word that it calculates. */
  readonly answer: Span | null;
  /** For how long the pane said that boards were planned, in ms by the clock. */
  readonly planning: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds; `tdur` of the thread's own time. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

const CATEGORIES = ['toplevel', 'devtools.timeline', 'blink.user_timing'];
const [ENTER, VALUES, SAID, TAKEN] = ['bench: enter', 'bench: values', 'bench: said', 'bench: taken'];
const [PLANNING, PLANNED] = ['bench: planning', 'bench: planned'];

/** As text: the runner of this file marks functions by a name that a page doesn't know. */
const MARKING = `{
  const frame = () => requestAnimationFrame(frame);
  frame();
  addEventListener('keydown', ({ key }) => { if (key === 'Enter') performance.mark('${ENTER}'); }, true);
  const line = document.getElementById('wb-status');
  const all = { childList: true, characterData: true, subtree: true };
  new MutationObserver(() => { if (line.textContent === 'Calculating…') performance.mark('${SAID}'); }).observe(line, all);
  // The selection moves on once what was typed stands in its cell.
  workbench.host.onSelect(() => performance.mark('${TAKEN}'));
  let planning = false;
  new MutationObserver(() => {
    const now = document.getElementById('pane').textContent.includes('Planning the boards');
    if (now !== planning) performance.mark(now ? '${PLANNING}' : '${PLANNED}');
    planning = now;
  }).observe(document.getElementById('pane'), all);
  globalThis.edits = 0;
  workbench.host.onEdit(() => { performance.mark('${VALUES}'); globalThis.edits++; });
}`;

/** Watches the workbench from Chromium's own record of what its threads do. */
export class Watch {
  private constructor(
    private readonly page: Page,
    private readonly session: CDPSession,
  ) {}

  static async on(page: Page): Promise<Watch> {
    await page.evaluate(MARKING);
    return new Watch(page, await page.context().newCDPSession(page));
  }

  async during(deed: () => Promise<unknown>): Promise<Watched> {
    const events: TraceEvent[] = [];
    const collect = ({ value }: { value: unknown[] }) => events.push(...(value as TraceEvent[]));
    this.session.on('Tracing.dataCollected', collect);
    const traceConfig = { includedCategories: CATEGORIES };
    await this.session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig });
    await deed();
    const complete = new Promise((resolve) => this.session.once('Tracing.tracingComplete', resolve));
    await this.session.send('Tracing.end');
    await complete;
    this.session.off('Tracing.dataCollected', collect);
    return seen(events);
  }

  /** The page's policy lets no text be run as a script in it: it is asked from here. */
  async until(wanted: string, every: number): Promise<void> {
    for (const began = Date.now(); !(await this.page.evaluate<boolean>(wanted)); await this.page.waitForTimeout(every))
      if (Date.now() - began > 180_000) throw new Error(`waited for three minutes in vain: ${wanted}`);
  }
}

function seen(events: readonly TraceEvent[]): Watched {
  const main = events.find(({ ph, args }) => ph === 'M' && args?.name === 'CrRendererMain');
  const own = events
    .filter(({ pid, tid }) => pid === main?.pid && tid === main.tid)
    .sort((one, other) => one.ts - other.ts);
  const tasks = own.filter(({ name, ph }) => ph === 'X' && name === 'ThreadControllerImpl::RunTask');
  if (tasks.length === 0) throw new Error("Chromium recorded no task of the page's thread");
  const frames = own.filter(({ name, ph }) => ph === 'X' && name === 'FireAnimationFrame').map(({ ts }) => ts);
  const between = (from: number, to: number): Span => {
    const inside = tasks.filter(({ ts }) => ts >= from && ts < to);
    return { clock: (to - from) / 1000, work: inside.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1000 };
  };
  const last = (mark: string, from = 0) => own.filter(({ name, ts }) => name === mark && ts >= from).at(-1)?.ts;
  /** The end of the task that draws the first picture after this. */
  const drawn = (after: number) => {
    const frame = frames.find((ts) => ts > after) ?? after;
    const task = tasks.filter(({ ts }) => ts <= frame).at(-1);
    return task ? task.ts + (task.dur ?? 0) : frame;
  };
  const enter = last(ENTER);
  const began = enter === undefined ? undefined : (tasks.filter(({ ts }) => ts <= enter).at(-1)?.ts ?? enter);
  const values = began === undefined ? undefined : last(VALUES, began);
  const shown = own.find(({ name, ts }) => (name === SAID || name === TAKEN) && ts >= (began ?? Infinity))?.ts;
  const [planning, planned] = [last(PLANNING), last(PLANNED)];
  return {
    task: longest(tasks.map(({ dur = 0, tdur = 0 }) => ({ clock: dur / 1000, work: tdur / 1000 }))),
    picture: longest(frames.slice(1).map((ts, at) => between(frames[at]!, ts))),
    values: values === undefined ? null : between(began!, values),
    answer: values === undefined ? null : between(began!, drawn(Math.min(values, shown ?? values))),
    planning: planning === undefined || planned === undefined ? 0 : (planned - planning) / 1000,
  };
}

function longest(spans: readonly Span[]): Span {
  const most = (of: (span: Span) => number) => spans.reduce((found, span) => Math.max(found, of(span)), 0);
  return { clock: most(({ clock }) => clock), work: most(({ work }) => work) };
}
