import type { Engine } from './engine';
import type { WorkbenchHost } from './workbenchHost';
import { textCut } from './evenRows';
import { notesAt } from './typing';

/** The line above the grid: what was refused, what the selected cell is about, and whether the grid is calculating. */
export function showStatus(engine: Engine, host: WorkbenchHost, line: HTMLElement): (sentence: string) => void {
  let about = '';
  /** Something said stays until another cell is selected. */
  let said: { readonly sentence: string; readonly at: string } | null = null;
  let busy = false;
  const draw = () => {
    const text = busy ? 'Calculating…' : (said?.sentence ?? about);
    if (line.textContent !== text) line.textContent = text;
    line.title = text;
  };
  const select = async () => {
    const at = await host.cellAt();
    if (!at.ok) return;
    const { sheet, address, row, column, error } = at.value;
    if (said && said.at !== `${sheet}!${address}`) said = null;
    const worksheet = engine.workbook.getSheetBySheetName(sheet);
    const comment = worksheet ? notesAt(worksheet, row, column)?.comment : undefined;
    const sentence = error ?? comment ?? (worksheet && textCut(worksheet, at.value));
    about = sentence === undefined ? '' : `${address}: ${sentence}`;
    draw();
  };
  host.onSelect(() => void select());
  host.onEdit(() => void select());
  const say = (sentence: string) => {
    void host.cellAt().then((at) => {
      said = { sentence, at: at.ok ? `${at.value.sheet}!${at.value.address}` : '' };
      draw();
    });
  };
  let slow: string | null = null;
  engine.onCalculating((calculating) => {
    busy = calculating;
    draw();
    const why = calculating ? slow : engine.calculation.handedOver;
    if (why !== null && why !== slow) say(`Each edit calculates the whole workbook, which takes longer: ${why}.`);
    slow = why;
  });
  return say;
}
