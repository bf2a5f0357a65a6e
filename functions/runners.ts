import * as arc from './arc';
import * as blank from './blank';
import * as head from './head';
import * as machine from './machine';
import type { Answer } from './metadata';
import * as opening from './opening';
import * as stock from './stock';
import * as text from './text';

/** The code behind each worksheet function, by name: whatever those files export is one. */
export const RUNNERS = { ...arc, ...head, ...blank, ...machine, ...stock, ...opening, ...text } as unknown as Readonly<
  Record<string, (...args: unknown[]) => Answer>
>;
