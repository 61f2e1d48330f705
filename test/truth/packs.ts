import { type BuildKey, bodyOf } from "../../core/cooler/builds.ts";
import { runFleet } from "../../core/cooler/fleet.ts";
import type { Fleet } from "../../core/cooler/fleetState.ts";
import { temperature_C } from "../../core/cooler/polyline.ts";
import { baseChain, cellCount } from "../../core/cooler/walls.ts";
import { valueAt } from "../../core/forecast/series.ts";
import { foodLot, iceLot, pack, stillRoom } from "./lab.ts";
import { type Sample, span } from "./sample.ts";

interface Carrier {
  build: BuildKey;
  litres: number;
  wall_m: number;
  packs: number;
  each_kg: number;
  load_kg: number;
  room_C: number;
  start_C: number;
  layer: "top" | "fill";
  /** Half-melted loose ice poured over everything. */
  slush_kg: number;
}

/** A box of small bottles with water packs on it or among them; the box comes from the room. */
function carrier(facts: Carrier, end_s: number): Fleet {
  const body = bodyOf(facts.build, facts.litres / 1000, 0.25);
  for (const zone of ["lid", "sides", "base"] as const)
    body[zone] = { ...body[zone], thickness_m: facts.wall_m };
  const packs = iceLot({
    id: "packs",
    form: "jug",
    mass_kg: facts.packs * facts.each_kg,
    pieces: facts.packs,
    start_C: facts.start_C,
    layer: facts.layer,
  });
  const load = { id: "load", mass_kg: facts.load_kg, pieces: 50, start_C: 5, thick_m: 0.02 };
  const bottles = foodLot("water", { ...load, shape: "cylinder" });
  const slush = iceLot({ id: "slush", mass_kg: facts.slush_kg, liquid_frac: 0.6, layer: "base" });
  const lots = facts.slush_kg > 0 ? [packs, bottles, slush] : [packs, bottles];
  return pack({ body, around: stillRoom(facts.room_C), lots, start_C: facts.room_C, end_s });
}

interface PackLook {
  surface_C: number;
  inside_C: number;
  /** Air that the packs stand in. */
  air_C: number;
  /** Liner of the base. */
  bottom_C: number;
  load_C: number;
}

/** Reads the box as it stands: the surface of a pack lies between its ice and the air, behind the melt in it. */
function look(fleet: Fleet): PackLook {
  const box = fleet.boxes[0]!;
  const { spine_C, touching } = fleet.steppers[0]!.bench;
  const p = box.parts.findIndex((part) => fleet.lots[part.lot]!.id === "packs");
  const part = box.parts[p]!;
  const inside_C = temperature_C(part.curve, part.skin_J / part.mass_kg);
  const air_C = spine_C[part.layer]!;
  const heat_W =
    touching.hub_W_per_K[p]! * (air_C - inside_C) +
    touching.pool_W_per_K[p]! * (spine_C[box.layers]! - inside_C);
  return {
    surface_C: inside_C + (heat_W / part.firstArea_m2) * part.inner_m2K_per_W,
    inside_C,
    air_C,
    bottom_C: box.wall_C[baseChain * cellCount]!,
    load_C: fleet.lotTracks[fleet.lots.findIndex((lot) => lot.id === "load")]!.warm_C.at(-1)!,
  };
}

/** Minutes until the packs' surface reaches 0 °C. */
function frozenSurface_min(facts: Carrier): number {
  const fleet = carrier(facts, 12 * 3600);
  for (let t_s = 300; t_s <= 12 * 3600; t_s += 300) {
    runFleet(fleet, t_s);
    if (look(fleet).surface_C >= -0.05) return t_s / 60;
  }
  return Number.NaN;
}

function after(facts: Carrier, t_s: number): PackLook {
  const fleet = carrier(facts, t_s);
  runFleet(fleet, t_s);
  return look(fleet);
}

/**
 * Foam boxes at 28 °C with packs at −5 °C. Published without sizes; taken: 15–30 L, walls of 25–40 mm, 6–14 packs of 0.4 or
 * 0.6 kg, a kilogram of bottles from a refrigerator under them.
 */
const foamBoxes: readonly Carrier[] = [15, 30].flatMap((litres) =>
  [0.025, 0.04].flatMap((wall_m) =>
    [
      { packs: 6, each_kg: 0.4 },
      { packs: 14, each_kg: 0.6 },
    ].map((some) => ({
      build: "foam" as const,
      litres,
      wall_m,
      ...some,
      load_kg: 1,
      room_C: 28,
      start_C: -5,
      layer: "top" as const,
      slush_kg: 0,
    })),
  ),
);

export function foamBoxSamples(): Sample[] {
  const settled = foamBoxes.map((box) => after(box, 5 * 3600));
  const wet = foamBoxes.map((box) => after({ ...box, slush_kg: 3, packs: 4, layer: "fill" }, 5 * 3600));
  const forum = { source: "immunization-field-forum", mark: "R" } as const;
  return [
    {
      name: "packs at −5 °C, foam box at 28 °C: surface below 0 °C",
      unit: "min",
      ...forum,
      published: [60, 90],
      ours: span(foamBoxes.map(frozenSurface_min)),
    },
    {
      name: "… the bottom settles near 6 °C, not at 0",
      unit: "°C",
      ...forum,
      published: [5, 7],
      ours: span(settled.map((box) => box.bottom_C)),
    },
    {
      name: "… air above the packs' own temperature, dry",
      unit: "K",
      ...forum,
      published: [3, 8],
      ours: span(settled.map((box) => box.air_C - box.inside_C)),
    },
    {
      name: "… bottles above the packs, standing in melt",
      unit: "K",
      ...forum,
      published: [0, 1],
      ours: span(wet.map((box) => box.load_C - box.inside_C)),
    },
  ];
}

/** Hours that the warmest and coldest bottle stand within 2…8 °C, from the first moment inside. */
function within2and8_h(facts: Carrier): number {
  const end_s = 72 * 3600;
  const fleet = carrier(facts, end_s);
  runFleet(fleet, end_s);
  const { t_s, warm_C, cold_C } = fleet.lotTracks[fleet.lots.findIndex((lot) => lot.id === "load")]!;
  let inside_s = 0;
  for (let t = 0; t < end_s; t += 300)
    if (valueAt(t_s, warm_C, t) <= 8 && valueAt(t_s, cold_C, t) >= 2) inside_s += 300;
  return inside_s / 3600;
}

/**
 * Vaccine carriers at 43 °C with packs from a freezer. Published (abstract) without pack mass or walls; taken: 5–20 L, walls of
 * 25–40 mm of foam, packs of 0.1–0.4 kg, half a kilogram of vials under the packs or among them.
 */
const vaccineCarriers: readonly Carrier[] = (["foam", "standard"] as const).flatMap((build) =>
  [5, 20].flatMap((litres) =>
    [0.1, 0.2, 0.4].flatMap((each_kg) =>
      (["top", "fill"] as const).map((layer) => ({
        build,
        litres,
        wall_m: build === "foam" ? 0.025 : 0.04,
        packs: 10,
        each_kg,
        load_kg: 0.5,
        room_C: 43,
        start_C: -18,
        layer,
        slush_kg: 0,
      })),
    ),
  ),
);

export function vaccineSamples(): Sample[] {
  const ten = vaccineCarriers.map(within2and8_h);
  // Where ten packs freeze the vials the hours within 2…8 °C say nothing; the time until 8 °C is passed does.
  const mild = vaccineCarriers.filter((box) => box.each_kg <= 0.2 && box.layer === "top");
  const four = mild.map((box) => within2and8_h({ ...box, packs: 4 }) / within2and8_h(box));
  const paper = { source: "marhoon-2026", mark: "R" } as const;
  return [
    {
      name: "ten packs, vaccine carrier at 43 °C: hours within 2…8 °C",
      unit: "h",
      ...paper,
      published: [13, 14.4],
      ours: span(ten),
    },
    {
      name: "… four packs / ten packs",
      unit: "",
      ...paper,
      published: [0, 1],
      ours: span(four),
    },
  ];
}
