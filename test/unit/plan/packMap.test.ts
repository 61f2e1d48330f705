import { describe, expect, it } from "vitest";
import type { PackLayer } from "../../../core/forecast/planResult.ts";
import { packMap } from "../../../core/plan/packMap/packMap.ts";
import { noPaint } from "../../../core/tell/lines.ts";
import { packText } from "../../../core/tell/packText.ts";
import { packSection } from "../../../core/tell/pictures/packSection.ts";
import type { Trip } from "../../../core/trip/types.ts";
import { toyCooler, toyFood, toyForecast, toyIce, toyTrip } from "./toyTrip.ts";

function mapOf(more: Partial<Trip>): ReturnType<typeof packMap> & { trip: Trip } {
  const trip = toyTrip(more);
  return { trip, ...packMap(trip, toyForecast(trip)) };
}

const layerOf = (layers: readonly PackLayer[], item: string): number =>
  layers.findIndex((layer) => layer.items.includes(item));
const notes = (layers: readonly PackLayer[]): string => layers.flatMap((layer) => layer.notes).join("\n");
const base = { layer: "base" } as const;

describe("packMap", () => {
  it("draws a block at its weight and usual proportions", () => {
    const { layers } = mapOf({ ice: [{ ...toyIce("block", 1, 4.585), ...base }] });
    const [block] = layers[0]!.places;
    // 4.585 kg at 917 kg/m³ are 5 L; sides 1.5 : 1 : 0.75.
    expect(block!.length_m * block!.width_m * block!.height_m).toBeCloseTo(0.005, 4);
    const sides = [block!.length_m, block!.width_m, block!.height_m].sort((a, b) => a - b);
    expect(sides[2]! / sides[0]!).toBeCloseTo(2, 1);
  });

  it("lays raw under what is eaten as it is, though it is eaten first", () => {
    const big = { mass_kg: 6, pieces: 6, thick_m: 0.04 };
    const { layers } = mapOf({
      food: [
        toyFood("chicken", 0, { ...big, raw: true, eat_s: 10 * 3600 }),
        toyFood("salad", 0, { ...big, eat_s: 40 * 3600 }),
      ],
    });
    expect(layerOf(layers, "chicken")).toBeLessThanOrEqual(layerOf(layers, "salad"));
    expect(layers[0]!.items).toContain("chicken");
    expect(notes(layers)).toMatch(/RAW chicken: in a tray/);
  });

  it("puts a towel between a block below its melting point and what freezing ruins", () => {
    const ice = [{ ...toyIce("block", 2, 4), ...base, start_C: -10 }];
    const lettuce = [toyFood("lettuce", 0, { freezesBadly: true, shape: "lump", thick_m: 0.1 })];
    const cold = mapOf({ ice, food: lettuce });
    expect(layerOf(cold.layers, "lettuce")).toBe(1);
    expect(notes(cold.layers)).toMatch(/towel below this layer: block would freeze lettuce/);
    const [low, high] = cold.layers as [PackLayer, PackLayer];
    expect(high.from_m).toBeGreaterThan(low.from_m + low.thick_m);
    const mild = mapOf({ ice: [{ ...ice[0]!, start_C: 0 }], food: lettuce });
    expect(notes(mild.layers)).not.toMatch(/towel/);
  });

  it("counts cans in trays and loses none", () => {
    const cans = toyFood("cans", 0, { mass_kg: 24 * 0.35, pieces: 24, shape: "cylinder", thick_m: 0.066 });
    const { layers } = mapOf({ food: [cans] });
    const places = layers.flatMap((layer) => layer.places);
    expect(places.length).toBeLessThan(10);
    expect(places.reduce((sum, place) => sum + place.share_frac, 0)).toBeCloseTo(1, 9);
    expect(places[0]!.what).toMatch(/^cans, 1–\d+ of 24$/);
  });

  it("shares loose ice out over the layers of food, by bags", () => {
    const food = [1, 2, 3, 4, 5, 6].map((i) =>
      toyFood(`stew ${i}`, 0, { mass_kg: 2.5, thick_m: 0.05, eat_s: i * 3600 }),
    );
    const { layers } = mapOf({
      coolers: [toyCooler("galley")],
      food,
      ice: [{ ...toyIce("cube", 2, 3), layer: "fill" }],
    });
    const poured = layers.filter(({ places }) => places.some(({ kind }) => kind === "loose ice"));
    expect(poured.length).toBeGreaterThan(1);
    expect(notes(layers)).toMatch(/loose ice, [\d.]+ of 2 bags: pour it into the gaps/);
  });

  // A lump of 2.28 kg is a cube of 13 cm: six to a layer, two layers of them in 33 cm, 12 in all.
  const lump = { shape: "lump", thick_m: 0.13, mass_kg: 2.28 } as const;
  const topOf_m = (one: { z_m: number; height_m: number }): number => one.z_m + one.height_m;

  it("presses bags into what is left where stiff boxes would stand over the rim", () => {
    // 62 % packed, thirteen of 2.2 L take 46 of 49.5 L.
    const food = Array.from({ length: 13 }, (_, i) =>
      toyFood(`food ${i}`, 0, { ...lump, eat_s: (i + 1) * 3 * 3600 }),
    );
    const { layers, warnings } = mapOf({ food });
    expect(warnings).toEqual([]);
    expect(notes(layers)).toMatch(/press bags flat/);
    const places = layers.flatMap((layer) => layer.places);
    expect(Math.max(...places.map(topOf_m))).toBeLessThanOrEqual(0.33 + 1e-9);
    // What is eaten first lies at the top, what is eaten last at the base.
    expect(layers.at(-1)!.items).toContain("food 0");
    expect(layers[0]!.items).toContain("food 12");
  });

  it("lays food beside tall ice in layers of its own, raw below ready", () => {
    // Beside two jugs as they lie there is room for one lump of 16 cm, and over them for three: the fifth finds none.
    const large = { ...lump, thick_m: 0.16, mass_kg: 4.26 };
    const ready = Array.from({ length: 4 }, (_, i) =>
      toyFood(`food ${i}`, 0, { ...large, eat_s: (i + 2) * 3 * 3600 }),
    );
    const { layers } = mapOf({
      ice: [{ ...toyIce("jug", 2, 3.8), ...base }],
      food: [toyFood("chicken", 0, { ...large, raw: true, eat_s: 3600 }), ...ready],
    });
    expect(notes(layers)).toMatch(/stand this at one end/);
    const places = layers.flatMap((layer) => layer.places);
    const jugs = places.filter(({ kind }) => kind === "ice");
    const chicken = places.filter(({ kind }) => kind === "raw");
    const above = places.filter(({ kind }) => kind === "ready");
    expect(layers[0]!.places).toEqual(jugs);
    expect(Math.max(...chicken.map(topOf_m))).toBeLessThanOrEqual(
      Math.min(...above.map(({ z_m }) => z_m)) + 1e-9,
    );
    expect(chicken[0]!.z_m).toBeLessThan(Math.max(...jugs.map(topOf_m)));
  });

  it("tells a piece of ice that is longer than the inside however it is turned", () => {
    // Packs of 8 : 6 : 1 at about 1 kg/L: 4 kg are 35 × 26 × 4 cm, 12 kg are 50 × 38 × 6 cm, in 50 × 30 × 33 cm.
    expect(mapOf({ ice: [{ ...toyIce("gel pack", 1, 4), ...base }] }).warnings).toEqual([]);
    const { warnings } = mapOf({ ice: [{ ...toyIce("gel pack", 1, 12), ...base }] });
    expect(warnings).toEqual([
      expect.objectContaining({
        code: "map-full",
        says: expect.stringMatching(/longer than the inside however it is turned/),
      }),
    ]);
  });

  it("says by how much a load stands over the rim, and why there is no map", () => {
    const full = mapOf({ food: [toyFood("stew", 0, { mass_kg: 80, pieces: 40, thick_m: 0.05 })] });
    expect(full.warnings).toEqual([
      expect.objectContaining({ code: "map-full", says: expect.stringMatching(/\d+ % higher/) }),
    ]);
    const empty = mapOf({});
    expect(empty).toMatchObject({ layers: [], warnings: [{ code: "map-empty" }] });
  });
});

describe("a pack map as told", () => {
  const { trip, layers } = mapOf({
    ice: [{ ...toyIce("block", 1, 4), ...base }],
    food: [toyFood("chicken <b>", 0, { raw: true, mass_kg: 3, pieces: 3 }), toyFood("stew", 0)],
  });

  it("is a text with the top layer first and 1 at the base, or nothing", () => {
    const text = packText(layers, "galley", { width: 60, paint: noPaint });
    const numbers = text.flatMap((one) => /^ {2}(\d) /.exec(one)?.[1] ?? []).map(Number);
    expect(numbers).toEqual([...numbers].sort((a, b) => b - a));
    expect(numbers.at(-1)).toBe(1);
    expect(Math.max(...text.map((one) => one.length))).toBeLessThanOrEqual(60);
    expect(packText(layers, "attic", { width: 60, paint: noPaint })).toEqual([]);
  });

  it("is a picture that says RAW, closes in what a person typed, and draws an empty cooler too", () => {
    const options = { width: 360, units: "us", id: "one" } as const;
    const svg = packSection(trip, layers, "galley", options);
    expect(svg).toMatch(/<desc[^>]*>From the base\. 1: [^<]*RAW chicken/);
    expect(svg).not.toContain("<b>");
    expect(packSection(trip, [], "galley", options)).toMatch(/Nothing goes in/);
    expect(() => packSection(trip, layers, "attic", options)).toThrow(/cooler must be one/);
  });

  it("keeps the labels of a picture apart", () => {
    const many = Array.from({ length: 9 }, (_, i) => ({
      ...layers[0]!,
      layer: i,
      from_m: i * 0.02,
      thick_m: 0.02,
    }));
    const svg = packSection(trip, many, "galley", { width: 360, units: "metric", id: "one" });
    const tops = [...svg.matchAll(/y="([\d.]+)" font-size="13" font-weight="700"/g)].map(([, y]) =>
      Number(y),
    );
    expect(tops).toHaveLength(9);
    for (let i = 1; i < tops.length; i++) expect(tops[i - 1]! - tops[i]!).toBeGreaterThanOrEqual(37.9);
  });
});
