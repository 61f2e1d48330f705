import type { CloseOutResult, IceTestResult, UnitSystem } from "../../core/index.ts";

/* What the Learn place asks of its own worker. Plain data. */

/** What was seen at the return, as a close-out file has it. */
export interface SeenAtReturn {
  trip: string;
  coolers: readonly { name: string; ice: string }[];
  binned: readonly { item: string; share: string; why: string }[];
  "never opened": readonly string[];
  wrong: readonly string[];
}

export interface CloseOutAsk {
  do: "closeOut";
  /** The planned trip file. */
  text: string;
  seen: SeenAtReturn;
  units: UnitSystem;
  /** Of the pictures, px. */
  width: number;
}

/** One cooler of which something is known, to be shown and kept. */
export interface LearnedCooler {
  name: string;
  picture: string;
  /** Text of its history file, and the same as a trip file takes it at its cooler; null: nothing was learned of it. */
  history: { file: string; inline: object } | null;
}

export interface LearnAnswer {
  result: CloseOutResult;
  /** The whole in words, as the command line says it. */
  text: string;
  coolers: readonly LearnedCooler[];
  /** The close-out as a file. */
  file: string;
}

export interface IceTestAsk {
  do: "iceTest";
  /** The test as its file has it, but for the version. */
  test: object;
  units: UnitSystem;
  width: number;
}

export interface IceTestAnswer {
  result: IceTestResult;
  text: string;
  picture: string;
  /** As a trip file takes it at its cooler; null: the test does not tell yet. */
  history: object | null;
  /** The test as a file. */
  file: string;
}

export type LearnAsk = CloseOutAsk | IceTestAsk;
