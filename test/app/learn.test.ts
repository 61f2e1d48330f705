/** Home again: what was left is tapped in, outlasts a closed page, and teaches what the command line says it teaches. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";
import { AppPages } from "./appPages.ts";

const command = join(import.meta.dirname, "../../dist/cli/coldstow.js");
const folder = mkdtempSync(join(tmpdir(), "coldstow-learn-"));
const pages = new AppPages();
const patient = { timeout: 120_000 };
let browser: Browser;

beforeAll(async () => {
  await pages.serve();
  browser = await launchBrowser();
});
afterEach(() => pages.afterEach());
afterAll(async () => {
  await browser.close();
  await pages.end();
  rmSync(folder, { recursive: true, force: true });
});

const tap = (page: Page, name: string | RegExp): Promise<void> => page.getByRole("button", { name }).click();

async function saved(page: Page, name: string | RegExp, as: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), tap(page, name)]);
  const path = join(folder, as);
  writeFileSync(path, readFileSync(await download.path()));
  return path;
}

interface Printed {
  coolers: {
    name: string;
    learned_W_per_K: Record<string, number> | null;
    next_W_per_K: Record<string, number> | null;
  }[];
}

/** Width of what is believed of a cooler's conductance before and after its history, as ratios. */
function widths(trip: string, cooler: string): { before: number; now: number } {
  const args = ["forecast", trip, "--json", "--quiet", "--members", "0"];
  // It ends with 1 where food is at risk, which is not what is asked here.
  const { stdout } = spawnSync(process.execPath, [command, ...args], { encoding: "utf8" });
  const { coolers } = JSON.parse(stdout) as {
    coolers: {
      name: string;
      history: Record<"before_W_per_K" | "now_W_per_K", { p10: number; p90: number }>;
    }[];
  };
  const { before_W_per_K: was, now_W_per_K: is } = coolers.find(({ name }) => name === cooler)!.history;
  return { before: was.p90 / was.p10, now: is.p90 / is.p10 };
}

it("learns from taps after the return what the command line learns from the saved file", async () => {
  const page = await pages.begun(await pages.device(browser), "family");
  await page.getByRole("button", { name: "Plan it" }).first().click();
  await page.getByText(/From 256 runs/).waitFor(patient);
  await tap(page, "Share");
  const trip = await saved(page, "Save the planned trip", "trip.yaml");

  await page.clock.setFixedTime(Date.parse("2029-01-01T12:00Z"));
  await page.goto("about:blank");
  await page.goto(pages.address);
  await page.getByRole("heading", { level: 1, name: /^What was left of/ }).waitFor(patient);
  const slush = page.getByRole("button", { name: /: slush$/ }).first();
  await slush.click();
  await page.getByLabel("What went wrong, in a line").fill("The lid stood open");
  await page.getByLabel("What went wrong, in a line").blur();
  await page.locator('.learn[data-kept="true"]').waitFor();

  await page.reload();
  await page.locator('[aria-pressed="true"]').waitFor(patient);
  expect(await page.getByLabel("What went wrong, in a line").inputValue()).toBe("The lid stood open");
  await tap(page, "Take the last change back");
  expect(await page.getByLabel("What went wrong, in a line").inputValue()).toBe("");

  await page.context().setOffline(true);
  await tap(page, "What did it teach?");
  await page.getByRole("heading", { name: "What it taught" }).waitFor(patient);
  const seen = await saved(page, "Save this close-out", "seen.yaml");
  const args = ["closeout", trip, seen, "--json", "--quiet", "--out", join(folder, "out")];
  const printed = JSON.parse(execFileSync(process.execPath, [command, ...args]).toString()) as Printed;
  const learned = printed.coolers.filter(({ learned_W_per_K }) => learned_W_per_K !== null);
  expect(learned.length).toBeGreaterThan(0);
  const offers = page.getByRole("button", { name: /^Save the history of/ });
  expect(await offers.count()).toBe(learned.length);
  for (const { name } of learned) {
    const kept = await saved(page, `Save the history of ${name}`, "history.yaml");
    const slug = name.toLowerCase().replace(/[^a-z0-9]+/g, "-");
    const written = readFileSync(join(folder, "out", `${slug}.history.yaml`), "utf8");
    expect(readFileSync(kept, "utf8")).toBe(written);
  }
  // Kept, offered at the cooler of that name, and the next forecast begins with it.
  const { name } = learned[0]!;
  await tap(page, `Keep it for the next trip with ${name}`);
  await page.getByRole("button", { name: `Kept for the next trip with ${name}` }).waitFor();
  await page.reload();
  await page.evaluate(() => {
    location.hash = "#/describe";
  });
  await tap(page, `Use it for ${name}`);
  await page.getByRole("button", { name: `Use it for ${name}` }).waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Plan it" }).first().click();
  await page.getByText(/From 256 runs/).waitFor(patient);
  await tap(page, "Share");
  const next = await saved(page, "Save the planned trip", "next.yaml");
  await page.keyboard.press("Escape");
  const { before, now } = widths(next, name);
  expect(now).toBeLessThan(0.99 * before);
  await page.evaluate(() => {
    location.hash = "#/learn";
  });
  await page.getByRole("heading", { level: 1, name: /^What was left of/ }).waitFor(patient);
  for (const width of [360, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    if (process.env.SHOTS)
      await page.screenshot({ path: `${process.env.SHOTS}/learn-${width}.png`, fullPage: true });
  }
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
}, 300_000);

it("learns a cooler from ice weighed at home as the command line does, and offers it at the cooler", async () => {
  const page = await pages.begun(await pages.device(browser), "family");
  await page.evaluate(() => {
    location.hash = "#/learn";
  });
  await page.getByText("Test a cooler at home").click();
  await page.getByLabel("Ice put in").fill("20 lb");
  await page.getByLabel("Room").fill("75 F");
  await page.getByLabel("Room").blur();
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.context().setOffline(true);
  await tap(page, "How is it run?");
  await page.getByText(/^1\. Let the empty cooler/m).waitFor(patient);
  await page.getByLabel("Hours since").first().fill("24");
  await page.getByLabel("Ice left").first().fill("6 kg");
  await page.getByLabel("Ice left").first().blur();
  await tap(page, "What does it tell?");
  await page.getByText(/Weighing 1, hours must be/).waitFor();
  await page.getByLabel("Hours since").first().fill("24 h");
  await page.getByLabel("Ice left").first().fill("10 lb");
  await page.getByLabel("Ice left").first().blur();
  await page.getByLabel("Hours since").nth(1).fill("36 h");
  await page.getByLabel("Ice left").nth(1).fill("5.4 lb");
  await page.getByLabel("Ice left").nth(1).blur();

  await page.reload();
  await page.getByText("Test a cooler at home").click();
  expect(await page.getByLabel("Ice left").first().inputValue()).toBe("10 lb");
  await tap(page, "What does it tell?");
  await page
    .getByText(/melts [\d.]+ lb/)
    .first()
    .waitFor(patient);
  const test = await saved(page, "Save this test", "test.yaml");
  const printed = execFileSync(process.execPath, [command, "icetest", test, "--units", "us"]).toString();
  const [sentence] = /melts [\d.]+ lb \([\d.]+ to [\d.]+\) of ice a day/.exec(printed.replace(/\s+/g, " "))!;
  await page.getByText(sentence).first().waitFor();
  for (const width of [360, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    if (process.env.SHOTS)
      await page.screenshot({ path: `${process.env.SHOTS}/icetest-${width}.png`, fullPage: true });
  }
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  await tap(page, /^Keep it for the next trip with/);
  await page.getByRole("button", { name: /^Kept for the next trip with/ }).waitFor();
  await page.evaluate(() => {
    location.hash = "#/describe";
  });
  await tap(page, /^Use it for /);
  await page.getByRole("button", { name: /^Use it for / }).waitFor({ state: "detached" });
  await tap(page, "Share");
  const trip = readFileSync(await saved(page, "Save the trip file", "next.yaml"), "utf8");
  expect(trip).toMatch(/from: ice test/);
}, 300_000);
