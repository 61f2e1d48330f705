/**
 * `npm run pictures [FILE.svg …]`: draws each SVG file as a PNG beside it, at twice its size. Without names it takes every
 * SVG under out/.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { launchBrowser } from "./browser.mjs";
import { root, say } from "./steps.mjs";

function svgsUnder(folder) {
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder, { recursive: true }).map(String);
  return names
    .filter((name) => name.endsWith(".svg"))
    .sort()
    .map((name) => join(folder, name));
}

async function draw(files) {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ deviceScaleFactor: 2 });
    for (const file of files) {
      // As a page's own markup and not by its address: a picture must stand alone, so nothing may be fetched.
      await page.setContent(`<body style="margin:0;background:none">${readFileSync(file, "utf8")}</body>`);
      const png = file.replace(/\.svg$/, ".png");
      await page.locator("svg").first().screenshot({ path: png });
      say(png);
    }
  } finally {
    await browser.close();
  }
}

const named = process.argv.slice(2).map((name) => resolve(name));
const files = named.length > 0 ? named : svgsUnder(join(root, "out"));
const missing = files.filter((file) => !file.endsWith(".svg") || !existsSync(file));
if (missing.length > 0 || files.length === 0) {
  say(files.length === 0 ? "No SVG files under out/." : `Not an SVG file: ${missing.join(", ")}`);
  process.exitCode = 2;
} else {
  await draw(files);
}
