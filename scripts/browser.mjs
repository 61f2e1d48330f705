/**
 * A browser for the picture tool and for the tests in a real page. On Linux x64 it comes out of an npm package, so a bare
 * machine needs nothing else; elsewhere the Chrome that is installed is used.
 */
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { root } from "./steps.mjs";

const kept = join(root, ".cache/chromium");

/** Starts the browser with further switches of its own; whoever calls closes it. */
export async function launchBrowser(switches = []) {
  if (process.platform !== "linux" || process.arch !== "x64")
    return chromium.launch({ channel: "chrome", args: switches });
  if (!existsSync(kept)) await unpack();
  return chromium.launch({
    executablePath: join(kept, "chromium"),
    args: ["--no-sandbox", ...switches],
    env: {
      ...process.env,
      FONTCONFIG_PATH: join(kept, "fonts"),
      LD_LIBRARY_PATH: [join(kept, "al2023/lib"), process.env.LD_LIBRARY_PATH].filter(Boolean).join(":"),
    },
  });
}

/**
 * Unpacks beside the final place and renames when all of it is there, so that two processes at once cannot meet a half
 * one. The package unpacks into the folder for temporary files, and its own libraries only where it believes to run on
 * the service it is made for; both are told through the environment, which is put back afterwards.
 */
async function unpack() {
  mkdirSync(join(root, ".cache"), { recursive: true });
  const fresh = mkdtempSync(`${kept}-`);
  const before = { ...process.env };
  process.env.TMPDIR = fresh;
  process.env.AWS_LAMBDA_JS_RUNTIME = "nodejs20.x";
  try {
    const { default: packed } = await import("@sparticuz/chromium");
    await packed.executablePath();
  } finally {
    for (const name of ["TMPDIR", "AWS_LAMBDA_JS_RUNTIME", "FONTCONFIG_PATH", "LD_LIBRARY_PATH", "HOME"]) {
      if (before[name] === undefined) delete process.env[name];
      else process.env[name] = before[name];
    }
  }
  // The package's own list of font folders names places of that service; these are its fonts, wherever this folder lies.
  writeFileSync(
    join(fresh, "fonts/fonts.conf"),
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir prefix="relative">fonts</dir></fontconfig>
`,
  );
  try {
    renameSync(fresh, kept);
  } catch (error) {
    // Another process was faster; what it unpacked is as good.
    rmSync(fresh, { recursive: true, force: true });
    if (!existsSync(kept)) throw error;
  }
}
