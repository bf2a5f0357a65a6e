import type { Scene } from './scene';
import { escapeXml, toSvg } from './svg';

/** A picture with the words under it. */
export interface Picture {
  readonly scene: Scene;
  readonly caption: string;
}

/** Pictures under one heading. */
export interface PictureGroup {
  readonly title: string;
  /** Pictures beside one another. */
  readonly columns: 1 | 2;
  readonly pictures: readonly Picture[];
  /** Lines below the pictures. */
  readonly notes?: readonly string[];
}

const STYLE = `@page{size:letter;margin:12mm}
body{font:10pt 'Segoe UI','Helvetica Neue',Arial,sans-serif;margin:12mm auto;max-width:190mm;color:#1d2530;background:#fff}
h1{font-size:15pt}h2{font-size:12pt;margin:6mm 0 2mm}
.group{display:grid;gap:3mm 6mm}.of-2{grid-template-columns:1fr 1fr}
figure{margin:0;break-inside:avoid}figcaption{font-size:8pt}svg{display:block;width:100%;height:auto;max-height:60mm}
h2{break-after:avoid}.notes{columns:3;margin-top:2mm}p{font-size:8pt;margin:0.5mm 0;break-inside:avoid}@media print{body{margin:0}}`;

/** A page that stands alone, to be looked at and printed on letter paper, not to scale. HTML: all text is escaped; nothing is loaded from anywhere. */
export function pictureSheet(title: string, groups: readonly PictureGroup[]): string {
  const shown = groups.filter(({ pictures, notes = [] }) => pictures.length + notes.length > 0);
  const body = shown.map(({ title: of, columns, pictures, notes = [] }) => {
    const figures = pictures.map(
      ({ scene, caption }) =>
        `<figure>${toSvg(scene, { ownColors: false })}<figcaption>${escapeXml(caption)}</figcaption></figure>`,
    );
    const lines = notes.map((note) => `<p>${escapeXml(note)}</p>`);
    return `<h2>${escapeXml(of)}</h2>\n<div class="group of-${columns}">\n${figures.join('\n')}\n</div>\n<div class="notes">\n${lines.join('\n')}\n</div>`;
  });
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escapeXml(title)}</title><style>${STYLE}</style></head>
<body class="drawing"><h1>${escapeXml(title)}</h1>
${body.join('\n')}
</body></html>
`;
}
