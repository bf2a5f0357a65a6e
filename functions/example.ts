import type { Answer, CellAnswer, Example } from './metadata';

/**
 * Reads a worked example of a docstring, `=ARCH.NAME(36, "3'-6""", {24; 17}) → 30`, written as in a cell: texts in
 * quotes with a doubled quote inside, ranges in braces with commas between columns and semicolons between rows, an
 * argument left out between two commas.
 */
export function readExample(text: string): Example {
  const [formula = '', answer, ...more] = text.split('→').map((part) => part.trim());
  const match = /^=ARCH\.[A-Z]+\((.*)\)$/s.exec(formula);
  if (!match || answer === undefined || more.length > 0) {
    throw new Error(`an example must read =ARCH.NAME(…) → answer; got ${text}`);
  }
  const reader = new Reader(match[1] ?? '');
  const args = reader.list(',', reader.atEnd);
  const answerReader = new Reader(answer);
  const read = answerReader.value();
  if (!answerReader.atEnd() || read === null) throw new Error(`an example's answer can't be read: ${answer}`);
  return { formula, args, answer: read as Answer };
}

class Reader {
  private at = 0;
  constructor(private readonly text: string) {}

  atEnd = (): boolean => {
    this.skipSpace();
    return this.at >= this.text.length;
  };

  list(separator: string, ends: () => boolean): unknown[] {
    const values: unknown[] = [];
    if (ends()) return values;
    for (;;) {
      values.push(this.value());
      if (ends()) return values;
      if (!this.take(separator)) throw new Error(`expected ${separator} at ${this.at} of ${this.text}`);
    }
  }

  /** A number, a text, a range, or null where nothing stands. */
  value(): CellAnswer | CellAnswer[][] | null {
    this.skipSpace();
    if (this.take('{')) return this.range();
    const text = this.match(/"((?:[^"]|"")*)"/y);
    if (text) return text[1]!.replaceAll('""', '"');
    const number = this.match(/-?\d+(\.\d+)?(e-?\d+)?/iy);
    return number ? Number(number[0]) : null;
  }

  private range(): CellAnswer[][] {
    const rows: CellAnswer[][] = [];
    for (;;) {
      rows.push(this.list(',', () => this.next(';') || this.next('}')) as CellAnswer[]);
      if (this.take('}')) return rows;
      this.take(';');
    }
  }

  private next(mark: string): boolean {
    this.skipSpace();
    return this.text.startsWith(mark, this.at);
  }

  private take(mark: string): boolean {
    if (!this.next(mark)) return false;
    this.at += mark.length;
    return true;
  }

  private match(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found) this.at = pattern.lastIndex;
    return found;
  }

  private skipSpace(): void {
    this.match(/\s*/y);
  }
}
