import { RUNNERS } from './runners';

/**
 * Excel's entry: tells it which code runs behind each name of functions.json, and does nothing outside Excel. The
 * descriptions stay out of it: Excel has them from functions.json.
 */
if (typeof CustomFunctions !== 'undefined' && typeof CustomFunctions.associate === 'function') {
  for (const [name, run] of Object.entries(RUNNERS)) CustomFunctions.associate(name, run);
}
