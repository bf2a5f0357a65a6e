/** How a cell looks: its `look` names a style; `across` and `down` merge it; `markup` stands in place of its text. */
export interface Cell {
  readonly text: string;
  readonly look: string;
  readonly across?: number;
  readonly markup?: string;
}

export const escaped = (text: string) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');

const NAMESPACES = ['office', 'style', 'text', 'table']
  .map((name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`)
  .concat('xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"')
  .join(' ');

export interface Looks {
  /** Cell styles by name: attributes of the cell, then of its paragraph and text. */
  readonly [look: string]: { readonly cell?: string; readonly align?: string; readonly text?: string };
}

export interface Book {
  readonly looks: Looks;
  readonly widths: readonly number[];
  readonly page?: string;
  readonly sheets: readonly (readonly (readonly Cell[])[])[];
  /** Rows repeated on each page, at the top. */
  readonly repeated?: number;
}

/** The workbook as text. Widths in inches. */
export function book({ looks, widths, page = '', sheets, repeated = 0 }: Book): string {
  const styles = Object.entries(looks)
    .map(
      ([name, { cell = '', align = 'start', text = '' }]) =>
        `<style:style style:name="${name}" style:family="table-cell"><style:table-cell-properties fo:padding="0.02in" ${cell}/><style:paragraph-properties fo:text-align="${align}"/><style:text-properties style:font-name="Liberation Sans" fo:font-family="'Liberation Sans'" ${/font-size/.test(text) ? '' : 'fo:font-size="9pt"'} ${text}/></style:style>`,
    )
    .join('');
  const columns = widths.map(
    (width, at) =>
      `<style:style style:name="c${at}" style:family="table-column"><style:table-column-properties style:column-width="${width}in"/></style:style>`,
  );
  const cell = ({ text, look, across = 1, markup }: Cell) =>
    `<table:table-cell table:style-name="${look}" ${across > 1 ? `table:number-columns-spanned="${across}" table:number-rows-spanned="1"` : ''} office:value-type="string"><text:p>${markup ?? escaped(text)}</text:p></table:table-cell>${'<table:covered-table-cell/>'.repeat(across - 1)}`;
  const row = (cells: readonly Cell[]) =>
    `<table:table-row table:style-name="r">${cells.map((one) => (one.text === '' && !one.markup ? `<table:table-cell table:style-name="${one.look}"/>` : cell(one))).join('')}</table:table-row>`;
  const tables = sheets.map(
    (rows, at) =>
      `<table:table table:name="S${at}" table:style-name="t">${widths.map((_, column) => `<table:table-column table:style-name="c${column}"/>`).join('')}${repeated > 0 ? `<table:table-header-rows>${rows.slice(0, repeated).map(row).join('')}</table:table-header-rows>` : ''}${rows.slice(repeated).map(row).join('')}</table:table>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document ${NAMESPACES} office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:automatic-styles>
<style:page-layout style:name="pm"><style:page-layout-properties fo:page-width="11in" fo:page-height="8.5in" style:print-orientation="landscape" fo:margin="0.5in" ${page}/><style:header-style/><style:footer-style/></style:page-layout>
<style:style style:name="t" style:family="table" style:master-page-name="Default"/>
<style:style style:name="r" style:family="table-row"><style:table-row-properties style:use-optimal-row-height="true"/></style:style>
<style:style style:name="up" style:family="text"><style:text-properties style:text-position="super 58%"/></style:style>
<style:style style:name="low" style:family="text"><style:text-properties style:text-position="sub 58%"/></style:style>
${columns.join('')}${styles}
</office:automatic-styles>
<office:master-styles><style:master-page style:name="Default" style:page-layout-name="pm"/></office:master-styles>
<office:body><office:spreadsheet>${tables.join('')}</office:spreadsheet></office:body></office:document>`;
}
