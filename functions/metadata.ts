import generated from './metadata.json';

/** What a cell, or a spilled block of cells, holds. */
export type CellAnswer = number | string;
export type Answer = CellAnswer | readonly (readonly CellAnswer[])[];

export interface Parameter {
  readonly name: string;
  /** Unit, domain and default, in a sentence or two. */
  readonly description: string;
  readonly optional: boolean;
  /** A range of cells is wanted, not one cell. */
  readonly range: boolean;
}

export interface Example {
  /** As it is typed into a cell. */
  readonly formula: string;
  readonly args: readonly unknown[];
  /** The answer, numbers to the digits printed. */
  readonly answer: Answer;
}

/** Everything told about one worksheet function, read from its JSDoc when the project is built. */
export interface FunctionMetadata {
  readonly name: string;
  readonly group: string;
  readonly description: string;
  readonly help: string;
  readonly parameters: readonly Parameter[];
  readonly returns: string;
  /** The answer is a block of cells. */
  readonly spills: boolean;
  /** What is refused. */
  readonly refuses: string;
  /** Formula and source. */
  readonly remarks: string;
  readonly examples: readonly Example[];
}

export const METADATA: readonly FunctionMetadata[] = generated as readonly FunctionMetadata[];
