import type { Bounds } from '../../drawing/bounds';
import { bounds } from '../../drawing/bounds';
import { explode } from '../../drawing/dimension';
import { arcOfStep } from '../../drawing/roundSteps';
import type { Point, Primitive } from '../../drawing/scene';
import { polar } from '../../angle';
import type { Picture } from '../sheet';
import { escapeText, XML_HEAD } from './xml';

const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing';
const SHAPES = 'http://schemas.openxmlformats.org/drawingml/2006/main';
/** English metric units to a pixel at 96 to the inch (ECMA-376 part 1, 20.1.2.1). */
const PIXEL = 9525;
/** Coordinates within a shape are whole numbers: so many across its longer side. */
const FINE = 10_000;
/** Arcs are drawn through points this many degrees apart. */
const STEP = 5;
const CAPTION_HEIGHT = 18;

/** The pictures on a sheet as shapes of lines, in the file's drawing language (ECMA-376 part 1, 20.5): sharp at any size. */
export function* drawingsXml(pictures: readonly Picture[], widths: readonly number[]): Iterable<string> {
  yield `${XML_HEAD}<xdr:wsDr xmlns:xdr="${DRAWING}" xmlns:a="${SHAPES}">`;
  for (const [at, picture] of pictures.entries()) {
    const { width, height, caption, scene } = picture;
    const shapes = explode(scene.shapes);
    const box = bounds(shapes);
    const scale = Math.min(width / (box.right - box.left), (height - CAPTION_HEIGHT) / (box.top - box.bottom));
    const [wide, high] = [(box.right - box.left) * scale, (box.top - box.bottom) * scale];
    const name = `id="${2 * at + 1}" name="${escapeText(caption)}" descr="${escapeText(scene.description)}"`;
    yield anchored(
      picture,
      widths,
      { left: (width - wide) / 2, top: height - CAPTION_HEIGHT - high, width: wide, height: high },
      (size) => `${named(name)}<xdr:spPr>${size}${geometry(shapes, box)}${FILL}${LINE}</xdr:spPr>`,
    );
    yield anchored(
      picture,
      widths,
      { left: 0, top: height - CAPTION_HEIGHT, width, height: CAPTION_HEIGHT },
      (size) =>
        `${named(`id="${2 * at + 2}" name="${escapeText(caption)}"`)}<xdr:spPr>${size}<a:prstGeom prst="rect"><a:avLst/></a:prstGeom>` +
        '<a:noFill/><a:ln><a:noFill/></a:ln></xdr:spPr><xdr:txBody><a:bodyPr lIns="0" tIns="0" rIns="0" bIns="0" anchor="ctr"/>' +
        `<a:p><a:pPr algn="ctr"/><a:r><a:rPr sz="900"/><a:t>${escapeText(caption)}</a:t></a:r></a:p></xdr:txBody>`,
    );
  }
  yield '</xdr:wsDr>';
}

const FILL = '<a:solidFill><a:srgbClr val="EDE6D8"/></a:solidFill>';
const LINE = '<a:ln w="7000"><a:solidFill><a:srgbClr val="404040"/></a:solidFill></a:ln>';

function named(properties: string): string {
  return `<xdr:nvSpPr><xdr:cNvPr ${properties}/><xdr:cNvSpPr/></xdr:nvSpPr>`;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A shape that hangs on the cell under its upper left corner, its place within the picture in pixels. */
function anchored(picture: Picture, widths: readonly number[], box: Box, shape: (size: string) => string): string {
  const across = placeIn(picture.left + box.left, (at) => columnPixels(widths[at] ?? 10));
  const down = placeIn(box.top, () => ROW_PIXELS);
  const emu = (pixels: number) => Math.round(pixels * PIXEL);
  const size = `cx="${emu(box.width)}" cy="${emu(box.height)}"`;
  return (
    `<xdr:oneCellAnchor><xdr:from><xdr:col>${across.cell}</xdr:col><xdr:colOff>${emu(across.rest)}</xdr:colOff>` +
    `<xdr:row>${picture.row - 1 + down.cell}</xdr:row><xdr:rowOff>${emu(down.rest)}</xdr:rowOff></xdr:from><xdr:ext ${size}/>` +
    `<xdr:sp macro="" textlink="">${shape(`<a:xfrm><a:off x="0" y="0"/><a:ext ${size}/></a:xfrm>`)}</xdr:sp><xdr:clientData/></xdr:oneCellAnchor>`
  );
}

/** Rows under a picture are of the usual height, 15 points. */
export const ROW_PIXELS = 20;

/** How wide a column of so many characters is, in the workbook's usual font. */
export function columnPixels(width: number): number {
  return Math.trunc(width * 7 + 5);
}

function placeIn(distance: number, sizeOf: (at: number) => number): { readonly cell: number; readonly rest: number } {
  let rest = distance;
  for (let cell = 0; ; cell++) {
    const size = sizeOf(cell);
    if (rest < size) return { cell, rest };
    rest -= size;
  }
}

/** Each line of the scene as a path of straight steps; only outlines are filled. */
function geometry(shapes: readonly Primitive[], box: Bounds): string {
  const fine = FINE / Math.max(box.right - box.left, box.top - box.bottom);
  const point = ({ x, y }: Point) =>
    `<a:pt x="${Math.round((x - box.left) * fine)}" y="${Math.round((box.top - y) * fine)}"/>`;
  const size = `w="${Math.round((box.right - box.left) * fine)}" h="${Math.round((box.top - box.bottom) * fine)}"`;
  const paths = shapes.flatMap((shape) => {
    const [first, ...rest] = pointsOf(shape);
    if (first === undefined) return [];
    const closed = shape.kind === 'outline' || shape.kind === 'circle' || (shape.kind === 'polyline' && shape.closed);
    const fill = shape.kind === 'outline' && shape.filled ? '' : ' fill="none"';
    const steps = rest.map((to) => `<a:lnTo>${point(to)}</a:lnTo>`).join('');
    return [
      `<a:path ${size}${fill}><a:moveTo>${point(first)}</a:moveTo>${steps}${closed ? '<a:close/>' : ''}</a:path>`,
    ];
  });
  return (
    '<a:custGeom><a:avLst/><a:gdLst/><a:ahLst/><a:cxnLst/><a:rect l="0" t="0" r="r" b="b"/>' +
    `<a:pathLst>${paths.join('')}</a:pathLst></a:custGeom>`
  );
}

function pointsOf(shape: Primitive): readonly Point[] {
  switch (shape.kind) {
    case 'line':
      return [shape.from, shape.to];
    case 'polyline':
      return shape.points;
    case 'circle':
      return arcPoints(shape.center, shape.radius, 0, 360);
    case 'arc':
      return arcPoints(shape.center, shape.radius, shape.start, shape.end);
    case 'outline': {
      const points = [shape.start];
      for (const { to, round } of shape.steps) {
        if (round) {
          const { radius, start, end } = arcOfStep(points.at(-1)!, to, round);
          const along = arcPoints(round.center, radius, start, end);
          points.push(...(round.clockwise ? along.reverse() : along));
        }
        points.push(to);
      }
      return points;
    }
    case 'text':
      return [];
  }
}

function arcPoints(center: Point, radius: number, start: number, end: number): Point[] {
  const steps = Math.max(2, Math.ceil((end - start) / STEP));
  return Array.from({ length: steps + 1 }, (_, at) => polar(center, radius, start + ((end - start) * at) / steps));
}
