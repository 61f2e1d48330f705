import type { Duty } from "./types.ts";

/** Work around the coolers, in the order of the day. */
export const duties: readonly [Duty, ...Duty[]] = ["food", "readings", "water", "ice", "washing"];
