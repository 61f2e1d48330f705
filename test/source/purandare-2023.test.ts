// purandare-2023: Purandare, A., Vanapalli, S. (2023), dry ice in shipping boxes, abstract only: the mass falls linearly with time.
// Once the walls have cooled down, a straight line must describe the simulated mass until little is left.
import { expect, it } from "vitest";
import { bodyOf } from "../../core/cooler/builds.ts";
import { valueAt } from "../../core/forecast/series.ts";
import { iceLot, packAndRun, stillRoom } from "../truth/lab.ts";

it.each(["foam", "standard", "thick"] as const)(
  "in a %s box the mass leaves a straight line by less than 3 %",
  (build) => {
    const lots = [iceLot({ form: "dry ice", mass_kg: 10, start_C: -78.5 })];
    const fleet = packAndRun({
      body: bodyOf(build, 0.038, 0.25),
      around: stillRoom(22),
      lots,
      end_s: 48 * 3600,
    });
    const { t_s, dryIce_kg } = fleet.tracks[0]!;
    // From 6 h on, to the moment when a fifth is left.
    const to_s = t_s.find((_, i) => dryIce_kg[i]! < 2)!;
    const from_s = 6 * 3600;
    const from_kg = valueAt(t_s, dryIce_kg, from_s);
    const pace_kg_per_s = (from_kg - 2) / (to_s - from_s);
    for (let t = from_s; t <= to_s; t += 3600) {
      const line_kg = from_kg - pace_kg_per_s * (t - from_s);
      expect(Math.abs(valueAt(t_s, dryIce_kg, t) - line_kg)).toBeLessThan(0.03 * 10);
    }
  },
);
