import { describe, expect, it } from "vitest";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Problem, Trip, TripReading } from "../../core/trip/types.ts";

const head = "depart: 2027-06-18T08:00\nreturn: 2027-06-20T18:00\n";
const fleet = `coldstow-fleet: 1
coolers:
  - { number: 7, size: 65 qt, build: thick, color: dark, weight: 13 kg, conductance: 0.62 W/K }
  - number: 12
    inside: { length: 60 cm, width: 33 cm, height: 33 cm }
    absorptance: 0.5
`;

function read(coolers: string, file: string | null = fleet, name = "fleet.yaml"): TripReading {
  const text = `${head}fleet: ${name}\ncoolers: [${coolers}]\n`;
  return readTrip(text, { file: "trip.yaml", readBeside: (asked) => (asked === name ? file : null) });
}

function trip(coolers: string): Trip {
  const reading = read(coolers);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

function problems(reading: TripReading): readonly Problem[] {
  return reading.ok ? [] : reading.problems;
}

describe("a fleet file", () => {
  it("fills in what a numbered cooler of the trip leaves out", () => {
    const { coolers, assumed } = trip("{ name: galley, number: 7 }, { name: bar, size: 40 L }");
    const alone = readTrip(
      `${head}coolers: [{ name: galley, number: 7, size: 65 qt, build: thick, color: dark, weight: 13 kg, conductance: 0.62 W/K }]`,
      { file: "trip.yaml" },
    );
    expect(alone.ok && alone.trip.coolers[0]).toEqual(coolers[0]);
    expect(coolers.map(({ number }) => number)).toEqual([7, null]);
    const filled = ["size", "build", "color", "weight"].map((key) => `coolers[0].${key}`);
    expect(assumed.filter(({ path }) => filled.includes(path))).toEqual([]);
  });

  it("gives way to what the trip says, and to all that it would overrule", () => {
    const { coolers } = trip(
      "{ name: a, number: 7, color: white, build: thin }, { name: b, number: 12, color: white, size: 50 L }",
    );
    expect(coolers[0]).toMatchObject({ size: "65 qt", body: { emptyWeight_kg: 13, measured_W_per_K: null } });
    expect(coolers[1]!.volume_m3).toBeCloseTo(0.05, 12);
    expect(coolers[1]!.body.absorptance_frac).toBe(coolers[0]!.body.absorptance_frac);
    const inside = trip("{ name: b, number: 12 }").coolers[0]!;
    expect(inside.volume_m3).toBeCloseTo(0.6 * 0.33 * 0.33, 12);
    expect(inside.body.absorptance_frac).toBe(0.5);
  });

  it.each<[string, string, string | null, string, RegExp]>([
    ["an unknown number", "{ name: a, number: 8 }", fleet, "coolers[0].number", /7, 12/],
    [
      "a number twice",
      "{ name: a, number: 7 }, { name: b, number: 7 }",
      fleet,
      "coolers[1].number",
      /unlike/,
    ],
    ["no file", "{ name: a, number: 7 }", null, "fleet", /can be read/],
    ["no mapping", "{ name: a, number: 7 }", "- 7", "fleet", /line 1/],
    ["no YAML", "{ name: a, number: 7 }", "coolers: [", "fleet", /YAML/],
    [
      "no version",
      "{ name: a, number: 7 }",
      fleet.replace("coldstow-fleet: 1\n", ""),
      "fleet",
      /coldstow-fleet/,
    ],
    [
      "a double",
      "{ name: a, number: 7 }",
      fleet.replace("number: 12", "number: 7"),
      "fleet",
      /line 4, coolers\[1\].number/,
    ],
    [
      "a name",
      "{ name: a, number: 7 }",
      fleet.replace("color: dark", "name: x"),
      "fleet",
      /line 3, coolers\[0\].name.*known key/,
    ],
    [
      "a word",
      "{ name: a, number: 7 }",
      fleet.replace("thick", "fat"),
      "fleet",
      /line 3, coolers\[0\].build, one of/,
    ],
    [
      "a unit",
      "{ name: a, number: 7 }",
      fleet.replace("65 qt", "65 lb"),
      "fleet",
      /cooler 7, size, a volume/,
    ],
  ])("is refused with %s", (_what, coolers, file, path, must) => {
    const found = problems(read(coolers, file));
    expect(found.map((problem) => problem.path)).toEqual([path]);
    expect(found[0]!.must).toMatch(must);
  });

  it.each(["../fleet.yaml", "/fleet.yaml", "C:/fleet.yaml"])("is not looked for at %s", (name) => {
    const asked: string[] = [];
    const reading = readTrip(`${head}fleet: "${name}"\ncoolers: [{ name: a, number: 7 }]`, {
      file: "trip.yaml",
      readBeside: (other) => {
        asked.push(other);
        return fleet;
      },
    });
    expect(problems(reading).map(({ path }) => path)).toEqual(["fleet"]);
    expect(asked).toEqual([]);
  });

  it("is not needed for a number", () => {
    const reading = readTrip(`${head}coolers: [{ name: a, number: 3, size: 40 L }]`, { file: "trip.yaml" });
    expect(reading.ok && reading.trip.coolers[0]!.number).toBe(3);
  });
});
