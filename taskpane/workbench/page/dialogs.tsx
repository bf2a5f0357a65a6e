import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/** A dialog over the page; Escape closes it. The focus goes back to where it was. */
export function Dialog(props: {
  readonly title: string;
  readonly wide?: boolean;
  readonly close: () => void;
  readonly children: ComponentChildren;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  // At once, both ways: an effect that waits for a picture would take the focus back from what the next key has opened.
  useLayoutEffect(() => {
    const before = document.activeElement;
    const shown = dialog.current;
    shown?.showModal();
    return () => {
      // While it is shown nothing under it can take the focus.
      shown?.close();
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      class={`wb-dialog${props.wide ? ' wide' : ''}`}
      aria-label={props.title}
      onCancel={(event) => {
        event.preventDefault();
        props.close();
      }}
    >
      <h2>{props.title}</h2>
      {props.children}
    </dialog>
  );
}

export interface Question {
  readonly title: string;
  readonly about: string;
  readonly choices: readonly (readonly [answer: string, text: string])[];
}

/** Questions of the page, one at a time: whoever shows them listens, whoever asks waits. */
export interface Questions {
  readonly ask: (question: Question) => Promise<string>;
  readonly onAsked: (show: (question: Question, answer: (choice: string) => void) => void) => void;
}

export function watchQuestions(): Questions {
  let show: (question: Question, answer: (choice: string) => void) => void = (question, answer) =>
    answer(question.choices.at(-1)?.[0] ?? '');
  return {
    ask: (question) => new Promise((resolve) => show(question, resolve)),
    onAsked: (shown) => {
      show = shown;
    },
  };
}

/** Asks before anything that can't be taken back; Escape is the last choice, which changes nothing. */
export function Asking({
  question,
  answer,
}: {
  readonly question: Question;
  readonly answer: (choice: string) => void;
}) {
  const last = question.choices.at(-1)?.[0] ?? '';
  return (
    <Dialog title={question.title} close={() => answer(last)}>
      <p>{question.about}</p>
      <div class="wb-row">
        {question.choices.map(([choice, text]) => (
          <button key={choice} type="button" onClick={() => answer(choice)}>
            {text}
          </button>
        ))}
      </div>
    </Dialog>
  );
}

const KEYS: readonly (readonly [keys: string, what: string])[] = [
  ['F6, Shift+F6', 'round the page: bar, sheet, pane'],
  ['Ctrl+S', 'save the job'],
  ['Ctrl+O', 'open a file'],
  ['Ctrl+P', 'print'],
  ['Ctrl+F', 'find in all sheets'],
  ['Ctrl+Z, Ctrl+Y', 'undo, redo'],
  ['F2', 'change what is in the cell'],
  ['Enter, Tab', 'take what was typed and go down, or right'],
  ['Escape', 'leave the cell as it was; close what is open'],
  ['Home, End', 'first and last cell of the row'],
  ['Ctrl+Home, Ctrl+End', 'first and last cell of the sheet'],
  ['Page Up, Page Down', 'a screen up or down'],
  ['Ctrl+Page Up, Ctrl+Page Down', 'the sheet before or after'],
  ['Ctrl+arrow', 'to the edge of the filled cells'],
  ['Shift+arrow', 'select more cells'],
  ['?', 'this list, outside a cell or a field'],
];

export function KeysList({ close }: { readonly close: () => void }) {
  return (
    <Dialog title="Keys" close={close}>
      {/* The list is read from its top: the first thing that takes the focus would be the button under it. */}
      <dl class="wb-keys" tabIndex={0} autofocus>
        {KEYS.map(([keys, what]) => (
          <div key={keys}>
            <dt>
              <kbd>{keys}</kbd>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <button type="button" onClick={close}>
        Close
      </button>
    </Dialog>
  );
}
