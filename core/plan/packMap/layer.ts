import { medianClosures } from "../../cooler/closures.ts";
import type { FloorSize, Put } from "./oneLayer.ts";
import type { StowLot } from "./stow.ts";

/** A rectangle that loose ice fills. */
export interface Pour {
  lots: readonly StowLot[];
  /** Of all the ice that is poured together. */
  share_frac: number;
  x_m: number;
  y_m: number;
  length_m: number;
  width_m: number;
  /** Above the underside of the layer. */
  up_m: number;
  height_m: number;
}

export interface StackLayer {
  puts: Put[];
  pours: Pour[];
  /** Of the gap below it that a towel takes. */
  towel_m: number;
  from_m: number;
  thick_m: number;
  /** Boxes; or soft things pressed into the place that there is; or ice at one end that other layers lie beside. */
  laid: "boxes" | "pressed" | "end";
  /** Ice that stands beside it. */
  beside: readonly StowLot[];
}

/** A layer of these alone, on the floor until it is given its level. */
export const bare = (puts: Put[], thick_m: number, laid: StackLayer["laid"] = "boxes"): StackLayer => ({
  puts,
  pours: [],
  towel_m: 0,
  from_m: 0,
  thick_m,
  laid,
  beside: [],
});

/** A bed of loose ice over the whole floor, on what lies in the layer. */
export function pourOver(
  layer: StackLayer,
  lots: readonly StowLot[],
  bulk_m3: number,
  share_frac: number,
  { length_m, width_m }: FloorSize,
): void {
  const height_m = bulk_m3 / (length_m * width_m);
  layer.pours.push({ lots, share_frac, x_m: 0, y_m: 0, length_m, width_m, up_m: layer.thick_m, height_m });
  layer.thick_m += height_m;
}

/** What cubes can take up of the gaps between the food of a layer. */
export function gapRoom_m3(puts: readonly Pick<Put, "lot" | "stow">[]): number {
  const gaps_m3 = puts.reduce((sum, { lot, stow }) => sum + stow.share_frac * lot.gaps_m3, 0);
  return medianClosures.gapFill_frac * gaps_m3;
}
