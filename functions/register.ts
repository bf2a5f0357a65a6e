import { FUNCTIONS } from './registry';

/** Excel's entry: tells it which code runs behind each name of functions.json. Does nothing outside Excel. */
if (typeof CustomFunctions !== 'undefined' && typeof CustomFunctions.associate === 'function') {
  for (const { name, run } of FUNCTIONS) CustomFunctions.associate(name, run);
}
