const WAITING = '[data-asks]';
const CONTROL = ':is(button, input, select):not(:disabled)';

/** Does what answers the question that stands at `near`, then goes on to what follows from it, the next question, or the way on. */
export async function focusFollowing(near: Element | null, deed: () => Promise<boolean>): Promise<boolean> {
  const asks = near?.getAttribute('data-asks') ?? null;
  const at = [...document.querySelectorAll(WAITING)].findIndex((one) => one === near);
  const done = await deed();
  if (done) requestAnimationFrame(() => focusAt(asks, at));
  return done;
}

function focusAt(asks: string | null, at: number): void {
  const waiting = [...document.querySelectorAll<HTMLElement>(WAITING)];
  const same = waiting.find((one) => one.getAttribute('data-asks') === asks);
  const next = same ?? waiting[Math.min(Math.max(at, 0), waiting.length - 1)];
  const control = next?.querySelector<HTMLElement>(CONTROL) ?? document.querySelector<HTMLElement>('.next .main');
  control?.focus();
}
