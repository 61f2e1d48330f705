/** The camp log as people use it: gloves, killed phones, two phones on one trip, a browser that keeps nothing. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";

const command = join(import.meta.dirname, "../../dist/cli/coldstow.js");
const folder = mkdtempSync(join(tmpdir(), "coldstow-camp-"));
/** 7:05 in the morning of the second day of the family template, in New York. */
const MORNING_ms = Date.parse("2027-07-17T11:05:00Z");
const HOUR_ms = 3_600_000;

let server: ChildProcess;
let address = "";
let browser: Browser;
let contexts: BrowserContext[] = [];
let faults: string[] = [];

beforeAll(async () => {
  server = spawn(process.execPath, [command, "serve", "--port", "0", "--quiet"]);
  address = await new Promise((resolve, reject) => {
    server.stdout!.once("data", (line: Buffer) => resolve(line.toString().trim()));
    server.stderr!.on("data", (line: Buffer) => reject(new Error(line.toString())));
  });
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await new Promise((resolve) => {
    server.once("exit", resolve);
    server.kill();
  });
  rmSync(folder, { recursive: true, force: true });
});

beforeEach(() => {
  faults = [];
});

afterEach(async () => {
  for (const context of contexts) await context.close();
  contexts = [];
  expect(faults).toEqual([]);
});

async function opened(context: BrowserContext, now_ms = MORNING_ms): Promise<Page> {
  const page = await context.newPage();
  page.on("pageerror", ({ message }) => faults.push(message));
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !/^(blob|data):/.test(request.url()))
      faults.push(`asks for ${request.url()}`);
  });
  await page.clock.setFixedTime(now_ms);
  return page;
}

/** A phone of its own with the family trip, in its Camp place. */
async function phone(
  prepare: (page: Page) => Promise<void> = async () => {},
  begins: RegExp = /^Day /,
): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 360, height: 640 }, acceptDownloads: true });
  contexts.push(context);
  const page = await opened(context);
  await prepare(page);
  await page.goto(address);
  await page.getByRole("radio", { name: /^family/ }).check();
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.getByRole("button", { name: "Plan it" }).waitFor();
  await toCamp(page, begins);
  return page;
}

async function toCamp(page: Page, begins: RegExp = /^Day /): Promise<void> {
  await page.goto(`${address}#/camp`);
  await page.getByRole("heading", { level: 1, name: begins }).waitFor();
}

const tap = (page: Page, name: string): Promise<void> =>
  page.getByRole("button", { name, exact: true }).click();

/** The page shows a tap at once; only what the device has confirmed can be asked back after a kill. */
const kept = (page: Page): Promise<void> => page.locator('.camp[data-kept="true"]').waitFor();

async function logIce(page: Page, cooler: string, level: string, drained: "Yes" | "No"): Promise<void> {
  for (const name of [cooler, level, drained, "Done"]) await tap(page, name);
  await page.getByRole("button", { name: "Next cooler" }).waitFor();
}

async function listed(page: Page): Promise<string[]> {
  const today = page.getByRole("button", { name: "Today", exact: true });
  if ((await today.count()) > 0) await today.click();
  await tap(page, "More");
  await tap(page, "What was logged");
  await page.locator("#logged-head").waitFor();
  const rows = await page.locator(".camp section li").allTextContents();
  await tap(page, "Today");
  return rows.map((row) => row.replace(/\s+/g, " ").trim());
}

describe("logging with gloves", () => {
  it("takes four taps from the cooler to the entry, on targets of 94 px, and undo takes it back", async () => {
    const page = await phone();
    await tap(page, "Log ice");
    const small = (): Promise<string[]> =>
      page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>(".camp button, .camp label")]
          .filter((one) => one.offsetWidth < 94 || one.offsetHeight < 94)
          .map((one) => one.textContent ?? ""),
      );
    expect(await small()).toEqual([]);
    expect(await page.locator(".camp input, .camp textarea").count()).toBe(0);
    let taps = 0;
    for (const name of ["chest", "½", "Yes", "Done"]) {
      await tap(page, name);
      taps++;
      expect(await small(), name).toEqual([]);
    }
    await page.getByRole("button", { name: "Next cooler" }).waitFor();
    expect(taps).toBeLessThanOrEqual(4);
    expect(await listed(page)).toEqual([
      "Day 2, 7:05 am: chest water let out",
      "Day 2, 7:05 am: chest ice at ½",
    ]);
    await page.getByRole("button", { name: "Undo chest ice at ½, chest water let out" }).click();
    await page.locator(".camp .foot button:disabled").waitFor();
    const rows = await listed(page);
    expect(rows).toHaveLength(2);
    expect(rows.every((row) => row.endsWith("taken back"))).toBe(true);
  }, 120_000);

  it("reads a thermometer without a keyboard, and shifts what was earlier by hours", async () => {
    const page = await phone();
    for (const name of ["Log ice", "chest", "Something else", "Thermometer", "Air under the lid"])
      await tap(page, name);
    expect(await page.locator(".value").textContent()).toBe("40 °F");
    expect(await page.locator(".value").evaluate((one) => getComputedStyle(one).fontSize)).toBe("56px");
    for (const name of [
      "More",
      "More",
      "More",
      "Less",
      "It is 42 °F",
      "It was earlier",
      "It was earlier",
      "Done",
    ])
      await tap(page, name);
    await page.getByRole("button", { name: "Next cooler" }).waitFor();
    expect(await listed(page)).toEqual(["Day 2, 5:05 am: chest 42 °F in the air under the lid"]);
  }, 120_000);

  it.each([
    [["Ice added", "10 lb cube", "More", "It is 2"], "ice added: 2 × 10 lb cube"],
    [["Stood open", "10 min"], "stood open for 10 min"],
    [["Taken out", "milk", "Half"], "50 % of milk taken out"],
    [["Put in", "Fish", "It is 2 lb", "As the air"], "fish, day 2 put in, 2 lb"],
    [["Moved", "truck bed"], "moved: truck bed"],
    [["Swamped"], "swamped: water came in from outside"],
  ])(
    "logs %s",
    async (taps, says) => {
      const page = await phone();
      for (const name of ["Log ice", "chest", "Something else", ...taps, "Done"]) await tap(page, name);
      await page.getByRole("button", { name: "Next cooler" }).waitFor();
      expect(await listed(page)).toEqual([`Day 2, 7:05 am: chest ${says}`]);
    },
    120_000,
  );
});

describe("a phone that dies", () => {
  it("in the middle of an entry goes on where it was, with no half entry and none lost", async () => {
    let page = await phone();
    await tap(page, "Log ice");
    await logIce(page, "drinks bag", "slush", "No");
    for (const name of ["Next cooler", "chest", "½"]) await tap(page, name);
    await page.getByRole("button", { name: "Yes", exact: true }).waitFor();
    await kept(page);
    const context = contexts[0]!;
    await page.close();
    page = await opened(context, MORNING_ms + 60_000);
    await toCamp(page);
    await page.getByRole("heading", { name: "chest: water let out?" }).waitFor();
    for (const name of ["No", "Done"]) await tap(page, name);
    await page.getByRole("button", { name: "Next cooler" }).waitFor();
    expect(await listed(page)).toEqual([
      "Day 2, 7:06 am: chest ice at ½",
      "Day 2, 7:05 am: drinks bag slush, no solid ice",
    ]);
  }, 120_000);

  it("opens at Camp while the trip goes on, and asks for the day once where the clock jumped", async () => {
    let page = await phone();
    await tap(page, "Log ice");
    await logIce(page, "chest", "full", "No");
    const context = contexts[0]!;
    await page.close();
    page = await opened(context, MORNING_ms - 20 * HOUR_ms);
    await toCamp(page);
    await page.getByRole("heading", { name: "The clock jumped. Which day is it?" }).waitFor();
    await tap(page, "Day 3");
    await page.getByRole("heading", { level: 1, name: /^Day 3/ }).waitFor();
    await kept(page);
    await page.close();
    page = await opened(context, MORNING_ms - 19 * HOUR_ms);
    await page.goto(address);
    await page.getByRole("heading", { level: 1, name: /^Day 3/ }).waitFor();
    expect(page.url()).toMatch(/#\/camp$/);
    expect(await page.getByText("The clock jumped").count()).toBe(0);
  }, 120_000);
});

describe("two phones on one trip", () => {
  async function saved(page: Page, name: string): Promise<string> {
    await toExchange(page);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      tap(page, "Save this log as a file"),
    ]);
    const path = join(folder, name);
    writeFileSync(path, readFileSync(await download.path()));
    await tap(page, "Today");
    return path;
  }

  async function toExchange(page: Page): Promise<void> {
    const today = page.getByRole("button", { name: "Today", exact: true });
    if ((await today.count()) > 0) await today.click();
    await tap(page, "More");
    await tap(page, "Other phones and files");
  }

  /** Shows what would come, joins it where there is something, and returns what was said. */
  async function join_(page: Page, path: string): Promise<string> {
    await toExchange(page);
    await page.locator('.camp input[type="file"]').setInputFiles(path);
    await page.locator('.camp [role="status"]').waitFor();
    const said = (await page.locator('.camp [role="status"]').textContent()) ?? "";
    if ((await page.getByRole("button", { name: "Join them" }).count()) > 0) {
      await tap(page, "Join them");
      await page.getByText(/joined\.$/).waitFor();
    }
    return said.replace(/\s+/g, " ").trim();
  }

  it("have the same log after handing files over in both orders, and twice", async () => {
    const [one, two] = [await phone(), await phone()];
    await tap(one, "Log ice");
    await logIce(one, "chest", "¾", "No");
    await tap(two, "Log ice");
    await logIce(two, "chest", "½", "Yes");
    await tap(two, "Next cooler");
    await logIce(two, "drinks bag", "water", "No");
    const [ones, twos] = [await saved(one, "one.yaml"), await saved(two, "two.yaml")];
    expect(await join_(one, twos)).toMatch(
      /^3 entries new to this phone, 0 clashes\..*chest ice at ½, by phone/,
    );
    expect(await join_(two, ones)).toMatch(/^1 entry new to this phone/);
    expect(await join_(one, twos)).toMatch(/^Nothing new in it/);
    const bare = (rows: string[]): string[] => rows.map((row) => row.replace(/ by phone \w+$/, "")).sort();
    expect(bare(await listed(one))).toEqual(bare(await listed(two)));
    const whole = await saved(one, "whole-one.yaml");
    expect(readFileSync(whole, "utf8")).toBe(readFileSync(await saved(two, "whole-two.yaml"), "utf8"));
  }, 180_000);

  it("refuse what is no log of this trip with its place, and keep what they have", async () => {
    const page = await phone();
    await tap(page, "Log ice");
    await logIce(page, "chest", "full", "No");
    const path = join(folder, "bad.yaml");
    writeFileSync(
      path,
      "coldstow-log: 1\nentries:\n  - { id: x, at: day 2 12:00, cooler: chst, ice: full }\n",
    );
    expect(await join_(page, path)).toMatch(/line 3, entries\[0\]\.cooler must be the name of a cooler/);
    writeFileSync(
      path,
      `coldstow-log: 1\ntrip: "<img src=x onerror=document.title='owned'>"\nentries:\n  - { id: x, at: day 2 12:00, by: "<b>me</b>", cooler: chest, ice: full }\n`,
    );
    expect(await join_(page, path)).toContain("by <b>me</b>");
    expect(await page.title()).toBe("Coldstow");
    expect(await listed(page)).toHaveLength(2);
  }, 120_000);
});

describe("storage denied", () => {
  it("is said once with the file offered, and the log still works in the page", async () => {
    const page = await phone(async (fresh) => {
      await fresh.addInitScript(() => {
        Object.defineProperty(window, "indexedDB", {
          value: {
            open() {
              throw new DOMException("denied", "SecurityError");
            },
          },
        });
      });
    });
    await tap(page, "Log ice");
    await logIce(page, "chest", "¼", "No");
    expect(await page.getByText(/lives in this open page alone: the device keeps nothing/).count()).toBe(1);
    const [download] = await Promise.all([page.waitForEvent("download"), tap(page, "Save the log")]);
    expect(readFileSync(await download.path(), "utf8")).toContain("cooler: chest, ice: 1/4");
  }, 120_000);
});

describe("for everybody", () => {
  it("has no finding of the accessibility rules on any card and look, and never scrolls sideways", async () => {
    const page = await phone();
    const cards: readonly (readonly string[])[] = [
      [],
      ["Log ice"],
      ["chest"],
      ["½"],
      ["No"],
      ["Done"],
      ["Today", "More"],
      ["What to eat, what to throw away"],
      ["Today", "More", "Other phones and files"],
    ];
    for (const taps of cards) {
      for (const name of taps) await tap(page, name);
      for (const look of ["day", "sun", "night"]) {
        await page.evaluate((name) => {
          document.documentElement.dataset.look = name;
        }, look);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => `${look} ${id}: ${nodes[0]?.html}`)).toEqual([]);
      }
      for (const width of [320, 360, 1280]) {
        await page.setViewportSize({ width, height: 640 });
        const over = await page.evaluate(() => document.scrollingElement!.scrollWidth - innerWidth);
        expect(over, `${taps.join()} at ${width}`).toBeLessThanOrEqual(0);
      }
      await page.setViewportSize({ width: 360, height: 640 });
    }
  }, 240_000);

  it("rehearses before the trip, and keeps nothing of it", async () => {
    const page = await phone(async (fresh) => {
      await fresh.clock.setFixedTime(MORNING_ms - 60 * 24 * HOUR_ms);
    }, /^Not yet/);
    await page.getByRole("heading", { name: /^Camp begins Fri 16 Jul, 9 am/ }).waitFor();
    await tap(page, "Practise on day 2; nothing is kept");
    await page.getByRole("heading", { level: 1, name: /^Day 2/ }).waitFor();
    await tap(page, "Log ice");
    await logIce(page, "chest", "½", "No");
    expect(await listed(page)).toHaveLength(1);
    await tap(page, "End practice");
    await page.getByRole("heading", { name: /^Camp begins/ }).waitFor();
    await page.evaluate(() => location.reload());
    await page.getByRole("heading", { name: /^Camp begins/ }).waitFor();
    await tap(page, "Practise on day 2; nothing is kept");
    expect(await listed(page)).toEqual([]);
  }, 120_000);
});
