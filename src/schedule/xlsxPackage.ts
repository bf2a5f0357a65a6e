import { ok, refuse, type Result } from '../result';
import { decodeUtf8 } from './decode';
import { partPath, readRelations, type Relation } from './xlsxParts';
import { openZip, type Zip } from './zip';

/** An .xlsx file opened as far as its workbook part: where that stands, and how to get at the others. */
export interface WorkbookPackage {
  /** The workbook part itself: its sheets and names. */
  readonly xml: string;
  /** The folder that the workbook's relations start from. */
  readonly folder: string;
  readonly relations: ReadonlyMap<string, Relation>;
  /** The path of the workbook's own part of that kind (`styles`, `sharedStrings`); null where it names none. */
  readonly pathOf: (kind: string) => string | null;
  /** The text of a part; null where the file has none of that name. */
  readonly part: (path: string) => Result<string | null>;
  /** What a part is related to; nothing where the file does not say. */
  readonly relationsOf: (path: string) => Result<ReadonlyMap<string, Relation>>;
}

/** Opens an .xlsx file, or says in a sentence what it is instead. */
export function openWorkbook(bytes: Uint8Array): Result<WorkbookPackage> {
  const zip = openZip(bytes);
  if (!zip.ok) return zip;
  const part = (path: string) => partOf(zip.value, path);
  const relationsOf = (path: string): Result<ReadonlyMap<string, Relation>> => {
    const slash = path.lastIndexOf('/');
    const xml = part(`${path.slice(0, slash + 1)}_rels/${path.slice(slash + 1)}.rels`);
    if (!xml.ok) return xml;
    return xml.value === null ? ok(new Map<string, Relation>()) : readRelations(xml.value);
  };
  const root = relationsOf('');
  if (!root.ok) return root;
  const main = [...root.value.values()].find(({ kind }) => kind === 'officeDocument');
  const path = main === undefined ? 'xl/workbook.xml' : partPath('', main.target);
  const xml = part(path);
  if (!xml.ok) return xml;
  if (/\.bin$/i.test(path)) return refuse('It is a binary workbook (.xlsb); please save it as .xlsx.');
  if (xml.value === null) return refuse('It is a zip archive, but not an .xlsx workbook.');
  const slash = path.lastIndexOf('/');
  const folder = slash < 0 ? '' : path.slice(0, slash);
  const relations = relationsOf(path);
  if (!relations.ok) return relations;
  const pathOf = (kind: string): string | null => {
    const found = [...relations.value.values()].find((link) => link.kind === kind && !link.external);
    return found === undefined ? null : partPath(folder, found.target);
  };
  return ok({ xml: xml.value, folder, relations: relations.value, pathOf, part, relationsOf });
}

function partOf(zip: Zip, path: string): Result<string | null> {
  const bytes = zip.read(path);
  if (!bytes.ok) return bytes;
  return ok(bytes.value === null ? null : decodeUtf8(bytes.value));
}

/** What is read of a part that a file may do without. */
export function optional<T>(xml: Result<string | null>, read: (xml: string) => Result<T[]>): Result<T[]> {
  if (!xml.ok) return xml;
  return xml.value === null ? ok([]) : read(xml.value);
}
