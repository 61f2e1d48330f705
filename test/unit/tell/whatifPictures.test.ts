/** Pictures of what-if runs. Every result is invented; what is expected follows from its numbers by hand. */
import { describe, expect, it } from "vitest";
import { compareBands } from "../../../core/tell/pictures/compareBands.ts";
import { doubtBars } from "../../../core/tell/pictures/doubtBars.ts";
import { habitLadder } from "../../../core/tell/pictures/habitLadder.ts";
import { stressGrid } from "../../../core/tell/pictures/stressGrid.ts";
import { inventedForecast } from "../fixtures/forecast.ts";
import { inventedCompare, inventedEnsemble, inventedHabits, inventedStress } from "../fixtures/whatif.ts";

const options = { width: 900, units: "us", id: "one" } as const;
const flat = (svg: string): string => svg.replace(/<\/text><text[^>]*>/g, " ");

/** Marks alone, without the signs of the key, which stand left of every scale. */
function attributes(svg: string, name: string, attribute: string): number[] {
  return [...svg.matchAll(new RegExp(`<${name} [^>]*?\\b${attribute}="([^"]+)"`, "g"))]
    .map(([, value]) => Number(value))
    .filter((value) => value > 300);
}

describe("the ladder of habits", () => {
  const svg = habitLadder(inventedHabits(), options);

  it("puts gains right of the zero line and losses left of it", () => {
    const zero = Number(/<text x="([\d.]+)"[^>]*>0 h</.exec(svg)![1]);
    const dots = attributes(svg, "circle", "cx");
    expect(dots).toHaveLength(4);
    expect(dots.slice(0, 3).every((x) => x > zero)).toBe(true);
    expect(dots[3]).toBeLessThan(zero);
  });

  it("draws food and ice of each habit by shapes of their own, food first", () => {
    expect(svg.match(/fill="url\(#likely-one\)"/g)).toHaveLength(5);
    expect(svg.indexOf("<circle")).toBeLessThan(svg.indexOf('fill="url(#likely-one)"'));
  });

  it("names what makes no difference without a row", () => {
    expect(flat(svg)).toContain("On this trip nothing you would notice: hang a wet cloth over it.");
    expect(svg).not.toContain("5. ");
  });

  it("draws where nothing counts, and says so", () => {
    const habits = inventedHabits().habits.filter(({ key }) => key === "wet cloth");
    const idle = habitLadder({ ...inventedHabits(), habits }, options);
    expect(idle).toContain("no habit tried makes a difference");
    expect(idle).not.toContain("gained");
    expect(idle).not.toContain("NaN");
  });
});

describe("the grid of stresses", () => {
  const struck = (svg: string): number[] =>
    svg
      .split(/: (?:holds|breaks)<\/text>/)
      .slice(1)
      .map((row) => row.match(/width="12" height="12" fill="var\(--ink\)"/g)?.length ?? 0);

  it("strikes of ten squares as many as fail, one where any does", () => {
    // 0.4 %, 6 %, 9 %, 31 %, 74 % and all of them.
    expect(struck(stressGrid(inventedStress(), options))).toEqual([1, 1, 1, 3, 7, 10]);
  });

  it("never strikes all where one member holds, nor any where none fails", () => {
    const { cases, ...rest } = inventedStress();
    const shares = [0.999, 0];
    const two = cases.slice(0, 2).map((one, i) => ({ ...one, fails_frac: shares[i]! }));
    expect(struck(stressGrid({ ...rest, cases: two }, options))).toEqual([9, 0]);
  });

  it("heads with robust only where all hold", () => {
    expect(stressGrid(inventedStress(), options)).not.toMatch(/robust/i);
    expect(stressGrid(inventedStress("", true), options)).toContain("Robust: all 6 cases hold.");
    expect(stressGrid({ ...inventedStress(), robust: true }, options)).not.toMatch(/robust/i);
  });
});

describe("trips laid over each other", () => {
  const svg = compareBands(inventedCompare("", 4), options);

  it("tells four letters apart by strokes and textures alone", () => {
    const dashes = new Set(
      [...svg.matchAll(/stroke-width="2\.6"(?: stroke-dasharray="([^"]+)")?/g)].map(
        ([, dash]) => dash ?? "solid",
      ),
    );
    expect(dashes.size).toBe(4);
    for (const i of [0, 1, 2, 3]) expect(svg).toContain(`fill="url(#over${i}-one)"`);
  });

  it("labels each line on itself, discs apart from each other", () => {
    const spots = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="10"/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    // Four in each of two panels, and four in the key.
    expect(spots).toHaveLength(12);
    spots.forEach(([x, y], i) => {
      for (const [ox, oy] of spots.slice(i + 1)) expect(Math.hypot(x! - ox!, y! - oy!)).toBeGreaterThan(20);
    });
  });

  it("draws no more than four", () => {
    const five = inventedCompare("", 4);
    const more = { ...five, trips: [...five.trips, { ...five.trips[0]!, letter: "E", title: "a fifth" }] };
    expect(compareBands(more, options)).not.toContain("a fifth");
  });
});

describe("the bars of doubt", () => {
  const svg = doubtBars(inventedEnsemble(), 0, options);

  it("stand in order of their shares, the rest last, and add up to the whole", () => {
    const shares = [...svg.matchAll(/>(\d+) %</g)].map(([, share]) => Number(share));
    // The invented shares: 38, 20, 11, 6; openings with 3 are among the rest.
    expect(shares).toEqual([38, 20, 11, 6, 25]);
    expect(flat(svg)).toContain("small things, and several at once");
  });

  it("name what would narrow the range and by how much", () => {
    // 1 − √(1 − 0.38) = 0.213.
    expect(svg).toContain("test it at home with a known weight of ice (range 21 % narrower)");
    expect(svg).not.toContain("nothing: it is small");
  });

  it("say so where no doubt is known", () => {
    expect(doubtBars(inventedForecast(), 0, options)).toContain("No doubt stands out.");
  });
});
