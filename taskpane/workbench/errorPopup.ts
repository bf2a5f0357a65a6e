import type { Engine } from './engine';
import { cellData, cellError } from './engine';
import type { GridPageLibrary } from './library';

const TALLER = 96;
const WIDER = 320;

/** The grid explains "#VALUE!" in general words when the pointer rests on it; ours has a sentence of its own. */
export function showErrorSentences(engine: Engine, { preset }: GridPageLibrary): void {
  const alerts = engine.injector.get(preset.CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { subUnitId, row, col } = alert.location;
    const sheet = engine.workbook.getSheetBySheetId(subUnitId);
    const cell = sheet ? cellData(engine, sheet, row, col) : null;
    const sentence = cellError(cell);
    show(
      sentence === null ? alert : { ...alert, title: String(cell!.v), message: sentence, width: WIDER, height: TALLER },
    );
  };
}
