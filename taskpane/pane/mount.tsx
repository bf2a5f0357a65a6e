import { render } from 'preact';
import { defaultStandards } from '../../src/standards';
import type { Host } from '../host';
import type { Core } from './core';
import { type Bench, type PaneOptions } from './deeds/bench';
import { listSheets, sheetCameOrWent } from './deeds/chooseList';
import { followTotals } from './deeds/followTotals';
import { keepList, resumeList } from './deeds/keepList';
import { keepPlans, tellPlans } from './deeds/plans';
import { loadShop } from './deeds/shop';
import { Pane } from './pane';
import { reduce } from './reducer';
import { initialState } from './state';
import { createStore } from './store';
import { followTheme } from './theme';
import { USABLE } from './usable';
import './look/look';

export type { OfficeTheme, PaneOptions } from './deeds/bench';

/** Puts the pane into `root`, working on `host`'s workbook. Gives back the way to take it down again. */
export function mountPane(root: HTMLElement, host: Host, options: PaneOptions, core: Core): () => void {
  const store = createStore(reduce, initialState(defaultStandards()));
  const bench: Bench = { store, host, core, options };
  root.classList.add('pane');
  root.replaceChildren();
  const leaveTheme = followTheme(root, options.theme);
  render(<Pane bench={bench} />, root);
  performance.mark(USABLE);
  void listSheets(bench);
  const leavePlans = keepPlans(bench);
  const leaveTold = options.onPlans ? tellPlans(bench, options.onPlans) : () => undefined;
  const leaveTotals = followTotals(bench);
  const leaveList = options.keepsList ? keepList(bench) : () => undefined;
  const leaveSheets = host.onSheets?.((name) => sheetCameOrWent(bench, name)) ?? (() => undefined);
  const leaveRefusals =
    host.onRefusal?.((sentence) =>
      store.send({ type: 'told', notice: sentence === null ? null : { tone: 'error', text: sentence } }),
    ) ?? (() => undefined);
  void loadShop(bench).then(() => (options.keepsList ? resumeList(bench) : undefined));
  return () => {
    leaveList();
    leavePlans();
    leaveTold();
    leaveTotals();
    leaveSheets();
    leaveRefusals();
    leaveTheme();
    render(null, root);
  };
}
