import { bodyOf } from "../../core/cooler/builds.ts";
import { valueAt } from "../../core/forecast/series.ts";
import { wallHeat_W } from "../../core/heat/wall.ts";
import { dryIce_C, dryIceSublimation_J_per_kg } from "../../core/matter/dryIce.ts";
import { iceLot, packAndRun, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

const day_s = 86_400;
const chest_m3 = 0.0379;

function dryIceLeft_kg(build: "thin" | "standard" | "thick", mass_kg: number, room_C: number, t_s: number[]) {
  const lots = [iceLot({ form: "dry ice", mass_kg, start_C: dryIce_C })];
  const body = bodyOf(build, chest_m3, 0.25);
  const fleet = packAndRun({ body, around: stillRoom(room_C), lots, end_s: 3 * day_s });
  const track = fleet.tracks[0]!;
  return t_s.map((t) => valueAt(track.t_s, track.dryIce_kg, t));
}

/** Hours until a fiftieth is left. */
function dryIceLife_h(mass_kg: number, room_C: number): number {
  const hours = Array.from({ length: 72 * 4 }, (_, i) => i / 4);
  const left = dryIceLeft_kg(
    "standard",
    mass_kg,
    room_C,
    hours.map((h) => h * 3600),
  );
  return hours[left.findIndex((kg) => kg < 0.02 * mass_kg)] ?? Number.NaN;
}

/** A 40-qt chest. Room taken as 20–30 °C, 10 or 20 kg, thin to thick walls; the second day, when the walls are cold. */
export function dryIceSamples(): Sample[] {
  const daily = (["thin", "standard", "thick"] as const).flatMap((build) =>
    [20, 30].map((room_C) => {
      const [one, two] = dryIceLeft_kg(build, 20, room_C, [day_s / 2, 1.5 * day_s]);
      return one! - two!;
    }),
  );
  return [
    {
      name: "dry ice in a 40-qt chest, loss a day",
      unit: "kg",
      source: "dry-ice-use-figures",
      mark: "R",
      published: [4.5, 9],
      ours: span(daily),
    },
    {
      name: "… balance for 0.5 W/K and 25 °C, loss a day",
      unit: "kg",
      source: "dry-ice-use-figures",
      mark: "C",
      published: [7.75, 7.85],
      ours: span([(wallHeat_W(0.5, 25, dryIce_C) * day_s) / dryIceSublimation_J_per_kg]),
    },
    {
      name: "… 5–7 lb in a standard chest last",
      unit: "h",
      source: "dry-ice-use-figures",
      mark: "R",
      published: [18, 24],
      ours: span([2.27, 3.18].flatMap((mass_kg) => [18, 25].map((room_C) => dryIceLife_h(mass_kg, room_C)))),
    },
  ];
}
