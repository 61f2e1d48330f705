/** The steps that the commands of this folder share. Plain Node: this file must run before anything is installed. */
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** What a person should see about the work itself; standard output is left to results. */
export function say(words) {
  process.stderr.write(`${words}\n`);
}

/** Colors are for a terminal; a log gets plain words. */
const plain = process.stdout.isTTY ? {} : { NO_COLOR: "1", FORCE_COLOR: undefined };

/** Runs Node on a script with the terminal passed through; gives the exit status (1 when a signal ended it). */
export function node(args, { cwd = root, env = {} } = {}) {
  const ended = spawnSync(process.execPath, args, {
    cwd,
    stdio: "inherit",
    env: { ...process.env, ...plain, ...env },
  });
  if (ended.error) say(ended.error.message);
  return ended.status ?? 1;
}

/** The program of an installed package, by its path inside node_modules. */
export function tool(path) {
  return join(root, "node_modules", path);
}

/** True when what is installed is at least as new as the lock file. npm writes the hidden lock file last. */
function isInstalled() {
  const installed = tool(".package-lock.json");
  return (
    existsSync(installed) && statSync(installed).mtimeMs >= statSync(join(root, "package-lock.json")).mtimeMs
  );
}

/** Installs what the lock file names unless it is there already; gives the exit status. The person's npm settings hold. */
export function install() {
  if (isInstalled()) return 0;
  say("Installing what the lock file names (half a minute or so, once) …");
  const args = ["ci", "--include=dev", "--loglevel=error"];
  const npm = process.env.npm_execpath;
  if (npm?.endsWith(".js")) return node([npm, ...args]);
  const windows = process.platform === "win32";
  const ended = spawnSync(windows ? "npm.cmd" : "npm", args, { cwd: root, stdio: "inherit", shell: windows });
  if (ended.error) say(`npm could not be started: ${ended.error.message}`);
  return ended.status ?? 1;
}

/** Compiles these projects, only what changed; gives the exit status. */
export function build(projects = []) {
  return node([tool("typescript/bin/tsc"), "-b", ...projects]);
}

/** Builds the app into static files, dist/page; gives the exit status. */
export function buildPage() {
  return node([
    tool("vite/bin/vite.js"),
    "build",
    "app",
    "--config",
    "app/vite.config.mjs",
    "--logLevel",
    "error",
  ]);
}
