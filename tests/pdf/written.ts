/** The number of the object that holds the page's content. */
export const CONTENT = 4;

/** A PDF of one page with this content, as bytes; `filter` goes to the content's own entries, `trailer` to the file's. */
export function written(content: Uint8Array, filter = '', trailer = ''): Uint8Array {
  const objects: readonly (string | Buffer)[] = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << /Font << /F 5 0 R >> >> >>',
    Buffer.concat([
      Buffer.from(`<< /Length ${content.length} ${filter} >>\nstream\n`),
      content,
      Buffer.from('\nendstream'),
    ]),
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
  ];
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n')];
  const starts: number[] = [];
  let length = parts[0]!.length;
  const add = (part: Buffer) => {
    parts.push(part);
    length += part.length;
  };
  objects.forEach((object, index) => {
    starts.push(length);
    add(Buffer.concat([Buffer.from(`${index + 1} 0 obj\n`), Buffer.from(object), Buffer.from('\nendobj\n')]));
  });
  const rows = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('');
  const last = `xref\n0 6\n0000000000 65535 f \n${rows}trailer\n<< /Size 6 /Root 1 0 R ${trailer} >>\nstartxref\n${length}\n%%EOF\n`;
  add(Buffer.from(last));
  return new Uint8Array(Buffer.concat(parts));
}
