import { addressOf } from '../address';
import { escapeText, MAIN, XML_HEAD } from './xml';

/** A comment and the cell, from 0, that it stands on. */
export interface Comment {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** The comments of a sheet. */
export function* commentsXml(comments: readonly Comment[]): Iterable<string> {
  yield `${XML_HEAD}<comments xmlns="${MAIN}"><authors><author></author></authors><commentList>`;
  for (const comment of comments) {
    yield `<comment ref="${addressOf(comment)}" authorId="0"><text><r><t xml:space="preserve">${escapeText(comment.text)}</t></r></text></comment>`;
  }
  yield '</commentList></comments>';
}

/** Excel shows no comment without a drawing of its box, in the old drawing language (ECMA-376 part 4, 14). */
export function* commentBoxes(comments: readonly Comment[]): Iterable<string> {
  yield (
    '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office"' +
    ' xmlns:x="urn:schemas-microsoft-com:office:excel">' +
    '<o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout>' +
    '<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe">' +
    '<v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>'
  );
  for (const [at, { row, column }] of comments.entries()) {
    const anchor = [column + 1, 6, Math.max(0, row - 1), 14, column + 3, 2, row + 3, 16].join(', ');
    yield (
      `<v:shape id="_x0000_s${1025 + at}" type="#_x0000_t202" style="position:absolute;visibility:hidden"` +
      ' fillcolor="infoBackground [80]" o:insetmode="auto"><v:fill color2="infoBackground [80]"/>' +
      '<v:path o:connecttype="none"/><v:textbox/><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/>' +
      `<x:Anchor>${anchor}</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column>` +
      '</x:ClientData></v:shape>'
    );
  }
  yield '</xml>';
}
