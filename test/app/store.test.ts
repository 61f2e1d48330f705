/** A device that keeps a trip: over versions, windows, kills, and with no room left. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";
import { AppPages } from "./appPages.ts";

const app = new AppPages();
let browser: Browser;

beforeAll(async () => {
  await app.serve();
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await app.end();
});

afterEach(() => app.afterEach());

const titled = (page: Page, title: string): Promise<void> =>
  page.getByRole("heading", { level: 1, name: new RegExp(`^${title}`) }).waitFor();

async function type(page: Page, label: string, value: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).fill(value);
  await page.getByLabel(label, { exact: true }).press("Tab");
}

const shows = (page: Page, field: string, value: string): Promise<unknown> =>
  page.waitForFunction(
    ([id, wanted]) => document.querySelector<HTMLInputElement>(`#field-${id}`)?.value === wanted,
    [field, value] as const,
  );

/** What the device has of a trip, asked of the base itself. */
const keptText = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const asked = indexedDB.open("coldstow");
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction("trips").objectStore("trips").getAll();
          all.onsuccess = () => {
            asked.result.close();
            resolve((all.result as { text: string }[]).map(({ text }) => text).join("\n---\n"));
          };
        };
      }),
  );

const holds = async (page: Page, part: string): Promise<void> => {
  for (;;) if ((await keptText(page)).includes(part)) return;
};

async function undo(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Undo" }).click();
}

describe("a base that an older version made", () => {
  it("is carried over: the trip opens with its ticks, and can be changed and taken back", async () => {
    const context = await app.device(browser);
    const page = await app.page(context);
    // A page of the same origin that is not the app.
    await page.goto(`${app.address}icon.svg`);
    const text = [
      "coldstow: 1",
      "title: From the first version",
      "depart: 2027-07-16T08:00",
      "return: 2027-07-18T15:00",
      "party: { adults: 2 }",
      "weather: { days: [ { high: 28 C, low: 15 C } ] }",
      "coolers: [ { name: chest, size: 50 L } ]",
      "",
    ].join("\n");
    await page.evaluate(
      (trip) =>
        new Promise<void>((resolve, reject) => {
          const asked = indexedDB.open("coldstow", 1);
          asked.onerror = () => reject(asked.error);
          asked.onupgradeneeded = () => {
            asked.result.createObjectStore("trips", { keyPath: "id" }).put(trip);
            asked.result.createObjectStore("settings").put("us", "units");
          };
          asked.onsuccess = () => {
            asked.result.close();
            resolve();
          };
        }),
      { id: "old", title: "From the first version", text, ticks: ["a"], changed_ms: 5 },
    );
    await page.goto(app.address);
    await titled(page, "From the first version");
    await page.getByRole("button", { name: /^Units: pounds/ }).waitFor();
    await type(page, "Adults", "7");
    await holds(page, "adults: 7");
    await page.close();
    const later = await app.opened(context);
    await titled(later, "From the first version");
    await shows(later, "party-adults", "7");
    await undo(later);
    await shows(later, "party-adults", "2");
  }, 120_000);

  it("or a newer one is let go of, and the older window says to load anew", async () => {
    const context = await app.device(browser);
    const page = await app.begun(context, "family");
    const other = await app.page(context);
    await other.goto(`${app.address}icon.svg`);
    await other.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const asked = indexedDB.open("coldstow", 1000);
          asked.onerror = () => reject(asked.error);
          asked.onsuccess = () => resolve();
        }),
    );
    await type(page, "Adults", "4");
    await page.getByText(/A newer Coldstow keeps your trips now/).waitFor();
    await shows(page, "party-adults", "4");
  }, 120_000);
});

describe("undo", () => {
  it("outlasts a closed page, step by step, and so does redo", async () => {
    const context = await app.device(browser);
    const page = await app.begun(context, "family");
    for (const n of ["3", "4", "5"]) {
      await type(page, "Adults", n);
      await holds(page, `adults: ${n}`);
    }
    await page.close();
    const later = await app.opened(context);
    await titled(later, "Heron Hollow");
    for (const n of ["4", "3"]) {
      await undo(later);
      await shows(later, "party-adults", n);
    }
    await holds(later, "adults: 3");
    await later.close();
    const last = await app.opened(context);
    await titled(last, "Heron Hollow");
    await last.keyboard.press("Control+Shift+Z");
    await shows(last, "party-adults", "4");
    await undo(last);
    await undo(last);
    await shows(last, "party-adults", "2");
    await last.getByRole("button", { name: "Undo", disabled: true }).waitFor();
  }, 120_000);
});

describe("two windows", () => {
  async function both(context: BrowserContext): Promise<[Page, Page]> {
    const one = await app.begun(context, "family");
    await holds(one, "Heron Hollow");
    const two = await app.opened(context);
    await titled(two, "Heron Hollow");
    return [one, two];
  }

  it("show what the other changed, and take it back", async () => {
    const [one, two] = await both(await app.device(browser));
    await type(one, "Name of the trip", "Otter Landing");
    await titled(two, "Otter Landing");
    await type(two, "Adults", "6");
    await shows(one, "party-adults", "6");
    await undo(one);
    await shows(two, "party-adults", "2");
    await titled(two, "Otter Landing");
  }, 120_000);

  it("lose none of what both change at once", async () => {
    const [one, two] = await both(await app.device(browser));
    // Neither waits for the other.
    const types = async (page: Page, fields: readonly (readonly [string, string])[]): Promise<void> => {
      for (const [label, value] of fields) await type(page, label, value);
    };
    await Promise.all([
      types(one, [
        ["Adults", "7"],
        ["Name of the trip", "Otter Landing"],
        ["Breakfast at", "07:10"],
      ]),
      types(two, [
        ["Children", "8"],
        ["Dinner at", "18:40"],
        ["Lunch at", "12:50"],
      ]),
    ]);
    for (const page of [one, two]) {
      await titled(page, "Otter Landing");
      await shows(page, "party-adults", "7");
      await shows(page, "party-children", "8");
      await shows(page, "meals-breakfast", "07:10");
      await shows(page, "meals-dinner", "18:40");
      await shows(page, "meals-lunch", "12:50");
    }
    const text = await keptText(one);
    for (const part of [/adults: 7/, /children: 8/, /Otter Landing/, /07:10/, /18:40/, /12:50/])
      expect(text).toMatch(part);
  }, 120_000);
});

describe("no room left", () => {
  it("is said while it lasts; the page goes on, and once there is room all is kept, undo too", async () => {
    const context = await app.device(browser);
    const page = await app.page(context);
    // Set before the base is opened first: a browser believes for a while what it was told of the room.
    await page.goto(`${app.address}icon.svg`);
    const session = await context.newCDPSession(page);
    const origin = new URL(app.address).origin;
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
    await app.fill(page, "family");
    await page.getByText(/The device has no room left: your trip lives in this open page alone/).waitFor();
    await type(page, "Adults", "8");
    await type(page, "Children", "9");
    await shows(page, "party-children", "9");
    await shows(page, "party-adults", "8");
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    await type(page, "Adults", "5");
    await page.getByText(/no room left/).waitFor({ state: "detached" });
    await holds(page, "adults: 5");
    await page.close();
    const later = await app.opened(context);
    await shows(later, "party-adults", "5");
    await shows(later, "party-children", "9");
    await undo(later);
    await shows(later, "party-adults", "8");
  }, 120_000);
});
