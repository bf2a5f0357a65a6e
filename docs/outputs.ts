/** `npm run outputs`: runs the commands that README.md and the guide show, and puts what they print below them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { inFolderOfExamples, PAGES_WITH_COMMANDS, withOutputs } from './console';

inFolderOfExamples((run) => {
  for (const page of PAGES_WITH_COMMANDS) writeFileSync(page, withOutputs(readFileSync(page, 'utf8'), run));
});
