/** Pictures in a real browser: what a person sees must stand inside the picture and apart from its neighbours. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { coldStair, coldStairData } from "../../core/tell/pictures/coldStair.ts";
import { compareBands } from "../../core/tell/pictures/compareBands.ts";
import { coolerStrip } from "../../core/tell/pictures/coolerStrip.ts";
import { coolerStripData } from "../../core/tell/pictures/coolerStripData.ts";
import { doubtBars } from "../../core/tell/pictures/doubtBars.ts";
import { foodClock, foodClockData } from "../../core/tell/pictures/foodClock.ts";
import { habitLadder } from "../../core/tell/pictures/habitLadder.ts";
import { iceBand, iceBandData } from "../../core/tell/pictures/iceBand.ts";
import { mergeCurves, mergeCurvesData } from "../../core/tell/pictures/mergeCurves.ts";
import { stressGrid } from "../../core/tell/pictures/stressGrid.ts";
import { standalone, type Theme } from "../../core/tell/pictures/tokens.ts";
import { launchBrowser } from "../../scripts/browser.mjs";
import { inventedForecast } from "../unit/fixtures/forecast.ts";
import { plannedForecast } from "../unit/fixtures/plannedForecast.ts";
import {
  inventedCompare,
  inventedEnsemble,
  inventedHabits,
  inventedStress,
} from "../unit/fixtures/whatif.ts";

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage();
});

afterAll(async () => {
  await browser?.close();
});

/** Every picture, of a short-named and a long-named trip, with a band and without. */
function pictures(width: number): string[] {
  const forecasts = [
    inventedForecast(),
    inventedForecast({ banded: true }),
    inventedForecast({ banded: true, namesEnd: " & <what> somebody wrote far too long to fit anywhere" }),
  ];
  const told = forecasts.flatMap((forecast, i) => {
    const options = { width, units: i === 1 ? "us" : "metric", id: "one" } as const;
    return [
      ...[0, 1, 2].flatMap((cooler) => [
        iceBand(iceBandData(forecast, cooler), options),
        coldStair(coldStairData(forecast, cooler), options),
      ]),
      foodClock(foodClockData(forecast), options),
      coolerStrip(coolerStripData(forecast), options),
    ];
  });
  return [...told, ...ofPlans(width), ...whatIfs(width)];
}

function ofPlans(width: number): string[] {
  return ["", " & <what> somebody wrote far too long to fit anywhere"].flatMap((namesEnd) => {
    const options = { width, units: "metric", id: "one" } as const;
    const planned = plannedForecast({ namesEnd });
    return [
      coolerStrip(coolerStripData(planned), options),
      mergeCurves(mergeCurvesData(planned, 0), options),
    ];
  });
}

function whatIfs(width: number): string[] {
  return ["", " & <what> somebody wrote far too long to fit anywhere"].flatMap((namesEnd, i) => {
    const options = { width, units: i === 1 ? "us" : "metric", id: "one" } as const;
    return [
      habitLadder(inventedHabits(namesEnd), options),
      stressGrid(inventedStress(namesEnd), options),
      compareBands(inventedCompare(namesEnd, 2 + 2 * i), options),
      doubtBars(inventedEnsemble(namesEnd), 0, options),
    ];
  });
}

interface Laid {
  parsed: boolean;
  texts: number;
  /** Words that stick out of the picture, pairs that touch, words too small to read. */
  faults: string[];
}

/**
 * Lays one picture out and measures its words. A line's box reaches from the tops of tall letters to the feet of low ones;
 * the face's own line height, which is mostly air, is left out.
 */
function laidOut(svg: string): Promise<Laid> {
  return page.evaluate((source) => {
    const parsed =
      new DOMParser().parseFromString(source, "image/svg+xml").querySelector("parsererror") === null;
    document.body.innerHTML = source;
    const drawing = document.querySelector("svg")!;
    const { width, height } = drawing.viewBox.baseVal;
    const boxes = [...drawing.querySelectorAll("text")].map((text) => {
      const { x, width: long } = text.getBBox();
      const base = Number(text.getAttribute("y"));
      const size = Number(text.getAttribute("font-size"));
      return {
        words: text.textContent ?? "",
        x0: x,
        x1: x + long,
        y0: base - 0.76 * size,
        y1: base + 0.22 * size,
        size,
      };
    });
    const faults = boxes
      .filter((one) => one.x0 < 0 || one.x1 > width || one.y0 < 0 || one.y1 > height)
      .map((one) => `sticks out: ${one.words}`);
    faults.push(...boxes.filter((one) => one.size < 12).map((one) => `too small: ${one.words}`));
    boxes.forEach((one, i) => {
      for (const other of boxes.slice(i + 1))
        if (one.x0 < other.x1 && other.x0 < one.x1 && one.y0 < other.y1 && other.y0 < one.y1)
          faults.push(`touch: ${one.words} | ${other.words}`);
    });
    return { parsed, texts: boxes.length, faults };
  }, svg);
}

describe.each([360, 720, 900])("pictures %d pixels wide", (width) => {
  it.each<Theme>(["day", "print", "night"])("set their words inside and apart (%s)", async (theme) => {
    for (const svg of pictures(width)) {
      const laid = await laidOut(standalone(svg, theme));
      expect(laid.parsed).toBe(true);
      expect(laid.texts).toBeGreaterThan(8);
      expect(laid.faults).toEqual([]);
    }
  });

  it("light nothing but red at night", async () => {
    for (const svg of pictures(width)) {
      const other = await page.evaluate(
        async (source) => {
          const image = new Image();
          image.src = `data:image/svg+xml,${encodeURIComponent(source)}`;
          await image.decode();
          const canvas = new OffscreenCanvas(image.width, image.height);
          const pen = canvas.getContext("2d")!;
          pen.drawImage(image, 0, 0);
          const { data } = pen.getImageData(0, 0, image.width, image.height);
          let lit = 0;
          for (let i = 0; i < data.length; i += 4)
            if (data[i + 1] !== 0 || data[i + 2] !== 0 || data[i + 3] !== 255) lit += 1;
          return { lit, size: data.length };
        },
        standalone(svg, "night"),
      );
      expect(other.size).toBeGreaterThan(0);
      expect(other.lit).toBe(0);
    }
  });
});
