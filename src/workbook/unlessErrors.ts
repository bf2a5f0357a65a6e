/**
 * A sentence as a formula gives it, and how many cells of a range are errors in its place: counts by COUNTIF pass over these.
 * `#NAME?` is what a sheet shows where the worksheet functions aren't loaded; a `plain` workbook has none.
 */
export function unlessErrors(range: string, cells: string, sentence: string, plain: boolean): string {
  const errors = `SUMPRODUCT(--ISERROR(${range}))`;
  const why = plain ? '' : ' #NAME? there means that ARCH functions are not loaded.';
  return `IF(${errors}=0,${sentence},"${cells} in error: "&${errors}&".${why}")`;
}
