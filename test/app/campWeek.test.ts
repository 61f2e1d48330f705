/** A week of the desert example on two phones: what is logged by taps changes what is told as the command line tells it. */
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Download, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";

const command = join(import.meta.dirname, "../../dist/cli/coldstow.js");
const folder = mkdtempSync(join(tmpdir(), "coldstow-week-"));

let server: ChildProcess;
let address = "";
let browser: Browser;
const faults: string[] = [];

beforeAll(async () => {
  server = spawn(process.execPath, [command, "serve", "--port", "0", "--quiet"]);
  address = await new Promise((resolve) => {
    server.stdout!.once("data", (line: Buffer) => resolve(line.toString().trim()));
  });
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  server.kill();
  rmSync(folder, { recursive: true, force: true });
});

const patient = { timeout: 120_000 };

/** A local moment of the trip's place, six hours behind Greenwich. */
const at_ms = (day: number, clock: string): number => Date.parse(`2027-06-${9 + day}T${clock}:00-06:00`);

const tap = (page: Page, name: string): Promise<void> =>
  page.getByRole("button", { name, exact: true }).click();

async function saved(page: Page, name: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), tap(page, name)]);
  return readFileSync(await (download as Download).path(), "utf8");
}

type Kept = Awaited<ReturnType<BrowserContext["storageState"]>>;

async function opened(storageState?: Kept): Promise<{ page: Page; context: BrowserContext }> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    acceptDownloads: true,
    ...(storageState && { storageState }),
  });
  const page = await context.newPage();
  page.on("pageerror", ({ message }) => faults.push(message));
  await page.clock.setFixedTime(at_ms(1, "06:00"));
  await page.goto(address);
  return { page, context };
}

/** What a device keeps that has planned the trip in full, and the planned file. */
async function planned(): Promise<{ kept: Kept; file: string }> {
  const { page, context } = await opened();
  await page.getByRole("radio", { name: /^river/ }).check();
  await tap(page, "Begin");
  await page.getByRole("button", { name: "Plan it" }).first().click();
  await page.getByText(/From 256 runs/).waitFor(patient);
  await tap(page, "Share");
  const file = await saved(page, "Save the planned trip");
  const kept = await context.storageState({ indexedDB: true });
  await context.close();
  return { kept, file };
}

/** A phone in Camp that the planned trip was carried to. */
async function phone(kept: Kept): Promise<{ page: Page; context: BrowserContext }> {
  const { page, context } = await opened(kept);
  await page.goto(`${address}#/camp`);
  await page.getByRole("heading", { level: 1, name: /^Day 1/ }).waitFor(patient);
  await page.locator('.camp[data-reckoning="false"]').waitFor(patient);
  return { page, context };
}

/** Goes to the log card from wherever the phone is. */
async function toLog(page: Page): Promise<void> {
  const next = page.getByRole("button", { name: /^(Log ice|Next cooler)$/ });
  await next.click();
  await page.getByRole("heading", { name: "Which cooler?" }).waitFor(patient);
}

/** Logs by taps and waits for the full answer. */
async function log(page: Page, when_ms: number, taps: readonly string[]): Promise<void> {
  await page.clock.setFixedTime(when_ms);
  await toLog(page);
  for (const name of [...taps, "Done"]) await tap(page, name);
  await page.getByText("The one thing now").waitFor(patient);
  await page.locator('.camp[data-reckoning="false"][data-kept="true"]').waitFor(patient);
}

interface KeptAnswer {
  answer: {
    told: Told[];
    eat: { name: string; verdict: string }[];
    now: string;
    coolers: { picture: string }[];
  };
}
interface Told {
  cooler: string;
  iceOut_h: Record<"p10" | "p50" | "p90", number | null>;
}

/** The answer that the phone keeps. */
async function keptAnswer(page: Page): Promise<KeptAnswer["answer"]> {
  const text = await page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const open = indexedDB.open("coldstow");
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const store = open.result.transaction("settings").objectStore("settings");
          const keys = store.getAllKeys();
          keys.onsuccess = () => {
            const key = keys.result.find((one) => String(one).startsWith("camp answer "))!;
            const value = store.get(key);
            value.onsuccess = () => resolve(value.result as string);
          };
        };
      }),
  );
  return (JSON.parse(text) as KeptAnswer).answer;
}

async function toExchange(page: Page): Promise<void> {
  if ((await page.getByRole("button", { name: "Today", exact: true }).count()) > 0) await tap(page, "Today");
  await tap(page, "More");
  await tap(page, "Other phones and files");
}

async function logFileOf(page: Page, name: string): Promise<string> {
  await toExchange(page);
  const path = join(folder, name);
  writeFileSync(path, await saved(page, "Save this log as a file"));
  return path;
}

async function joined(page: Page, path: string): Promise<void> {
  await toExchange(page);
  await page.getByLabel("Open another phone's log").setInputFiles(path);
  await tap(page, "Join them");
  await page.getByText(/entries joined/).waitFor(patient);
  await page.locator('.camp[data-reckoning="false"]').waitFor(patient);
}

const width_h = ({ p10, p90 }: Told["iceOut_h"], length_h: number): number =>
  (p90 ?? length_h) - (p10 ?? length_h);

it("narrows on both phones as the command line has it, and a supposed night changes nothing that is kept", async () => {
  const { kept, file } = await planned();
  const ana = await phone(kept);
  const ben = await phone(kept);
  const first = await keptAnswer(ana.page);

  await log(ana.page, at_ms(1, "19:00"), ["galley", "full", "No"]);
  await log(ana.page, at_ms(1, "19:02"), ["bar", "½", "No"]);
  await log(ben.page, at_ms(2, "07:00"), ["galley", "full", "No"]);
  await log(ben.page, at_ms(2, "07:05"), ["bar", "¼", "No"]);
  await log(ana.page, at_ms(2, "19:00"), ["galley", "¾", "No"]);
  await log(ben.page, at_ms(3, "07:00"), ["galley", "¾", "No"]);
  await log(ben.page, at_ms(3, "07:05"), ["bar", "water", "No"]);
  await log(ben.page, at_ms(3, "07:06"), ["bar", "Something else", "Water let out", "3 gal"]);
  await log(ana.page, at_ms(3, "19:00"), ["galley", "½", "No"]);

  const now_ms = at_ms(4, "07:00");
  for (const { page } of [ana, ben]) await page.clock.setFixedTime(now_ms);
  const [fromAna, fromBen] = [await logFileOf(ana.page, "ana.yaml"), await logFileOf(ben.page, "ben.yaml")];
  await joined(ana.page, fromBen);
  await joined(ben.page, fromAna);
  const [hers, his] = [await keptAnswer(ana.page), await keptAnswer(ben.page)];
  expect(his.told).toEqual(hers.told);
  expect(his.eat).toEqual(hers.eat);

  const trip = join(folder, "trip.yaml");
  writeFileSync(trip, file);
  const printed = spawnedCamp([trip, fromAna, fromBen, "--now", "2027-06-13T07:00", "--json", "--quiet"]);
  const { learned, eatOrder, now, others } = printed.camp;
  for (const { cooler, iceOut_h } of learned) {
    const told = hers.told.find((one) => one.cooler === cooler)!.iceOut_h;
    for (const p of ["p10", "p50", "p90"] as const) {
      if (iceOut_h[p] === null) expect(told[p]).toBeNull();
      else expect(told[p]! / iceOut_h[p]!).toBeCloseTo(1, 9);
    }
  }
  expect(hers.eat.map(({ name, verdict }) => [name, verdict])).toEqual(
    eatOrder.map(({ name, verdict }) => [name, verdict]),
  );
  const act = now ?? others[0];
  expect(act === undefined || hers.now.includes(act.does)).toBe(true);

  const length_h = printed.trip.hours;
  const [wide, narrow] = [first, hers].map(({ told }) =>
    told.reduce((sum, { iceOut_h }) => sum + width_h(iceOut_h, length_h), 0),
  ) as [number, number];
  expect(narrow).toBeLessThan(0.75 * wide);
  // A ring on the picture for every look.
  const rings = hers.coolers.map(({ picture }) => picture.match(/r="6.5"/g)!.length);
  expect(rings).toEqual([5, 4]);

  await supposedNight(ana.page);
  expect((await keptAnswer(ana.page)).told).toEqual(hers.told);
  for (const { context } of [ana, ben]) await context.close();
  expect(faults).toEqual([]);
}, 400_000);

interface Printed {
  trip: { hours: number };
  camp: {
    learned: Told[];
    eatOrder: { name: string; verdict: string }[];
    now: { does: string } | null;
    others: { does: string }[];
  };
}

/** Bad news is a status of its own, and no fault. */
function spawnedCamp(args: readonly string[]): Printed {
  try {
    return JSON.parse(execFileSync(process.execPath, [command, "camp", ...args]).toString()) as Printed;
  } catch (error) {
    const { status, stdout } = error as { status: number; stdout: Buffer };
    expect(status).toBe(1);
    return JSON.parse(stdout.toString()) as Printed;
  }
}

async function supposedNight(page: Page): Promise<void> {
  for (const name of ["Today", "More", "What if plans change?", "A night more, or fewer", "A night more"])
    await tap(page, name);
  await page.getByRole("heading", { name: /^What if: The trip: home at/ }).waitFor();
  await tap(page, "What would it change?");
  await page.getByText("The one thing now").waitFor(patient);
  await tap(page, "It did not happen");
  await page.getByRole("button", { name: "Log ice" }).waitFor(patient);
  await tap(page, "More");
  await tap(page, "What was logged");
  expect(await page.locator(".camp section li").filter({ hasText: "home at" }).count()).toBe(0);
}
