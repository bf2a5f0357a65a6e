import type * as core from '@univerjs/core';
import type * as coreFacade from '@univerjs/core/facade';
import type * as engineFormula from '@univerjs/engine-formula';
import type * as preset from '@univerjs/preset-sheets-core';
import type enUS from '@univerjs/preset-sheets-core/locales/en-US';
import type * as sheets from '@univerjs/sheets';
import type * as sheetsFormula from '@univerjs/sheets-formula';
// The facade's sheet methods are added to its types by these modules.
import type {} from '@univerjs/engine-formula/facade';
import type {} from '@univerjs/sheets/facade';
import type {} from '@univerjs/sheets-formula/facade';

/**
 * The grid's packages, handed to whatever needs them. The page loads them as a script of their own (see
 * buildGridLibrary.mjs) and Node through `require`: an import here would give a second copy whose classes the first
 * doesn't recognize.
 */
export interface GridLibrary {
  readonly core: typeof core;
  readonly coreFacade: typeof coreFacade;
  readonly engineFormula: typeof engineFormula;
  readonly sheets: typeof sheets;
  readonly sheetsFormula: typeof sheetsFormula;
}

/** With the visible part, on the page only. */
export interface GridPageLibrary extends GridLibrary {
  readonly preset: typeof preset;
  readonly enUS: typeof enUS;
}
