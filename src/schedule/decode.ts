import { ok, refuse, type Result } from '../result';

/** The Encoding standard's decoder, which browsers and Node both have; declared here because the core knows no host. */
declare class TextDecoder {
  constructor(label: string, options?: { fatal?: boolean; ignoreBOM?: boolean });
  decode(bytes: Uint8Array): string;
}

export interface Decoded {
  readonly text: string;
  /** What was found out about the encoding, where it is worth saying. */
  readonly remarks: readonly string[];
}

/** Bytes of a text file as text: UTF-8, UTF-16 with or without a byte order mark, else Windows-1252. Binary is refused. */
export function decodeText(bytes: Uint8Array): Result<Decoded> {
  const utf16 = utf16Label(bytes);
  if (utf16 !== null) return withoutNuls(new TextDecoder(utf16).decode(bytes), ['The file was read as UTF-16.']);
  try {
    return withoutNuls(new TextDecoder('utf-8', { fatal: true }).decode(bytes), []);
  } catch {
    // Not UTF-8: what Windows programs in the US and western Europe write otherwise.
    return withoutNuls(new TextDecoder('windows-1252').decode(bytes), [
      'The file is not UTF-8 and was read as Windows-1252.',
    ]);
  }
}

/** UTF-8 for certain, as the parts of an .xlsx are; anything else gives replacement characters, not an error. */
export function decodeUtf8(bytes: Uint8Array): string {
  return new TextDecoder(utf16Label(bytes.subarray(0, 2)) ?? 'utf-8').decode(bytes);
}

function utf16Label(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  // Without a mark: Latin text in UTF-16 has a zero in every other byte.
  const sample = bytes.subarray(0, 4096);
  if (sample.length < 8) return null;
  const zeros = [0, 0];
  sample.forEach((byte, index) => {
    if (byte === 0) zeros[index % 2] = (zeros[index % 2] ?? 0) + 1;
  });
  const half = sample.length / 2;
  const [even = 0, odd = 0] = zeros;
  if (odd > half * 0.7 && even < half * 0.1) return 'utf-16le';
  if (even > half * 0.7 && odd < half * 0.1) return 'utf-16be';
  return null;
}

function withoutNuls(text: string, remarks: readonly string[]): Result<Decoded> {
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const parts = bare.split('\u0000');
  const nuls = parts.length - 1;
  let controls = 0;
  const sampled = Math.min(bare.length, 65_536);
  for (let index = 0; index < sampled; index += 1) {
    const code = bare.charCodeAt(index);
    if (code < 32 && code !== 9 && code !== 10 && code !== 13) controls += 1;
  }
  if (controls > sampled * 0.1) return refuse('The file is not a text file; a schedule is a .csv, .tsv or .xlsx file.');
  if (nuls === 0) return ok({ text: bare, remarks });
  const taken = `The file held ${nuls} NUL character${nuls === 1 ? '' : 's'}, which ${nuls === 1 ? 'was' : 'were'} taken out`;
  // In a word a NUL is nothing; 3 and 6 on either side of one are not 36, and a mark keeps them apart.
  const kept = bare.replace(/(?<=\d)\u0000+|\u0000+(?=\d)/g, '\ufffd').replaceAll('\u0000', '');
  const inFigures = kept.includes('\ufffd');
  return ok({
    text: kept,
    remarks: [
      ...remarks,
      `${taken}${inFigures ? '; beside a digit a mark stands for them, and the figure is asked about' : ''}.`,
    ],
  });
}
