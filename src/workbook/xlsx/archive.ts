import { strToU8, Zip, ZipDeflate } from 'fflate';

/** Text is handed to the compressor in pieces of about this many characters. */
const PIECE = 100_000;
/** Fast and nearly as small: a workbook repeats itself so much that more looking hardly pays. */
const LEVEL = 3;
/** Every part bears the same time, so that the same workbook gives the same file. */
const TIME = new Date(1980, 0, 1);

/** A zip archive whose files are compressed as they are written, one after another. */
export class Archive {
  private readonly pieces: Uint8Array[] = [];
  private size = 0;
  private readonly zip = new Zip((error, piece) => {
    if (error) throw error;
    this.pieces.push(piece);
    this.size += piece.length;
  });

  add(name: string, text: Iterable<string>): void {
    const file = new ZipDeflate(name, { level: LEVEL });
    file.mtime = TIME;
    this.zip.add(file);
    let waiting: string[] = [];
    let length = 0;
    for (const part of text) {
      waiting.push(part);
      length += part.length;
      if (length < PIECE) continue;
      file.push(strToU8(waiting.join('')));
      waiting = [];
      length = 0;
    }
    file.push(strToU8(waiting.join('')), true);
  }

  bytes(): Uint8Array {
    this.zip.end();
    const all = new Uint8Array(this.size);
    let at = 0;
    for (const piece of this.pieces) {
      all.set(piece, at);
      at += piece.length;
    }
    return all;
  }
}
