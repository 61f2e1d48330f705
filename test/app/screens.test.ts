/** What holds of every screen that `npm run screens` photographs. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launchBrowser } from "../../scripts/browser.mjs";
import { begin, duringTrip_ms, looks, putOn, screens } from "../../scripts/screenList.mjs";
import { AppPages } from "./appPages.ts";

const app = new AppPages();
let browser: Browser;
let page: Page;
/** Counts pixels; the app's own page may load no picture from elsewhere. */
let bench: Page;

beforeAll(async () => {
  await app.serve();
  browser = await launchBrowser();
  page = await app.page(await app.device(browser));
  await page.clock.setFixedTime(duringTrip_ms);
  await begin(page, app.address);
  bench = await browser.newPage();
}, 240_000);

afterAll(async () => {
  await app.afterEach();
  await browser.close();
  await app.end();
});

/** Pixels of a photograph that light green or blue, with one of them. */
async function notRed(photograph: Buffer): Promise<{ pixels: number; first: string | null }> {
  return bench.evaluate(async (encoded) => {
    const image = new Image();
    image.src = `data:image/png;base64,${encoded}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext("2d")!;
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    let [pixels, first] = [0, null as string | null];
    for (let i = 0; i < data.length; i += 4) {
      if (data[i + 1] === 0 && data[i + 2] === 0) continue;
      pixels++;
      const at = i / 4;
      first ??= `${data.slice(i, i + 3).join(" ")} at ${at % image.width}, ${Math.floor(at / image.width)}`;
    }
    return { pixels, first };
  }, photograph.toString("base64"));
}

it.each(screens)(
  "$name lights nothing but red at night, has no finding of the accessibility rules in any look, and never scrolls sideways",
  async ({ reach, leave }) => {
    await reach(page);
    const faults: string[] = [];
    for (const look of looks) {
      await putOn(page, look);
      const { violations } = await new AxeBuilder({ page }).analyze();
      faults.push(...violations.map(({ id, nodes }) => `${look} ${id}: ${nodes[0]?.html}`));
    }
    const { pixels, first } = await notRed(await page.screenshot({ fullPage: leave === undefined }));
    if (pixels > 0) faults.push(`${pixels} pixels not red at night: ${first}`);
    await putOn(page, "day");
    for (const width of [320, 360, 768, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      const over = await page.evaluate(() => document.scrollingElement!.scrollWidth - innerWidth);
      if (over > 0) faults.push(`scrolls ${over} px sideways at ${width}`);
    }
    await page.setViewportSize({ width: 360, height: 740 });
    await leave?.(page);
    expect(faults).toEqual([]);
  },
  180_000,
);

it("lights nothing but red from the first moment of a night page, and in its first place", async () => {
  const fresh = await app.page(await app.device(browser));
  await fresh.goto(app.address);
  await fresh.evaluate(() => localStorage.setItem("look", "night"));
  const shots: Buffer[] = [];
  await fresh.reload({ waitUntil: "commit" });
  for (let i = 0; i < 5; i++) {
    // While the old page gives way to the new one there may be nothing to photograph.
    const shot = await fresh.screenshot().catch(() => null);
    if (shot !== null) shots.push(shot);
  }
  await fresh.locator("h1").first().waitFor();
  shots.push(await fresh.screenshot({ fullPage: true }));
  for (const shot of shots) expect((await notRed(shot)).first).toBeNull();
}, 60_000);
