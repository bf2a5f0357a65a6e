/** `npm run outputs`: runs the commands that README.md and the guide show, and puts what they print below them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { inFolderOfExamples, PAGES_WITH_COMMANDS, withOutputs } from './console';

// Each page in a folder of its own: a workbook that another page's commands wrote would be filled again.
for (const page of PAGES_WITH_COMMANDS)
  writeFileSync(
    page,
    inFolderOfExamples((run) => withOutputs(readFileSync(page, 'utf8'), run)),
  );
