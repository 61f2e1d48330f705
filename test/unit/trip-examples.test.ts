import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { forecastProblems } from "../../core/trip/forecastProblems.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import { templates } from "../../core/trip/templates.ts";
import { files } from "../house/tree.ts";

const folder = new URL("../../examples/", import.meta.url);

describe("examples", () => {
  it("are the templates, one file each", () => {
    const shipped = files.filter((path) => /^examples\/[^/]+\.yaml$/.test(path));
    expect(templates.map(({ file }) => `examples/${file}`).sort()).toEqual(shipped);
  });

  it.each(templates)("$file reads without a problem and can be forecast or planned", ({ file }) => {
    const text = readFileSync(new URL(file, folder), "utf8");
    expect(text).toMatch(/invented/);
    const reading = readTrip(text, { file });
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
    const { trip } = reading;
    expect(trip.food.length).toBeGreaterThanOrEqual(8);
    expect(trip.supply.length).toBeGreaterThan(0);
    // One example leaves every place and all ice to the plan.
    if (trip.ice.length === 0) {
      expect(trip.food.every((item) => item.open.place)).toBe(true);
      return;
    }
    expect(forecastProblems(trip)).toEqual([]);
    // What is packed at departure goes in: solid volumes of ice and food leave some room.
    trip.coolers.forEach((cooler, i) => {
      const aboard = [...trip.ice, ...trip.food].filter((lot) => lot.cooler === i && lot.putIn_s === null);
      const litres = aboard.reduce((sum, lot) => sum + lot.mass_kg / 0.95, 0);
      expect(litres / (1000 * cooler.volume_m3)).toBeGreaterThan(0.3);
      expect(litres / (1000 * cooler.volume_m3)).toBeLessThan(0.75);
    });
  });
});
