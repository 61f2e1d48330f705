import { describe, expect, it } from "vitest";
import { coldStair, coldStairData } from "../../core/tell/pictures/coldStair.ts";
import { compareBands } from "../../core/tell/pictures/compareBands.ts";
import { coolerStrip } from "../../core/tell/pictures/coolerStrip.ts";
import { coolerStripData } from "../../core/tell/pictures/coolerStripData.ts";
import { doubtBars } from "../../core/tell/pictures/doubtBars.ts";
import { foodClock, foodClockData } from "../../core/tell/pictures/foodClock.ts";
import { habitLadder } from "../../core/tell/pictures/habitLadder.ts";
import { iceBand, iceBandData } from "../../core/tell/pictures/iceBand.ts";
import { stressGrid } from "../../core/tell/pictures/stressGrid.ts";
import { standalone, type Theme, themes } from "../../core/tell/pictures/tokens.ts";
import { inventedForecast } from "./fixtures/forecast.ts";
import { inventedCompare, inventedEnsemble, inventedHabits, inventedStress } from "./fixtures/whatif.ts";

function drawn(banded: boolean, namesEnd = ""): string[] {
  const forecast = inventedForecast({ banded, namesEnd });
  const options = { width: 360, units: "us", id: "one" } as const;
  return [
    ...[0, 1, 2].flatMap((i) => [
      iceBand(iceBandData(forecast, i), options),
      coldStair(coldStairData(forecast, i), options),
    ]),
    foodClock(foodClockData(forecast), options),
    coolerStrip(coolerStripData(forecast), options),
    habitLadder(inventedHabits(namesEnd), options),
    stressGrid(inventedStress(namesEnd), options),
    compareBands(inventedCompare(namesEnd), options),
    doubtBars(inventedEnsemble(namesEnd), 0, options),
  ];
}

const everything = [...drawn(false), ...drawn(true)];

describe("every picture", () => {
  it("is said in a title and a description, and has the role of an image", () => {
    for (const svg of everything) {
      expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="title-one desc-one"/);
      expect(svg).toMatch(/<title id="title-one">[^<]{10,}<\/title><desc id="desc-one">[^<]{10,}<\/desc>/);
    }
  });

  it("takes its colours from tokens alone, and only from tokens that every theme has", () => {
    for (const svg of everything) {
      expect(svg).not.toMatch(/#[0-9a-f]{3,8}\b(?!-)|rgb\(|hsl\(/i);
      for (const [, name] of svg.matchAll(/var\(--(\w+)\)/g))
        for (const theme of Object.values(themes)) expect(theme).toHaveProperty(name!);
    }
  });

  it("has no script, gradient, filter, foreign object, link or animation", () => {
    for (const svg of everything)
      expect(svg).not.toMatch(
        /<(script|linearGradient|radialGradient|filter|foreignObject|image|use|a|animate)\b|href=| on\w+=/,
      );
  });

  it("numbers to a tenth of a pixel", () => {
    for (const svg of everything) {
      const drawing = svg.replace(/<(title|desc|text)\b[^>]*>[^<]*/g, "");
      expect(drawing).not.toMatch(/\d\.\d\d/);
    }
  });

  it("ends every id with its own, so that two stand on one page", () => {
    for (const svg of everything) {
      for (const [, id] of svg.matchAll(/ id="([^"]+)"/g)) expect(id).toMatch(/-one$/);
      for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(svg).toContain(` id="${id}"`);
    }
  });

  it("is the same whenever it is drawn", () => {
    expect([...drawn(false), ...drawn(true)]).toEqual(everything);
  });

  it("lets no name become markup", () => {
    const plain = drawn(true);
    const nasty = drawn(true, `</text><script>x</script>&"'\u0000\ud800`);
    const tags = (svg: string): string[] => [...svg.matchAll(/<\/?([a-zA-Z]+)/g)].map(([, name]) => name!);
    nasty.forEach((svg, i) => {
      expect(svg).not.toContain("<script");
      expect(svg).toContain("&lt;/text&gt;&lt;script&gt;");
      expect(svg).not.toMatch(/\p{Cc}|\p{Cs}/u);
      expect(new Set(tags(svg))).toEqual(new Set(tags(plain[i]!)));
    });
  });

  it("promises nothing", () => {
    for (const svg of everything) expect(svg).not.toMatch(/\bsafe/i);
  });

  it("refuses an id that could leave its attribute, and a width that holds nothing", () => {
    const data = foodClockData(inventedForecast());
    expect(() => foodClock(data, { width: 360, units: "us", id: 'x"y' })).toThrow("id must be");
    expect(() => foodClock(data, { width: 100, units: "us", id: "x" })).toThrow("width must be 320…1600");
  });
});

describe("the ice band", () => {
  const options = { width: 720, units: "us", id: "one" } as const;

  it("draws no band for a middle case, and says so", () => {
    const svg = iceBand(iceBandData(inventedForecast(), 0), options);
    expect(svg).toContain("One typical run, no range yet.");
    expect(svg).not.toContain('fill="url(#luck-one)"');
    expect(svg).not.toContain("9 in 10 until");
  });

  it("draws three areas and three flags where there are members", () => {
    const svg = iceBand(iceBandData(inventedForecast({ banded: true }), 0), options);
    expect(svg).toContain('fill="url(#luck-one)"');
    for (const word of ["9 in 10 until", "likely until", "1 in 10 past"]) expect(svg).toContain(`>${word}<`);
  });

  it("draws dry ice apart from ice, and frost beside dry ice not at all", () => {
    const forecast = inventedForecast();
    const both = iceBand(iceBandData(forecast, 1), options);
    expect(both).toContain("dry ice left, full is");
    expect(both).toContain(">ice left, full is");
    const ice = forecast.trip.ice.filter(({ cooler, form }) => cooler !== 1 || form === "dry ice");
    const alone = iceBand(iceBandData({ ...forecast, trip: { ...forecast.trip, ice } }, 1), options);
    expect(alone).toContain("no ice packed");
    expect(alone).toContain('fill="url(#dry-one)"');
    expect(alone).not.toContain(">ice left, full is");
    expect(iceBand(iceBandData(forecast, 0), options)).not.toContain("dry-one");
  });

  it("explains every sign that it draws", () => {
    const svg = iceBand(iceBandData(inventedForecast(), 0), options);
    for (const word of ["merged", "put in", "moved", "taken out", "opened", "likely end of the ice"])
      expect(svg).toContain(`>${word}<`);
    expect(svg).not.toContain(">ice added<");
  });

  it("draws a refill as an upright step", () => {
    const forecast = inventedForecast();
    const data = iceBandData(forecast, 2);
    const t_h = [0, 33.5, 33.5, 60];
    const band = { p10: [9, 2, 6, 0], p50: [9, 2, 6, 0], p90: [9, 2, 6, 0] };
    const svg = iceBand({ ...data, series: { ...data.series, t_h, ice_kg: band } }, options);
    const likely = /<path d="(M[^"]*)" fill="none" stroke="var\(--ink\)" stroke-width="2.6"/.exec(svg)![1]!;
    const xs = likely
      .slice(1)
      .split("L")
      .map((point) => point.split(",")[0]);
    expect(xs).toHaveLength(4);
    expect(xs[1]).toBe(xs[2]);
  });

  it("tells everything that happens in its description, drawn or not", () => {
    const svg = iceBand(iceBandData(inventedForecast(), 0), options);
    const desc = /<desc[^>]*>([^<]*)/.exec(svg)![1]!;
    for (const word of [
      "take out chicken thighs",
      "merge bar into galley",
      "put in trout",
      "cut melon past its limit",
    ])
      expect(desc).toContain(word);
  });
});

describe("the stair of cold", () => {
  it.each(["us", "metric"] as const)("shows values that add up to the total shown (%s)", (units) => {
    const forecast = inventedForecast();
    for (const i of [0, 1, 2]) {
      const svg = coldStair(coldStairData(forecast, i), { width: 360, units, id: "one" });
      const title = /<title[^>]*>([^<]*)/.exec(svg)![1]!;
      const [steps, total] = title.split("; adds up to ") as [string, string];
      const tenths = (text: string): number => Math.round(Number(text.replace("−", "-")) * 10);
      const values = [...steps.matchAll(/ (−?\d+\.\d)(?=,|$)/g)].map(([, value]) => tenths(value!));
      expect(values.length).toBeGreaterThan(5);
      expect(values.reduce((sum, value) => sum + value, 0)).toBe(tenths(total.replace(/\.$/, "")));
    }
  });

  it("steps right and stays white where heat came out", () => {
    const svg = coldStair(coldStairData(inventedForecast(), 1), { width: 360, units: "us", id: "one" });
    expect(svg).toContain('fill="var(--sheet)" stroke="var(--heat)"');
  });
});

/** Relative luminance and contrast as WCAG 2 defines them. */
function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [r, g, b] = [1, 3, 5]
      .map((i) => Number.parseInt(colour.slice(i, i + 2), 16) / 255)
      .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  };
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

describe.each(Object.keys(themes) as Theme[])("the %s theme", (name) => {
  const theme = themes[name];

  it.each([
    ["ink", "sheet", 4.5],
    ["ink2", "sheet", 4.5],
    ["ink", "night", 4.5],
    ["ink2", "night", 4.5],
    ["sure", "sheet", 3],
    ["sure", "night", 3],
    ["heat", "sheet", 3],
    ["eat", "eatFill", 3],
    ["likely", "likelyBg", 2.9],
    ["edge", "sheet", 3],
  ] as const)("%s stands out from %s", (over, under, least) => {
    expect(contrast(theme[over]!, theme[under]!)).toBeGreaterThanOrEqual(least);
  });

  it("goes in front of a picture that stands alone", () => {
    const svg = standalone(everything[0]!, name);
    expect(svg).toMatch(/^<svg [^>]*><style>svg\{--paper:/);
    expect(svg.replace(/<style>.*<\/style><rect [^>]*\/>/, "").trimEnd()).toBe(everything[0]);
  });
});
