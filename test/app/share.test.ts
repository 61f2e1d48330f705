/** A trip that travels: by link, by codes from a screen to a camera or as pictures, and what is sent in bad faith. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deflateSync } from "node:zlib";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { encodeQR } from "qr";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { codesOf } from "../../app/share/codes.ts";
import { launchBrowser } from "../../scripts/browser.mjs";
import { AppPages } from "./appPages.ts";

const folder = mkdtempSync(join(tmpdir(), "coldstow-share-"));
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

const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole("button", { name, exact: typeof name === "string" }).click();

/** The link of the trip that is open. */
async function linkOf(page: Page): Promise<string> {
  await press(page, "Share");
  await press(page, "Send: link or codes");
  const link = await page.getByLabel(/^Link/).inputValue();
  expect(link).toMatch(/#\/sent\/[\w-]{500,}$/);
  return link;
}

async function rename(page: Page, title: string): Promise<void> {
  const name = page.getByLabel("Name of the trip");
  await name.fill(title);
  await name.press("Tab");
  await page.getByRole("heading", { level: 1, name: new RegExp(title) }).waitFor();
}

const trips = async (page: Page): Promise<string[]> => {
  await press(page, "Share");
  const names = await page.locator("dialog li button.plain").allTextContents();
  await press(page, "Close");
  return names.map((one) => one.trim()).sort();
};

describe("a link", () => {
  it("puts a trip beside those of another phone, once it was looked at", async () => {
    const one = await app.begun(await app.device(browser), "family");
    const link = await linkOf(one);
    const phone = await app.device(browser);
    await app.begun(phone, "festival");
    const two = await app.opened(phone, new URL(link).hash);
    await two.getByRole("heading", { level: 1, name: "Take over Heron Hollow, three days?" }).waitFor();
    expect(await two.getByText(/a file of \d\.\d kB/).count()).toBe(1);
    const { violations } = await new AxeBuilder({ page: two }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await press(two, "Take it over");
    await two.getByRole("heading", { level: 1, name: /^Heron Hollow, three days: 3 days/ }).waitFor();
    expect(two.url()).toMatch(/#\/describe$/);
    expect(await trips(two)).toHaveLength(2);
    // The same link again finds the trip there.
    await two.goto(`${app.address}${new URL(link).hash}`);
    await two
      .getByRole("heading", { level: 1, name: "You have Heron Hollow, three days already." })
      .waitFor();
  }, 120_000);

  it("of a trip that both have shows where they differ, and each way of ending it loses nothing", async () => {
    const one = await app.begun(await app.device(browser), "family");
    const first = await linkOf(one);
    await press(one, "Close");
    await rename(one, "Heron Hollow, theirs");
    const second = await linkOf(one);
    const phone = await app.device(browser);
    const two = await app.opened(phone, new URL(first).hash);
    await press(two, "Take it over");
    await two.getByRole("button", { name: "Plan it" }).waitFor();
    const arrive = async (): Promise<void> => {
      await two.goto(`${app.address}${new URL(second).hash}`);
      await two.getByRole("heading", { level: 1, name: /differs from yours/ }).waitFor();
    };
    await arrive();
    await two.getByText("1 place differs:").waitFor();
    const row = (await two.locator("tbody tr").textContent())!.replace(/\s+/g, " ");
    expect(row).toBe("titleHeron Hollow, three daysHeron Hollow, theirs");
    await press(two, "Keep mine");
    await two.getByRole("heading", { level: 1, name: /three days: 3 days/ }).waitFor();
    await arrive();
    await press(two, "Take theirs");
    await two.getByRole("heading", { level: 1, name: /^Heron Hollow, theirs/ }).waitFor();
    await press(two, "Undo");
    await two.getByRole("heading", { level: 1, name: /^Heron Hollow, three days/ }).waitFor();
    await arrive();
    await press(two, "Keep both");
    await two.getByRole("heading", { level: 1, name: /^Heron Hollow, theirs/ }).waitFor();
    expect(await trips(two)).toEqual(["Heron Hollow, theirs", "Heron Hollow, three days"]);
  }, 120_000);

  it("in bad faith is refused in a sentence, runs nothing, and takes nothing away", async () => {
    const phone = await app.device(browser);
    const page = await app.begun(phone, "family");
    const parcel = (text: string, head: object = {}): string =>
      deflateSync(
        `${JSON.stringify({ "coldstow-parcel": 1, kind: "trip", id: "x", changed_ms: 1, ...head })}\n${text}`,
      ).toString("base64url");
    const cases: [sent: string, says: RegExp][] = [
      ["%3Cscript%3E", /damaged or was cut short/],
      ["A".repeat(5), /damaged or was cut short/],
      ["A".repeat(600_000), /longer than that of any trip/],
      [Buffer.from("\u0000\u0001rubbish").toString("base64url"), /damaged or was cut short/],
      [deflateSync(Buffer.alloc(60_000_000, "a")).toString("base64url"), /more than the 2 MB/],
      [parcel("coldstow: 1", { "coldstow-parcel": 9 }), /version 9/],
      [parcel("- a list"), /no trip/],
      [parcel("{ a: [ b"), /no trip/],
    ];
    for (const [sent, says] of cases) {
      await page.goto(`${app.address}#/sent/${sent}`);
      await page.getByRole("alert").getByText(says).waitFor();
      await press(page, "Back to my trips");
      await page.getByRole("heading", { level: 1, name: /^Heron Hollow/ }).waitFor();
    }
    const script = `<img src=x onerror="document.title='owned'"><script>document.title='owned'</script>`;
    await page.goto(`${app.address}#/sent/${parcel(JSON.stringify({ coldstow: 1, title: script }))}`);
    await page.getByRole("heading", { level: 1, name: /^Take over <img/ }).waitFor();
    expect(await page.locator("main img, main script").count()).toBe(0);
    await press(page, "Leave it");
    expect(await page.title()).toBe("Coldstow");
    expect(await trips(page)).toEqual(["Heron Hollow, three days"]);
  }, 120_000);
});

/** All codes that a page shows, one after the other, as pictures of the screen. */
async function pictured(page: Page, name: string): Promise<{ paths: string[]; texts: string[] }> {
  const shown = page.locator("figure svg");
  await shown.waitFor();
  const n = Number(/of (\d+) of/.exec((await shown.getAttribute("aria-label"))!)![1]);
  const [paths, texts]: [string[], string[]] = [[], []];
  for (let i = 1; i <= n; i++) {
    await page.getByRole("img", { name: new RegExp(`^Code ${i} of ${n}`) }).waitFor();
    texts.push((await shown.getAttribute("data-code"))!);
    const path = join(folder, `${name}-${i}.png`);
    await shown.screenshot({ path });
    paths.push(path);
    if (i < n) await press(page, "Next code");
  }
  return { paths, texts };
}

describe("codes", () => {
  it("carry a trip from a screen as pictures, in any order and more than once", async () => {
    const one = await app.begun(await app.device(browser), "family");
    await press(one, "Share");
    await press(one, "Send: link or codes");
    const { paths } = await pictured(one, "trip");
    expect(paths.length).toBeGreaterThan(2);
    const two = await app.opened(await app.device(browser));
    await press(two, "Share");
    await press(two, "Receive: read codes");
    const input = two.getByLabel("Or open pictures of the codes");
    const status = two.locator(".so-far");
    const last = paths.length;
    await input.setInputFiles([paths[last - 1]!, paths[0]!, paths[last - 1]!]);
    await status.getByText(new RegExp(`^2 of ${last} read\\. Missing: 2`)).waitFor();
    const rubbish = join(folder, "rubbish.png");
    writeFileSync(rubbish, Buffer.from([137, 80, 78, 71, 1, 2, 3]));
    await input.setInputFiles([rubbish]);
    await status.getByText(/rubbish\.png is no picture.*What was read before stays/).waitFor();
    await input.setInputFiles(paths.slice(1, -1));
    await two.getByRole("heading", { level: 1, name: "Take over Heron Hollow, three days?" }).waitFor();
    await press(two, "Take it over");
    await two.getByRole("heading", { level: 1, name: /^Heron Hollow, three days: 3 days/ }).waitFor();
  }, 120_000);

  it("are read at night too, where they are black on red", async () => {
    const one = await app.begun(await app.device(browser), "festival");
    await press(one, "Share");
    await one.getByLabel(/^Night/).check();
    await press(one, "Send: link or codes");
    const { paths } = await pictured(one, "night");
    const two = await app.opened(await app.device(browser));
    await press(two, "Share");
    await press(two, "Receive: read codes");
    await two.getByLabel("Or open pictures of the codes").setInputFiles(paths);
    await two.getByRole("heading", { level: 1, name: /^Take over/ }).waitFor();
  }, 120_000);

  it("turn by themselves only when asked, and never where motion is unwanted", async () => {
    const still = await app.begun(await app.device(browser, { reducedMotion: "reduce" }), "family");
    await press(still, "Share");
    await press(still, "Send: link or codes");
    await still.getByRole("button", { name: "Next code" }).waitFor();
    expect(await still.getByRole("button", { name: "Turn by itself" }).count()).toBe(0);
    const moving = await app.begun(await app.device(browser), "family");
    await press(moving, "Share");
    await press(moving, "Send: link or codes");
    await press(moving, "Turn by itself");
    await moving.getByText(/^Code 2 of/).waitFor();
    await press(moving, "Stop turning");
    await press(moving, "Close");
    expect(await moving.locator("figure").count()).toBe(0);
  }, 120_000);
});

/** What a camera sees, as uncompressed video: each code still for two frames, on a grey table. */
function filmed(codes: readonly string[]): Buffer {
  const [width, height] = [1280, 720];
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F5:1 Ip A1:1 C420jpeg\n`);
  const frames = codes.flatMap((code) => {
    const cells = encodeQR(code, "raw", { ecc: "low", border: 4 });
    const grey = Buffer.alloc(width * height, 150);
    const size = 6;
    const [left, top] = [200, 60];
    cells.forEach((row, y) => {
      row.forEach((isDark, x) => {
        for (let line = 0; line < size; line++) {
          const from = (top + y * size + line) * width + left + x * size;
          grey.fill(isDark ? 40 : 220, from, from + size);
        }
      });
    });
    const frame = Buffer.concat([Buffer.from("FRAME\n"), grey, Buffer.alloc((width * height) / 2, 128)]);
    return [frame, frame];
  });
  return Buffer.concat([head, ...frames]);
}

describe("a camera", () => {
  it("gathers the codes of a film that goes round and round, and is let go afterwards", async () => {
    const text = "coldstow: 1\ntitle: Filmed\n";
    const head = { "coldstow-parcel": 1, kind: "trip", id: "filmed", changed_ms: 1 };
    const noise = Array.from({ length: 1200 }, (_, i) => ((i * 7919 * i) % 9973).toString(36)).join("");
    const bytes = deflateSync(`${JSON.stringify(head)}\n${text}# ${noise}\n`);
    const codes = codesOf(bytes)!;
    expect(codes.length).toBeGreaterThan(2);
    const film = join(folder, "film.y4m");
    writeFileSync(film, filmed(codes));
    const seeing = await launchBrowser([
      "--use-fake-device-for-media-stream",
      "--use-fake-ui-for-media-stream",
      `--use-file-for-fake-video-capture=${film}`,
    ]);
    try {
      const page = await app.opened(await app.device(seeing, { permissions: ["camera"] }));
      await press(page, "Share");
      await press(page, "Receive: read codes");
      await press(page, "Read with the camera");
      await page.getByRole("heading", { level: 1, name: "Take over Filmed?" }).waitFor({ timeout: 90_000 });
      expect(await page.locator("video").count()).toBe(0);
    } finally {
      await seeing.close();
    }
  }, 180_000);

  it("that is not allowed or not there is said, and pictures still work", async () => {
    const page = await app.opened(await app.device(browser));
    await press(page, "Share");
    await press(page, "Receive: read codes");
    await press(page, "Read with the camera");
    await page.getByText(/Take a picture of each code instead/).waitFor();
  }, 60_000);
});

describe("a camp log", () => {
  /** 7:05 in the morning of the second day of the family template, in New York. */
  const MORNING_ms = Date.parse("2027-07-17T11:05:00Z");

  async function camper(): Promise<Page> {
    const page = await app.page(await app.device(browser));
    await page.clock.setFixedTime(MORNING_ms);
    await app.fill(page, "family");
    await page.goto(`${app.address}#/camp`);
    await page.getByRole("heading", { level: 1, name: /^Day / }).waitFor();
    return page;
  }

  async function exchange(page: Page): Promise<void> {
    await press(page, "More");
    await press(page, "Other phones and files");
  }

  it("goes from phone to phone as codes, is looked at first, and counts once", async () => {
    const [one, two] = [await camper(), await camper()];
    for (const name of ["Log ice", "chest", "½", "Yes", "Done"]) await press(one, name);
    await one.getByRole("button", { name: "Next cooler" }).waitFor();
    await press(one, "Today");
    await exchange(one);
    await press(one, "Show this log as codes");
    const { paths } = await pictured(one, "log");
    await exchange(two);
    for (const says of [/2 entries new to this phone/, /^Nothing new in it/]) {
      await press(two, "Read another phone's codes");
      await two.getByLabel("Or open pictures of the codes").setInputFiles(paths);
      await two.getByText(says).first().waitFor();
      const join = two.getByRole("button", { name: "Join them" });
      if ((await join.count()) === 0) continue;
      await join.click();
      await two.getByText("2 entries joined.").waitFor();
    }
  }, 120_000);
});
