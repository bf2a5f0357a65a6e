/** How many rows and columns of a sheet stand still; 0 and 0: none. */
export interface Frozen {
  readonly rows: number;
  readonly columns: number;
}

/** Asks where a sheet's panes are frozen; the answer can be called for after the next sync. */
export function loadFrozen(sheet: Excel.Worksheet): () => Frozen {
  const at = sheet.freezePanes.getLocationOrNullObject();
  at.load('rowIndex,columnIndex,rowCount,columnCount,isEntireRow,isEntireColumn');
  return () => {
    if (at.isNullObject) return { rows: 0, columns: 0 };
    return {
      rows: at.isEntireColumn ? 0 : at.rowIndex + at.rowCount,
      columns: at.isEntireRow ? 0 : at.columnIndex + at.columnCount,
    };
  };
}

export function freeze(sheet: Excel.Worksheet, { rows, columns }: Frozen): void {
  // What is frozen by one of the ways below stays so when another is called.
  sheet.freezePanes.unfreeze();
  if (rows > 0 && columns > 0) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
  else if (rows > 0) sheet.freezePanes.freezeRows(rows);
  else if (columns > 0) sheet.freezePanes.freezeColumns(columns);
}
