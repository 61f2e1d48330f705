/** The app as a person meets it: the built page, served by the built command, in a real browser, and then without a server. */
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContext, Download, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";

const root = join(import.meta.dirname, "../..");
const command = join(root, "dist/cli/coldstow.js");
const folder = mkdtempSync(join(tmpdir(), "coldstow-page-"));

let server: ChildProcess | null = null;
let address = "";
let browser: Browser;
let context: BrowserContext;
let page: Page;

/** The port stays the same over a restart, since what a page keeps belongs to its address. */
function serve(port: number): Promise<string> {
  const started = spawn(process.execPath, [command, "serve", "--port", String(port), "--quiet"]);
  server = started;
  return new Promise((resolve, reject) => {
    started.stdout.once("data", (line: Buffer) => resolve(line.toString().trim()));
    started.stderr.on("data", (line: Buffer) => reject(new Error(line.toString())));
  });
}

async function stopServer(): Promise<void> {
  const ended = server;
  server = null;
  if (ended === null || ended.exitCode !== null) return;
  await new Promise((resolve) => {
    ended.once("exit", resolve);
    ended.kill();
  });
}

beforeAll(async () => {
  address = await serve(0);
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await stopServer();
  rmSync(folder, { recursive: true, force: true });
});

/** What a page must never do: break, or ask for anything that is not its own. */
let faults: string[] = [];

beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
  page = await context.newPage();
  faults = [];
  page.on("pageerror", ({ message }) => faults.push(message));
  page.on("request", (request) => {
    const own = request.url().startsWith(address) || /^(blob|data):/.test(request.url());
    if (!own) faults.push(`asks for ${request.url()}`);
  });
  await page.goto(address);
});

afterEach(async () => {
  await context.close();
  expect(faults).toEqual([]);
});

async function begin(template: string): Promise<void> {
  await page.getByRole("radio", { name: new RegExp(`^${template}`) }).check();
  await page.getByRole("button", { name: "Begin", exact: true }).click();
  await page.getByRole("button", { name: "Plan it" }).waitFor();
}

async function planned(): Promise<void> {
  await page.getByRole("button", { name: "Plan it" }).first().click();
  await page.getByRole("heading", { name: "Ice to get" }).waitFor({ timeout: 60_000 });
  await page.getByText(/From 256 runs/).waitFor({ timeout: 120_000 });
}

async function saved(click: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), click()]);
  return readFileSync(await (download as Download).path(), "utf8");
}

const share = (): Promise<void> => page.getByRole("button", { name: "Share" }).click();

describe("from nothing to a plan", () => {
  it("plans a template, packs it, counts it down and prints its book", async () => {
    await begin("family");
    await planned();
    await page.getByRole("link", { name: "Ready" }).click();
    const first = page.getByRole("checkbox").first();
    await first.check();
    await page.getByRole("link", { name: "Pack" }).click();
    await page.getByRole("heading", { name: "chest", exact: true }).waitFor();
    await share();
    await page.getByRole("button", { name: "Make the trip book" }).click();
    const book = page.frameLocator("iframe");
    await book.locator("section").first().waitFor();
    expect(await book.locator("section").count()).toBeGreaterThan(8);
    expect(await book.locator("script").count()).toBe(0);
  }, 180_000);

  it("plans what the command line plans, to the last byte of the file", async () => {
    await begin("family");
    await planned();
    await share();
    const text = await saved(() => page.getByRole("button", { name: "Save the planned trip" }).click());
    const out = join(folder, "cli");
    const trip = join(root, "examples/family-three-days.yaml");
    try {
      execFileSync(process.execPath, [command, "plan", trip, "--out", out, "--quiet"]);
    } catch (error) {
      // Bad news is a status of its own, and no fault.
      expect((error as { status: number }).status).toBe(1);
    }
    expect(text).toBe(readFileSync(join(out, "trip.planned.yaml"), "utf8"));
  }, 240_000);
});

describe("what was typed", () => {
  it("is kept over a kill, taken back by undo, and shown as it was typed whatever the units", async () => {
    await begin("family");
    const name = page.getByLabel("Name of the trip");
    await name.fill("Marten Bay, three days");
    await name.press("Tab");
    await page.getByRole("heading", { level: 1, name: /Marten Bay/ }).waitFor();
    await page.getByText("Coolers (2)").click();
    await page.getByText(/^chest · 52 qt/).click();
    await page.getByRole("button", { name: /^Units/ }).click();
    await page.getByRole("button", { name: /^Units/ }).click();
    expect(await page.getByLabel("Room inside").first().inputValue()).toBe("52 qt");
    await page.close();
    page = await context.newPage();
    await page.goto(address);
    await page.getByRole("heading", { level: 1, name: /Marten Bay/ }).waitFor();
    await page.getByLabel("Adults").fill("3");
    await page.getByLabel("Adults").press("Tab");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>("#field-party-adults")?.value === "2",
    );
  }, 120_000);

  it("is told with its place where it is a mistake, and nothing of it is lost", async () => {
    await begin("family");
    await page.getByText("Coolers (2)").click();
    await page.getByText(/^chest · 52 qt/).click();
    const room = page.getByLabel("Room inside").first();
    await room.fill("52 buckets");
    await room.press("Tab");
    await page
      .getByRole("alert")
      .getByText(/must be/)
      .first()
      .waitFor();
    expect(await page.getByRole("button", { name: "Plan it" }).isDisabled()).toBe(true);
    expect(await room.inputValue()).toBe("52 buckets");
    await room.fill("52 qt");
    await room.press("Tab");
    await page.waitForFunction(() => !document.querySelector<HTMLButtonElement>("button.main")?.disabled);
  }, 120_000);
});

describe("files from elsewhere", () => {
  async function open(name: string, text: string): Promise<string> {
    const path = join(folder, name);
    writeFileSync(path, text);
    const status = page.locator("dialog [role=status]");
    const before = (await status.count()) === 0 ? "" : await status.textContent();
    await page.locator('input[type="file"]').setInputFiles(path);
    await page.waitForFunction(
      (was) => was !== (document.querySelector("dialog [role=status]")?.textContent ?? ""),
      before,
    );
    return (await status.textContent()) ?? "";
  }

  it("take nothing away and run nothing, however hostile they are", async () => {
    await begin("family");
    await share();
    expect(await open("big.yaml", "a".repeat(10_000_000))).toContain("10.0 MB");
    expect(await open("list.yaml", "- 1\n")).toContain("no trip file");
    const version = await open("newer.json", JSON.stringify({ "coldstow-trips": 9, trips: [] }));
    expect(version).toContain("version 9");
    const script = `<img src=x onerror="document.title='owned'"><script>document.title='owned'</script>`;
    const trip = readFileSync(join(root, "examples/family-three-days.yaml"), "utf8")
      .replace("Heron Hollow, three days", script)
      .replaceAll("chicken thighs", script);
    expect(await open("script.yaml", trip)).toContain("open now");
    await page.getByRole("button", { name: "Close" }).click();
    await planned();
    expect(await page.title()).toBe("Coldstow");
    expect(await page.locator("main img, main script").count()).toBe(0);
    await share();
    await page.getByRole("button", { name: "Heron Hollow, three days", exact: true }).waitFor();
  }, 180_000);
});

describe("in airplane mode", () => {
  it("opens after one visit with the server gone, and plans", async () => {
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await begin("festival");
    const port = Number(new URL(address).port);
    await stopServer();
    await context.setOffline(true);
    await page.close();
    page = await context.newPage();
    await page.goto(address);
    await page.getByRole("button", { name: "Plan it" }).waitFor();
    await planned();
    await context.setOffline(false);
    await serve(port);
  }, 180_000);
});

describe("storage denied", () => {
  it("is said plainly, and the trip still works in the page", async () => {
    await page.close();
    page = await context.newPage();
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", {
        value: {
          open() {
            throw new DOMException("denied", "SecurityError");
          },
        },
      });
    });
    await page.goto(address);
    await begin("family");
    await page.getByText(/keeps nothing for this page/).waitFor();
    await page.getByRole("heading", { level: 1, name: /Heron Hollow/ }).waitFor();
  }, 120_000);
});

describe("for everybody", () => {
  const places = ["describe", "decide", "ready", "pack"];

  it("has no finding of the accessibility rules in any place and look, and never scrolls sideways", async () => {
    await begin("family");
    await planned();
    for (const look of ["day", "sun", "night"]) {
      await page.evaluate((name) => {
        document.documentElement.dataset.look = name;
      }, look);
      for (const place of places) {
        await page.goto(`${address}#/${place}`);
        await page.locator("h1").first().waitFor();
        const { violations } = await new AxeBuilder({ page }).analyze();
        const told = violations.map(({ id, nodes }) => `${look} ${place} ${id}: ${nodes[0]?.html}`);
        expect(told).toEqual([]);
        for (const width of [320, 360, 768, 1280]) {
          await page.setViewportSize({ width, height: 800 });
          const over = await page.evaluate(() => document.scrollingElement!.scrollWidth - innerWidth);
          expect(over, `${place} at ${width}`).toBeLessThanOrEqual(0);
        }
      }
    }
  }, 240_000);

  it("goes from place to place by keyboard, and not while one types", async () => {
    await begin("family");
    await page.locator("h1").click();
    await page.keyboard.press("2");
    await page.waitForURL(/#\/decide$/);
    await page.keyboard.press("1");
    await page.getByLabel("Name of the trip").focus();
    await page.keyboard.press("3");
    expect(page.url()).toMatch(/#\/describe$/);
  }, 60_000);
});
