/** What Excel's error codes mean to the person at the sheet. */
const SENTENCES: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode:
    'A cell is being edited, and Excel waits for it. Press Enter or Escape in the sheet, then try again.',
  AccessDenied:
    'Excel refused the change: the sheet or the workbook is protected or open for reading only. Unprotect it, then try again.',
  InvalidSelection: 'Several areas or an object are selected. Select one block of cells, then try again.',
  ItemNotFound: 'A sheet that was there a moment ago is gone.',
  ItemAlreadyExists: 'The workbook already has something of that name.',
  RequestPayloadSizeLimitExceeded: 'Excel refused the amount of data in one step.',
  ResponsePayloadSizeLimitExceeded: 'The range is too large for Excel to hand over in one step. Select fewer cells.',
  RequestAborted: 'Excel broke off the work.',
  InactiveWorkbook: 'The workbook is no longer the one in front.',
  NonBlankCellOffSheet: 'Filled cells would be pushed off the sheet.',
  MergedRangeConflict: 'Merged cells stand in the way. Unmerge them, then try again.',
  FilteredRangeConflict: 'A filter stands in the way. Clear it, then try again.',
  UnsupportedSheet: 'That sheet holds a chart, not cells.',
};

/** One sentence for whatever Excel threw, naming what was being done: "Filling the takeoff: A cell is being edited, …". */
export function sentenceFor(doing: string, thrown: unknown): string {
  const code = codeOf(thrown);
  const known = code === null ? undefined : SENTENCES[code];
  if (known !== undefined) return `${doing}: ${known}`;
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return `${doing}: Excel says "${message}"${code === null ? '' : ` (${code})`}.`;
}

/** Excel's code of what it threw; null where it gave none. */
export function codeOf(thrown: unknown): string | null {
  if (typeof thrown !== 'object' || thrown === null || !('code' in thrown)) return null;
  return typeof thrown.code === 'string' ? thrown.code : null;
}
