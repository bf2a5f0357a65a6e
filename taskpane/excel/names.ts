import type { Sheet } from '../../src/workbook/sheet';

/** Names that were set, each with the formula it had before; null where it is new. */
export type NamesBefore = readonly { readonly name: string; readonly formula: string | null }[];

/** Defines the sheets' names before any formula uses them. Two round trips, however many names there are. */
export async function defineNames(context: Excel.RequestContext, sheets: readonly Sheet[]): Promise<NamesBefore> {
  const wanted = sheets.flatMap((sheet) => sheet.names ?? []);
  if (wanted.length === 0) return [];
  const { names } = context.workbook;
  const found = wanted.map(({ name, ref }) => {
    const item = names.getItemOrNullObject(name);
    item.load('formula');
    return { name, ref: '=' + ref, item };
  });
  await context.sync();
  const before = found.map(({ name, item }) => ({ name, formula: item.isNullObject ? null : String(item.formula) }));
  for (const { name, ref, item } of found) {
    if (item.isNullObject) names.add(name, ref);
    else item.formula = ref;
  }
  await context.sync();
  return before;
}
