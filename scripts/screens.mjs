/**
 * `npm run screens [NAME …]`: photographs every screen of the built app, narrow and wide, in every look, into
 * test/app/screens, for people to look at. With names, only those screens.
 */
import { spawn } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { launchBrowser } from "./browser.mjs";
import { begin, duringTrip_ms, looks, putOn, screens } from "./screenList.mjs";
import { build, buildPage, install, root, say } from "./steps.mjs";

const folder = join(root, "test/app/screens");
const sizes = [
  { width: 360, height: 740 },
  { width: 1280, height: 800 },
];

function serve() {
  const command = join(root, "dist/cli/coldstow.js");
  const server = spawn(process.execPath, [command, "serve", "--port", "0", "--quiet"]);
  const address = new Promise((resolve) => {
    server.stdout.once("data", (line) => resolve(line.toString().trim()));
  });
  return { server, address };
}

/** Tall enough for the longest of the screens that lie over others, px. */
const over_px = 1300;

/** The whole screen, in a window as high as it: what stands fast at its foot would else be drawn in the middle. */
async function photograph(page, name, isOver) {
  const { width, height } = page.viewportSize();
  const whole = isOver ? over_px : await page.evaluate(() => document.scrollingElement.scrollHeight);
  if (whole > height) await page.setViewportSize({ width, height: whole });
  for (const look of looks) {
    await putOn(page, look);
    const path = join(folder, `${name}-${width}-${look}.png`);
    await page.screenshot({ path, animations: "disabled" });
    say(path);
  }
  await putOn(page, "day");
  await page.setViewportSize({ width, height });
}

async function all(wanted) {
  mkdirSync(folder, { recursive: true });
  const { server, address } = serve();
  const browser = await launchBrowser();
  try {
    for (const viewport of sizes) {
      const context = await browser.newContext({ viewport });
      const page = await context.newPage();
      await page.clock.setFixedTime(duringTrip_ms);
      await page.goto(await address);
      await page.getByRole("radio").first().waitFor();
      if (wanted.length === 0 || wanted.includes("begin")) await photograph(page, "begin", false);
      await begin(page, await address);
      for (const { name, reach, leave } of screens) {
        if (wanted.length > 0 && !wanted.includes(name)) continue;
        await reach(page);
        await photograph(page, name, leave !== undefined);
        await leave?.(page);
      }
      await context.close();
    }
  } finally {
    await browser.close();
    server.kill();
  }
}

const status = install() || build(["core", "cli"]) || buildPage();
if (status === 0) await all(process.argv.slice(2));
process.exitCode = status;
