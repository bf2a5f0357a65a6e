import { whoseAndWhen } from './broken';
import { lookForBroken, settleBroken } from './backup';

/**
 * Asks on top of the pane what is to become of a filling that was broken off, or that goes on in another place. Only an
 * answer changes anything: the add-in also starts for a colleague who merely opens the file.
 */
export async function askAboutBroken(note: HTMLElement, locale: string): Promise<void> {
  const broken = await lookForBroken();
  if (broken.ok && broken.value.sheets.length === 0) {
    note.hidden = true;
    return;
  }
  note.hidden = false;
  if (!broken.ok) return show(note, broken.message, []);
  const { sheets, filling } = broken.value;
  show(
    note,
    `A filling of ${sheets.join(', ')} was begun ${whoseAndWhen(filling, locale)}, and did not come to its end. Where it may ` +
      'still be going on, wait for it. Else: are these sheets to be put back as they were before it?',
    [
      ['Put them back', () => settle(note, true)],
      ['Leave them as they are', () => settle(note, false)],
    ],
  );
}

async function settle(note: HTMLElement, restore: boolean): Promise<void> {
  const settled = await settleBroken(restore);
  if (!settled.ok) return show(note, settled.message, [['Try again', () => settle(note, restore)]]);
  show(
    note,
    restore ? `These sheets are as they were before: ${settled.value.join(', ')}.` : 'They stay as they are.',
    [],
  );
}

function show(note: HTMLElement, text: string, choices: readonly (readonly [string, () => Promise<void>])[]): void {
  const line = document.createElement('p');
  line.textContent = text;
  const buttons = choices.map(([label, act]) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', () => void act());
    return button;
  });
  note.replaceChildren(line, ...buttons);
}
