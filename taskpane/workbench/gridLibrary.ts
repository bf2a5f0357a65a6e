import * as core from '@univerjs/core';
import * as coreFacade from '@univerjs/core/facade';
import * as engineFormula from '@univerjs/engine-formula';
import * as preset from '@univerjs/preset-sheets-core';
import enUS from '@univerjs/preset-sheets-core/locales/en-US';
import '@univerjs/preset-sheets-core/lib/index.css';
import * as sheets from '@univerjs/sheets';
import * as sheetsFormula from '@univerjs/sheets-formula';

// Built once by buildGridLibrary.mjs into files of its own; the rest of the page finds the packages on this global.
Object.assign(globalThis, { GridLibrary: { core, coreFacade, engineFormula, preset, enUS, sheets, sheetsFormula } });
