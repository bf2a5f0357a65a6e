import { startWorkbook, type Engine } from './engine';
import { showErrorSentences } from './errorPopup';
import type { GridFunction } from './functions';
import type { GridPageLibrary } from './library';
import { cutLongTexts } from './evenRows';
import { showTypedOver } from './typedOver';

/** Set by grid-library.js, which the page loads first. */
declare const GridLibrary: GridPageLibrary;

/** The visible grid in `container`; resolves once it is drawn and takes typing. */
export async function startGrid(container: HTMLElement, functions: readonly GridFunction[]): Promise<Engine> {
  const library = GridLibrary;
  const { LocaleType, LogLevel, Univer, mergeLocales } = library.core;
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(library.enUS) },
    logLevel: LogLevel.ERROR,
    darkMode: matchMedia('(prefers-color-scheme: dark)').matches,
  });
  const { plugins } = library.preset.UniverSheetsCorePreset({
    container,
    disableAutoFocus: true,
    // The page has a bar of its own, every button of it named.
    header: false,
  });
  for (const entry of plugins) {
    if (Array.isArray(entry)) univer.registerPlugin(entry[0], entry[1]);
    else univer.registerPlugin(entry);
  }
  const drawn = new Promise<void>((resolve) => {
    const lifecycle = univer.__getInjector().get(library.core.LifecycleService);
    const subscription = lifecycle.lifecycle$.subscribe((stage) => {
      if (stage < library.core.LifecycleStages.Rendered) return;
      resolve();
      setTimeout(() => subscription.unsubscribe());
    });
  });
  const engine = startWorkbook(library, univer, functions);
  showErrorSentences(engine, library);
  showTypedOver(engine);
  cutLongTexts(engine);
  await drawn;
  return engine;
}
