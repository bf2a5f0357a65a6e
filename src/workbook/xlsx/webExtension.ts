import { escapeText, RELATIONS, XML_HEAD } from './xml';

/** The add-in that gives the ARCH functions: `Id` and `Version` of manifest.xml. */
const ADD_IN = { id: 'bb9d34d9-b7a9-4bcc-8669-012b702d1fb5', version: '1.0.0.0' };

/** Of this reference to the add-in; the same in every file, so that the same workbook gives the same bytes. */
const REFERENCE = '{5A0F3C62-7F4E-4B57-9D1B-6C1E0A8B2D34}';
const OFFICE = 'http://schemas.microsoft.com/office';
/**
 * A setting kept with the workbook: Excel on Windows and Mac asks nobody who lacks the add-in whether to trust it (Microsoft's
 * documentation of Office add-ins, "manage trust options").
 */
export const NO_TRUST_PROMPT = 'Office.DisableTrustUX';

/**
 * Names the add-in whose functions the formulas call, as Excel does when it saves such a workbook ([MS-OWEXML]): so it knows
 * at opening what `_xldudf_ARCH_RADIUS` is. `functions`: the names as formulas hold them.
 */
export function webExtensionXml(functions: readonly string[]): string {
  const ids = functions.map((name) => `<we:customFunctionIds>${escapeText(name)}</we:customFunctionIds>`);
  return (
    `${XML_HEAD}<we:webextension xmlns:we="${OFFICE}/webextensions/webextension/2010/11" id="${REFERENCE}">` +
    `<we:reference id="${ADD_IN.id}" version="${ADD_IN.version}" store="developer" storeType="Registry"/>` +
    `<we:alternateReferences/><we:properties><we:property name="${NO_TRUST_PROMPT}" value="true"/></we:properties><we:bindings/>` +
    `<we:snapshot xmlns:r="${RELATIONS}"/><we:extLst>` +
    '<a:ext xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" uri="{7C84B067-C214-45C3-A712-C9D94CD141B2}">' +
    `<we:customFunctionIdList>${ids.join('')}</we:customFunctionIdList></a:ext></we:extLst></we:webextension>`
  );
}

/** The add-in's pane, shut. */
export function taskPanesXml(): string {
  return (
    `${XML_HEAD}<wetp:taskpanes xmlns:wetp="${OFFICE}/webextensions/taskpanes/2010/11">` +
    '<wetp:taskpane dockstate="right" visibility="0" width="350" row="0">' +
    `<wetp:webextensionref xmlns:r="${RELATIONS}" r:id="rId1"/></wetp:taskpane></wetp:taskpanes>`
  );
}
