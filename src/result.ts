/** What a function of the core gives back: a value, or one sentence that says why not. Nothing in `src/` throws. */
export type Result<T> = { readonly ok: true; readonly value: T } | Refusal;

export interface Refusal {
  readonly ok: false;
  readonly message: string;
}

export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function refuse(message: string): Refusal {
  return { ok: false, message };
}
