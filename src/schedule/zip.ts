import { Inflate } from 'fflate';
import { ok, refuse, type Result } from '../result';
import { decodeUtf8 } from './decode';

/** One file of a zip archive, as its directory declares it. */
interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
}

/** Archives are opened no further than this: a few kilobytes can claim gigabytes. */
const ZIP_LIMITS = { entries: 10_000, partBytes: 100e6, totalBytes: 150e6 } as const;

/** A zip archive: the names of its files, and each inflated on demand, never beyond the limits. */
export interface Zip {
  readonly names: readonly string[];
  /** The file's bytes; null where the archive has none of that name. Letter case is forgiven. */
  read(name: string): Result<Uint8Array | null>;
}

const BROKEN = 'The file is damaged or incomplete: it is not a whole .xlsx file.';
const END = 0x06054b50;
const DIRECTORY = 0x02014b50;
const LOCAL = 0x04034b50;

/** Opens a zip archive by its directory at the end; a truncated archive has none and is refused. */
export function openZip(bytes: Uint8Array): Result<Zip> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end === null) return refuse(BROKEN);
  const count = view.getUint16(end + 10, true);
  let position = view.getUint32(end + 16, true);
  if (count > ZIP_LIMITS.entries || count === 0xffff)
    return refuse(`The file holds ${count} parts, which no schedule needs.`);
  const entries = new Map<string, Entry>();
  for (let index = 0; index < count; index += 1) {
    if (position + 46 > end || view.getUint32(position, true) !== DIRECTORY) return refuse(BROKEN);
    const flags = view.getUint16(position + 8, true);
    const nameLength = view.getUint16(position + 28, true);
    const next = position + 46 + nameLength + view.getUint16(position + 30, true) + view.getUint16(position + 32, true);
    if (next > end) return refuse(BROKEN);
    if (flags & 1) return refuse('The file is protected with a password; please save it without one.');
    const name = decodeUtf8(bytes.subarray(position + 46, position + 46 + nameLength))
      .replace(/\\/g, '/')
      .replace(/^\//, '');
    entries.set(name.toLowerCase(), {
      name,
      method: view.getUint16(position + 10, true),
      packed: view.getUint32(position + 20, true),
      size: view.getUint32(position + 24, true),
      offset: view.getUint32(position + 42, true),
    });
    position = next;
  }
  return ok(new Archive(bytes, view, entries));
}

function findEnd(view: DataView): number | null {
  // The end record is 22 bytes and may be followed by a comment of up to 65,535.
  const lowest = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let position = view.byteLength - 22; position >= lowest; position -= 1)
    if (view.getUint32(position, true) === END) return position;
  return null;
}

class Archive implements Zip {
  readonly names: readonly string[];
  private inflated = 0;

  constructor(
    private readonly bytes: Uint8Array,
    private readonly view: DataView,
    private readonly entries: ReadonlyMap<string, Entry>,
  ) {
    this.names = [...entries.values()].map(({ name }) => name);
  }

  read(name: string): Result<Uint8Array | null> {
    const entry = this.entries.get(name.toLowerCase());
    if (entry === undefined) return ok(null);
    const room = Math.min(ZIP_LIMITS.partBytes, ZIP_LIMITS.totalBytes - this.inflated);
    if (entry.size > room) return refuse(tooLarge(entry));
    const start = entry.offset;
    if (start + 30 > this.bytes.length || this.view.getUint32(start, true) !== LOCAL) return refuse(BROKEN);
    const from = start + 30 + this.view.getUint16(start + 26, true) + this.view.getUint16(start + 28, true);
    if (from + entry.packed > this.bytes.length) return refuse(BROKEN);
    const packed = this.bytes.subarray(from, from + entry.packed);
    const read = entry.method === 0 ? ok(packed) : entry.method === 8 ? inflate(packed, entry, room) : refuse(BROKEN);
    if (read.ok && read.value.length !== entry.size) return refuse(BROKEN);
    if (read.ok) this.inflated += read.value.length;
    return read;
  }
}

/** Inflates in small steps, so that data which grows beyond what the directory declares is stopped, not allocated. */
function inflate(packed: Uint8Array, entry: Entry, room: number): Result<Uint8Array> {
  const whole = new Uint8Array(entry.size);
  let length = 0;
  let done = false;
  const stream = new Inflate((chunk, final) => {
    if (length + chunk.length <= whole.length) whole.set(chunk, length);
    length += chunk.length;
    done = final;
  });
  const STEP = 16_384;
  try {
    for (let position = 0; position < packed.length && !done; position += STEP) {
      stream.push(packed.subarray(position, position + STEP), position + STEP >= packed.length);
      if (length > room) return refuse(tooLarge(entry));
      if (length > entry.size)
        return refuse(`The part "${entry.name}" of the file is larger than the file says it is.`);
    }
  } catch {
    return refuse(BROKEN);
  }
  return done && length === entry.size ? ok(whole) : refuse(BROKEN);
}

function tooLarge({ name }: Entry): string {
  const most = Math.round(ZIP_LIMITS.partBytes / 1e6);
  return `The part "${name}" of the file unpacks to more than ${most} MB; a schedule is far smaller.`;
}
