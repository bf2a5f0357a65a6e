import { deflateSync } from 'node:zlib';

/** A PDF of one page whose content is `text`, `times` over, packed twice: a few kilobytes that unpack to very much. */
export function packed(text: string, times: number): Uint8Array {
  const content = deflateSync(deflateSync(Buffer.from(text.repeat(times)), { level: 9 }), { level: 9 });
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << /Font << /F 5 0 R >> >> >>',
    `<< /Length ${content.length} /Filter [/FlateDecode /FlateDecode] >>\nstream\n`,
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
    add(Buffer.from(`${index + 1} 0 obj\n${object}`));
    if (index === 3) {
      add(content);
      add(Buffer.from('\nendstream'));
    }
    add(Buffer.from('\nendobj\n'));
  });
  const xref = length;
  const rows = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('');
  add(
    Buffer.from(
      `xref\n0 6\n0000000000 65535 f \n${rows}trailer\n<< /Size 6 /Root 1 0 R >>\nstartxref\n${xref}\n%%EOF\n`,
    ),
  );
  return Buffer.concat(parts);
}
