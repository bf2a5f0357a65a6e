import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../../src/workbook/sheet';
import { writeXlsx } from '../../../src/workbook/xlsx';
import { valueOf } from '../../value';

/**
 * What Excel for Mac wrote when a cell held a custom function: a workbook attached to issue 6611 of OfficeDev/office-js (its add-in
 * is CONTOSO there). Written down part by part, our names in place of its own.
 */
const GOLDEN = {
  cell: '<c r="A1" cm="1"><f t="array" ref="A1">_xldudf_ARCH_RADIUS(36,6)</f><v>30</v></c>',
  metadata: [
    '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes>',
    '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>',
    '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata>',
  ],
  contentTypes: [
    '<Override PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"/>',
    '<Override PartName="/xl/webextensions/webextension1.xml" ContentType="application/vnd.ms-office.webextension+xml"/>',
    '<Override PartName="/xl/webextensions/taskpanes.xml" ContentType="application/vnd.ms-office.webextensiontaskpanes+xml"/>',
  ],
  relations: {
    '_rels/.rels': [
      'http://schemas.microsoft.com/office/2011/relationships/webextensiontaskpanes',
      'xl/webextensions/taskpanes.xml',
    ],
    'xl/_rels/workbook.xml.rels': [
      'http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata',
      'metadata.xml',
    ],
    'xl/webextensions/_rels/taskpanes.xml.rels': [
      'http://schemas.microsoft.com/office/2011/relationships/webextension',
      'webextension1.xml',
    ],
  },
  // After the add-in's own GUID.
  reference: 'store="developer" storeType="Registry"/>',
  emptyParts: ['we:alternateReferences', 'we:bindings', 'we:snapshot'],
  functions: 'uri="{7C84B067-C214-45C3-A712-C9D94CD141B2}"><we:customFunctionIdList>',
};

function partsOf(rows: Sheet['rows'], more: Partial<Sheet> = {}): Record<string, string> {
  const sheet: Sheet = { name: 'Takeoff', rows, widths: [10], frozenRows: 0, frozenColumns: 0, home: 'A1', ...more };
  const files = unzipSync(valueOf(writeXlsx([sheet])));
  return Object.fromEntries(Object.entries(files).map(([name, part]) => [name, strFromU8(part)]));
}

describe('a stored workbook beside one that Excel wrote', () => {
  const parts = partsOf([
    [{ value: 30, formula: 'ARCH.RADIUS(36,6)' }],
    [{ value: 1, formula: 'SUM(1)&"ARCH.RISE(1,1)"' }],
    [{ value: 1, formula: 'IF(ARCH.RISE(36,30)>1,ARCH.RADIUS(36,6),0)' }],
  ]);

  it('has the same cell for a worksheet function of an add-in', () => {
    expect(parts['xl/worksheets/sheet1.xml']!.replace(/ s="\d+"/g, '')).toContain(GOLDEN.cell);
  });

  it('has the same metadata part, named by the workbook and in the list of content types', () => {
    for (const part of GOLDEN.metadata) expect(parts['xl/metadata.xml']).toContain(part);
    for (const type of GOLDEN.contentTypes) expect(parts['[Content_Types].xml']).toContain(type);
  });

  it.each(Object.entries(GOLDEN.relations))('has the same relation in %s', (file, [type, target]) => {
    expect(parts[file]).toMatch(new RegExp(`Id="rId\\d+" Type="${type}" Target="${target}"`));
  });

  it('names the add-in by the id and version of its manifest, and each function used once', () => {
    const extension = parts['xl/webextensions/webextension1.xml']!;
    const manifest = readFileSync('manifest.xml', 'utf8');
    const id = /<Id>(.*)<\/Id>/.exec(manifest)![1];
    const version = /<Version>(.*)<\/Version>/.exec(manifest)![1];
    expect(extension).toContain(`<we:reference id="${id}" version="${version}" ${GOLDEN.reference}`);
    for (const empty of GOLDEN.emptyParts) expect(extension).toMatch(new RegExp(`<${empty}( [^>]*)?/>`));
    expect(extension).toContain(
      `${GOLDEN.functions}<we:customFunctionIds>_xldudf_ARCH_RADIUS</we:customFunctionIds>` +
        '<we:customFunctionIds>_xldudf_ARCH_RISE</we:customFunctionIds></we:customFunctionIdList>',
    );
  });

  // Empty in Excel's file; the documentation of Office add-ins ("manage trust options") names the setting, not where it is stored.
  it('asks nobody who lacks the add-in whether to trust it', () => {
    expect(parts['xl/webextensions/webextension1.xml']).toContain(
      '<we:properties><we:property name="Office.DisableTrustUX" value="true"/></we:properties>',
    );
  });

  it('keeps the pane shut', () => {
    expect(parts['xl/webextensions/taskpanes.xml']).toMatch(
      / visibility="0"[^>]*><wetp:webextensionref [^>]*r:id="rId1"/,
    );
  });

  it('forces no calculation, and names the calculation engine of current Excel', () => {
    expect(parts['xl/workbook.xml']).toContain('<calcPr calcId="191029"/>');
    expect(parts['xl/workbook.xml']).not.toContain('fullCalc');
  });

  it('gives an array the whole area that it fills, the values of its other cells stored beside it', () => {
    const sheet = partsOf([
      [{ value: 1, formula: 'ARCH.GUIDES(30,3.5)', spill: { rows: 1, columns: 2 } }, { value: 2 }],
      [{ value: 5, formula: 'A1:A1*2', spill: { rows: 1, columns: 1 } }],
    ])['xl/worksheets/sheet1.xml']!.replace(/ s="\d+"/g, '');
    expect(sheet).toContain(
      '<c r="A1" cm="1"><f t="array" ref="A1:B1">_xldudf_ARCH_GUIDES(30,3.5)</f><v>1</v></c><c r="B1"><v>2</v></c>',
    );
    expect(sheet).toContain('<c r="A2" cm="1"><f t="array" ref="A2">A1:A1*2</f><v>5</v></c>');
  });

  it('without a worksheet function of ours has none of this, so that no one is asked for the add-in', () => {
    const plain = partsOf([[{ value: 2, formula: 'SUM(1,1)' }], [{ value: 'ARCH.RADIUS(1,1)' }]]);
    expect(Object.keys(plain).filter((name) => /webext|metadata/.test(name))).toEqual([]);
    expect(plain['xl/worksheets/sheet1.xml']).not.toContain(' cm=');
  });
});

describe('the print set-up and the filter of a sheet', () => {
  // ECMA-376 part 1, 18.2.5: the built-in names; 18.3.1.99: autoFilter after sheetProtection, before dataValidations.
  it('are written where Excel looks for them', () => {
    const parts = partsOf([[{ value: 1 }]], { autoFilter: 'A1:C9', printArea: 'A1:D9', locked: true });
    expect(parts['xl/worksheets/sheet1.xml']).toMatch(/<sheetProtection [^>]*\/><autoFilter ref="A1:C9"\/>/);
    const workbook = parts['xl/workbook.xml']!;
    expect(workbook).toContain(
      '<definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">Takeoff!$A$1:$C$9</definedName>',
    );
    expect(workbook).toContain('<definedName name="_xlnm.Print_Area" localSheetId="0">Takeoff!$A$1:$D$9</definedName>');
  });
});
