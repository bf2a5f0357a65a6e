import { refuse, type Result } from '../result';

/** What the schedule's readers say of a cell, said to somebody who typed. */
export function asTyped<T>(read: Result<T>): Result<T> {
  return read.ok ? read : refuse(read.message.replace('the cell says', 'you typed'));
}
