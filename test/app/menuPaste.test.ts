/** A menu out of a spreadsheet, pasted into the app: seen with its guesses before anything is added, and one undo. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";
import { AppPages } from "./appPages.ts";

const folder = mkdtempSync(join(tmpdir(), "coldstow-paste-"));
const app = new AppPages();
let browser: Browser;

beforeAll(async () => {
  await app.serve();
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await app.end();
  rmSync(folder, { recursive: true, force: true });
});

afterEach(() => app.afterEach());

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole("button", { name, exact: true }).click();

it("shows what it read and guessed, adds it when told to, and takes all of it out with one undo", async () => {
  const page = await app.begun(await app.device(browser), "family");
  const heading = page.getByRole("heading", { level: 2, name: /^Food and drinks/ });
  await page.evaluate(() => {
    for (const one of document.querySelectorAll("details")) one.open = true;
  });
  const before = await heading.textContent();
  await press(page, "Take in a menu from a spreadsheet");
  // As a spreadsheet copies cells: tabs between them.
  const cells = [
    ["Food", "Amount", "Unit", "Day", "Meal"],
    ["butter", "1", "lb", "", ""],
    ["moose steak", "2", "lb", "", ""],
    ["milk", "much", "", "", ""],
    [`=HYPERLINK("x")<img src=x onerror="document.title='owned'">`, "1", "lb", "", ""],
  ];
  await page.getByLabel(/^Copy the cells/).fill(cells.map((row) => row.join("\t")).join("\n"));
  await press(page, "Read it");
  await page.getByText(/^3 foods read/).waitFor();
  expect(await page.getByText(/^Line 4: amount must be/).count()).toBe(1);
  expect(await page.getByText(/^Guessed: not a food that is known/).count()).toBeGreaterThan(0);
  expect(await page.locator("main img").count()).toBe(0);
  const { violations } = await new AxeBuilder({ page }).include(".paste").analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(await heading.textContent()).toBe(before);
  await press(page, "Add 3 foods");
  const n = Number(/\((\d+)\)/.exec(before!)![1]);
  await page.getByRole("heading", { level: 2, name: `Food and drinks (${n + 3})` }).waitFor();
  await press(page, "Undo");
  await page.getByRole("heading", { level: 2, name: before!.trim(), exact: true }).waitFor();
  expect(await page.title()).toBe("Coldstow");
}, 120_000);

it("says what a file is that is no menu, and changes nothing", async () => {
  const page = await app.begun(await app.device(browser), "family");
  await page.evaluate(() => {
    for (const one of document.querySelectorAll("details")) one.open = true;
  });
  await press(page, "Take in a menu from a spreadsheet");
  for (const [name, body, says] of [
    ["photo.csv", Buffer.from([0, 1, 2, 3]), /photo\.csv is no table in text/],
    ["empty.csv", "", /it must be a heading line/],
    ["notes.csv", "hello\nworld\n", /must be a heading line with a column for the food/],
  ] as const) {
    const path = join(folder, name);
    writeFileSync(path, body);
    await page.getByLabel("Or open it as CSV").setInputFiles(path);
    await page.getByText(says).first().waitFor();
  }
  expect(await page.getByRole("button", { name: /^Add \d/ }).count()).toBe(0);
}, 120_000);
