import { escapeXml } from '../../drawing/svg';

// Characters that XML can't hold, half characters, and text that looks like an escape of one; CR would come back as LF.
const UNWRITABLE =
  /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]|_(?=x[0-9A-Fa-f]{4}_)/g;
/** Most text and formulas have none of them. */
const SUSPECT = /[^\t\n -~]|_x/;
const MARKUP = /[&<>"']/;

/**
 * Text or a formula as a cell holds it: what XML can't hold is written as `_x0007_`, which spreadsheets read back (ECMA-376
 * part 1, 22.9.2.19).
 */
export function escapeText(text: string): string {
  const writable = SUSPECT.test(text)
    ? text.replace(UNWRITABLE, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`)
    : text;
  return MARKUP.test(writable) ? escapeXml(writable) : writable;
}

export const XML_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
/** Of relations inside a workbook. */
export const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
