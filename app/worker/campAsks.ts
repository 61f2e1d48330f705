import type { CampAnswer, LogFile, ToldIce, UnitSystem } from "../../core/index.ts";

/*
 * What the Camp place asks of its own worker: the forecast that knows the log. The newest question is answered, an older
 * one is told that it is old. Plain data.
 */

export interface CampAsk {
  do: "camp";
  /** The planned trip file. */
  text: string;
  log: LogFile;
  /** The present, s from departure. */
  now_s: number;
  units: UnitSystem;
  /** Of the picture, px. */
  width: number;
  before: ToldIce | null;
  /** Few members and no trial of acts: there at once. */
  isRough: boolean;
}

export type { CampAnswer };
