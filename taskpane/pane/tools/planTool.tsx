import type { Bench } from '../deeds/bench';
import type { PaneState } from '../state';

export function PlanTool(_: { readonly bench: Bench; readonly state: PaneState }) {
  return null;
}
