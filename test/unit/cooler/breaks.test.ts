import { describe, expect, it } from "vitest";
import { runFleet, startFleet } from "../../../core/cooler/fleet.ts";
import type { Fleet } from "../../../core/cooler/fleetState.ts";
import type { FleetInput } from "../../../core/cooler/types.ts";
import { fleetOf } from "../../property/anyCooler.ts";
import { runTo, trip, weather } from "../../property/plainTrip.ts";

const swinging = trip({ weather: weather({ swing_K: 8, sunPeak_W_per_m2: 700 }) });

function run(input: FleetInput): Fleet {
  const fleet = startFleet(input);
  runFleet(fleet, input.end_s);
  return fleet;
}

/** The same trip with further moments to halt at, where nothing happens. */
function halting(every_s: number): FleetInput {
  const input = fleetOf(swinging);
  const more = Array.from({ length: Math.floor(input.end_s / every_s) }, (_, i) => (i + 0.5) * every_s);
  const [cooler] = input.coolers;
  const around = { ...cooler.around, breaks_s: [...cooler.around.breaks_s, ...more] };
  return { ...input, coolers: [{ ...cooler, around }] };
}

describe("a break at which nothing jumps", () => {
  it("is landed on and changes nothing", () => {
    const plain = run(fleetOf(swinging));
    const halted = run(halting(5 * 3600));
    expect(halted.tracks[0].t_s).toContain(2.5 * 3600);
    const last = (fleet: Fleet): number => fleet.tracks[0].ice_kg.at(-1) ?? Number.NaN;
    expect(Math.abs(last(halted) - last(plain))).toBeLessThan(0.002 * 6);
  });
});

describe("books at the end only", () => {
  it("are the last of those at every step, and the run is the same to the bit", () => {
    const all = runTo(swinging);
    const end = runTo(swinging, { books: "end" });
    expect(end.tracks[0].books).toHaveLength(1);
    expect(all.tracks[0].books).toHaveLength(all.tracks[0].t_s.length);
    expect(end.tracks[0].books[0]).toEqual(all.tracks[0].books.at(-1));
    expect(end.lotTracks).toEqual(all.lotTracks);
  });
});
