import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Problem } from "../../core/trip/types.ts";

const yaml = `coldstow: 1
depart: 2027-06-18T06:00
return: 2027-06-19T18:00
place: { latitude: 38.6, longitude: -109.6, elevation: 1250 m, timezone: America/Denver }
weather: { hourly: { file: canyon.csv } }
coolers: [{ name: galley, size: 50 L }]
`;
const times = Array.from({ length: 40 }, (_, i) => {
  const hour = String((5 + i) % 24).padStart(2, "0");
  return `2027-06-${18 + Math.floor((5 + i) / 24)}T${hour}:00`;
});
const csv = (line: (i: number) => string): string =>
  [
    "time,temp_C,humidity_pct,wind_m_per_s,ghi_W_per_m2,cloud_pct",
    ...times.map((time, i) => `${time},${line(i)}`),
  ].join("\n");

function problemsOf(text: string): readonly Problem[] {
  const reading = readTrip(yaml, { file: "trip.yaml", readBeside: () => text });
  return reading.ok ? [] : reading.problems;
}

describe("hourly weather beyond what there is", () => {
  // At 07:00 the sun there stands near 11°: 900 W/m² then, held as a share of a clear sky's sun, would make noon 6000 W/m².
  it("is a mistake in its line: strong sun soon after it rose, and none told after", () => {
    const problems = problemsOf(csv((i) => `20,40,2,${i === 2 ? 900 : ""},10`));
    expect(problems).toHaveLength(1);
    expect(problems[0]!.path).toBe("weather.hourly.file");
    expect(problems[0]!.must).toMatch(/in its line 4, a global irradiance .* at most \d+ W\/m²/);
    expect(problems[0]!.got).toContain("900");
  });

  it("is told with what the row may have", () => {
    const problems = problemsOf(csv((i) => `20,40,2,${i === 2 ? 900 : ""},10`));
    const most = Number(/at most (\d+)/.exec(problems[0]!.must)![1]);
    expect(problemsOf(csv((i) => `20,40,2,${i === 2 ? most : ""},10`))).toEqual([]);
    expect(problemsOf(csv((i) => `20,40,2,${i === 2 ? most + 2 : ""},10`))).toHaveLength(1);
  });

  it("is never a fault of ours: any numbers in their ranges are read or refused", () => {
    const row = fc.tuple(
      fc.integer({ min: -40, max: 60 }),
      fc.integer({ min: 1, max: 100 }),
      fc.integer({ min: 0, max: 75 }),
      fc.option(fc.integer({ min: -10, max: 1500 }), { nil: "" }),
      fc.integer({ min: 0, max: 100 }),
    );
    fc.assert(
      fc.property(fc.array(row, { minLength: 40, maxLength: 40 }), (rows) => {
        const problems = problemsOf(csv((i) => rows[i]!.join(",")));
        for (const { must } of problems) expect(must).toMatch(/in its line \d+/);
      }),
      { numRuns: 30 },
    );
  });
});
