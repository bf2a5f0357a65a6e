import { quickProof } from './bounds';
import { boundOf, type Proof } from './certificate';
import { costOf, type Cutting, type Run } from './cutting';
import { firstFitDecreasing } from './decreasing';

export interface SearchControl {
  /** True once the time is up or the user stopped. */
  readonly ended: () => boolean;
  readonly better: (runs: readonly Run[], bound: number) => void;
}

export interface Found {
  /** Null: no plan was found with the boards that can be had. */
  readonly runs: readonly Run[] | null;
  readonly bound: number;
  readonly proof: Proof;
}

export function search(cutting: Cutting, control: SearchControl): Found {
  const proof = quickProof(cutting);
  const bound = boundOf(proof, cutting);
  const runs = firstFitDecreasing(cutting);
  if (runs !== null) control.better(runs, Math.min(bound, costOf(runs, cutting.boards)));
  return { runs, bound, proof };
}
