import { describe, expect, it } from "vitest";
import { bodyOf } from "../../core/cooler/builds.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { TripCooler } from "../../core/trip/types.ts";

function cooler(keys: string): TripCooler {
  const text = `coldstow: 1\ndepart: 2027-06-18T06:30\nreturn: 2027-06-20T15:00\ncoolers: [{ name: a, ${keys} }]\n`;
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.trip.coolers[0]!;
}

describe("a cooler of the file", () => {
  it("takes its walls from the build", () => {
    const { body } = cooler("size: 45 L, build: thick, color: dark");
    expect(body).toEqual(bodyOf("thick", 0.045, 0.88));
  });

  it("takes measured sides instead of the build's proportions", () => {
    const { body, volume_m3, size } = cooler(
      "inside: { length: 60 cm, width: 33 cm, height: 33 cm }, build: thick",
    );
    expect(body.inside).toEqual({ length_m: 0.6, width_m: 0.33, height_m: 0.33 });
    expect(volume_m3).toBeCloseTo(0.06534, 9);
    expect(size).toBe("65 L");
  });

  it("takes known walls zone by zone", () => {
    const { body } = cooler("size: 45 L, build: thick, wall: { lid: 40 mm, insulation: EPS }");
    expect(body.lid).toEqual({ thickness_m: 0.04, insulation: "EPS" });
    expect(body.sides).toEqual(bodyOf("thick", 0.045, 0).sides);
    expect(cooler("size: 45 L, build: thick, wall: { insulation: XPS }").body.base).toEqual({
      thickness_m: 0.055,
      insulation: "XPS",
    });
  });

  it("takes a tested conductance, a weight and an absorptance", () => {
    const { body } = cooler("size: 45 L, conductance: 0.62 W/K, weight: 13 kg, absorptance: 0.35");
    expect(body).toMatchObject({ measured_W_per_K: 0.62, emptyWeight_kg: 13, absorptance_frac: 0.35 });
  });

  it("starts as it is told", () => {
    expect(cooler("size: 45 L, start: { kept: 90 F }").start).toEqual({
      kind: "uniform",
      body_C: expect.closeTo(32.2222, 4),
    });
    expect(cooler("size: 45 L, start: { prechill: 12 h, with: 4 kg, kept: 30 C }").start).toEqual({
      kind: "prechill",
      for_s: 43_200,
      ice_kg: 4,
      room_C: 30,
    });
    expect(cooler("size: 45 L, start: { prechill: 12 h, with: 4 kg }").start).toMatchObject({ room_C: 22 });
  });

  it("is opened as its use suggests, or not at all", () => {
    expect(cooler("size: 45 L, holds: food").openings?.perDay).toBe(8);
    expect(cooler("size: 45 L, holds: drinks").openings?.perDay).toBe(15);
    expect(cooler("size: 45 L, openings: { per day: 0 }").openings).toBeNull();
  });
});
