/** The trip book in a real browser: each sheet on one page of its paper, its words inside, and no sideways scrolling on a phone. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BookOptions } from "../../core/tell/book/options.ts";
import { tripBook } from "../../core/tell/book/tripBook.ts";
import { launchBrowser } from "../../scripts/browser.mjs";
import { plannedForecast } from "../unit/fixtures/plannedForecast.ts";

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage();
});

afterAll(async () => {
  await browser?.close();
});

const namesEnd = " & <what> somebody wrote far too long to fit";
const options = (paper: BookOptions["paper"]): BookOptions => ({
  units: paper === "A4" ? "metric" : "us",
  made: "1 June 2027",
  paper,
  pictures: {},
});

/** Inside the margins of 12 mm, pixels. */
const INSIDE_px = { A4: { width: 703, height: 1032 }, Letter: { width: 725, height: 965 } } as const;

describe.each(["A4", "Letter"] as const)("a trip book on %s", (paper) => {
  it.each(["", namesEnd])(
    "prints one page a sheet, with nothing cut off (names end in '%s')",
    async (end) => {
      const html = tripBook(plannedForecast({ namesEnd: end }), options(paper));
      await page.setViewportSize(INSIDE_px[paper]);
      await page.setContent(html);
      await page.emulateMedia({ media: "print" });
      const laid = await page.$$eval(".sheet", (sheets) =>
        sheets.map((sheet) => ({
          about: sheet.querySelector("header span")!.textContent,
          tall: sheet.getBoundingClientRect().height,
          wide: sheet.scrollWidth - sheet.clientWidth,
          small: [...sheet.querySelectorAll<HTMLElement>("p,td,th,b,span,h1,h2,h3")].filter(
            (one) => Number.parseFloat(getComputedStyle(one).fontSize) < 13.99,
          ).length,
        })),
      );
      expect(laid.length).toBeGreaterThan(25);
      expect(laid.filter(({ tall }) => tall > INSIDE_px[paper].height).map(({ about }) => about)).toEqual([]);
      expect(laid.filter(({ wide, small }) => wide > 0 || small > 0)).toEqual([]);
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
      expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(laid.length);
    },
  );
});

it("labels show all of their words, at least 9 mm tall where they are to be read from two metres", async () => {
  await page.setViewportSize(INSIDE_px.A4);
  await page.setContent(tripBook(plannedForecast(), options("A4")));
  await page.emulateMedia({ media: "print" });
  const labels = await page.$$eval(".label", (found) =>
    found.map((label) => ({
      over: label.scrollHeight - label.clientHeight,
      sizes: [...label.querySelectorAll<HTMLElement>(".number,.name,.ban,.kind,.tape")].map((one) =>
        Number.parseFloat(getComputedStyle(one).fontSize),
      ),
    })),
  );
  expect(labels).toHaveLength(8);
  expect(labels.filter(({ over }) => over > 1)).toEqual([]);
  // 27 pt, 36 px: the letters of a line are 9.5 mm from top to foot.
  expect(Math.min(...labels.flatMap(({ sizes }) => sizes))).toBeGreaterThanOrEqual(35.9);
});

it("fits a phone without scrolling sideways", async () => {
  await page.emulateMedia({ media: "screen" });
  await page.setViewportSize({ width: 360, height: 740 });
  await page.setContent(tripBook(plannedForecast({ namesEnd }), options("A4")));
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over).toBeLessThanOrEqual(0);
});
