/**
 * A sentence as a formula gives it, and how many cells of a range are errors in its place: counts by COUNTIF pass over these.
 * `#NAME?` is what a sheet shows where the worksheet functions aren't loaded.
 */
export function unlessErrors(range: string, cells: string, sentence: string): string {
  const errors = `SUMPRODUCT(--ISERROR(${range}))`;
  return `IF(${errors}=0,${sentence},"${cells} in error: "&${errors}&". #NAME? there means that ARCH functions are not loaded.")`;
}
