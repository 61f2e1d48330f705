import type { Box } from "./box.ts";
import type { Break } from "./breaks.ts";
import type { Stepper } from "./stepper.ts";
import type { CoolerTrack, LotTrack } from "./track.ts";
import type { Act, FleetInput, Lot } from "./types.ts";

/** All coolers of a trip at one moment, with all that was written down on the way. */
export interface Fleet {
  input: FleetInput;
  t_s: number;
  /** All that is aboard at the start or comes in later. */
  lots: Lot[];
  /** Place of each in `lots`, by its id. */
  lotIndex: Map<string, number>;
  boxes: Box[];
  steppers: Stepper[];
  tracks: CoolerTrack[];
  lotTracks: LotTrack[];
  acts: readonly Act[];
  nextAct: number;
  /** By box. */
  breaks: Break[][];
  tolerance: number;
  maxStep_s: number;
  books: "steps" | "end";
  /** Steps taken and refused, for the bench. */
  steps: number;
  refused: number;
}
