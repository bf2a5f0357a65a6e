import type { Box, Matrix } from './marks';

/** What of a font is needed to place its letters. */
export interface FontFacts {
  readonly fontMatrix?: ArrayLike<number>;
  readonly vertical?: boolean;
}

/** What the walk needs to know of the page and the library. */
export interface PageFacts {
  readonly width: number;
  readonly height: number;
  /** From the PDF's own axes to the page as it is shown. */
  readonly matrix: Matrix;
  /** The library's names of operators. */
  readonly names: Readonly<Record<string, number>>;
  readonly font: (id: string) => FontFacts | null;
  /** Whether a layer is shown. */
  readonly layer: (properties: unknown) => boolean;
}

/** All that `save` keeps. */
export interface State {
  matrix: Matrix;
  shown: Box;
  fill: string;
  stroke: string;
  lineWidth: number;
  font: FontFacts | null;
  size: number;
  charSpacing: number;
  wordSpacing: number;
  stretch: number;
  leading: number;
  raise: number;
  mode: number;
}

export function firstState(page: PageFacts): State {
  return {
    matrix: page.matrix,
    shown: { left: 0, top: 0, right: page.width, bottom: page.height },
    fill: '#000000',
    stroke: '#000000',
    lineWidth: 1,
    font: null,
    size: 0,
    charSpacing: 0,
    wordSpacing: 0,
    stretch: 1,
    leading: 0,
    raise: 0,
    mode: 0,
  };
}
