import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));
const program = join(root, "dist/cli/coldstow.js");
const lock = join(root, "node_modules/.coldstow-build");
/** A build takes a fraction of this even where it is slow; an older lock was left behind by a run that was stopped. */
const staleLock_ms = 90_000;

/** Builds the program if it is not the newest; files of tests that run at once take turns. */
export function build(): void {
  for (let turn = 0; ; turn++) {
    try {
      mkdirSync(lock);
      break;
    } catch (error) {
      if (turn > 1200) throw error;
      dropStaleLock();
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
    }
  }
  try {
    const tsc = join(root, "node_modules/typescript/bin/tsc");
    const { status, stdout } = spawnSync(process.execPath, [tsc, "-b", "core", "cli"], {
      cwd: root,
      encoding: "utf8",
    });
    if (status !== 0) throw new Error(stdout);
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function dropStaleLock(): void {
  const made_ms = statSync(lock, { throwIfNoEntry: false })?.mtimeMs;
  if (made_ms === undefined || Date.now() - made_ms < staleLock_ms) return;
  rmSync(lock, { recursive: true, force: true });
}

export interface Run {
  status: number | null;
  out: string;
  err: string;
}

/**
 * Runs the built program as a person would from a shell; nothing is a terminal. What is not about members is asked for
 * without them, to save time.
 */
export function run(
  args: readonly string[],
  options: { cwd?: string; input?: string | Buffer; env?: NodeJS.ProcessEnv } = {},
): Run {
  const { cwd = root, input = "", env = {} } = options;
  const runsMembers = ["forecast", "plan"].includes(args[0] ?? "") && !args.includes("--help");
  const members = runsMembers && !args.includes("--members") ? ["--members", "0"] : [];
  const done = spawnSync(process.execPath, [program, ...args, ...members], {
    cwd,
    input,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 50_000_000,
    timeout: 50_000,
  });
  return { status: done.status, out: done.stdout, err: done.stderr };
}

/** A new folder with these files in it. */
export function folderWith(files: Readonly<Record<string, string | Buffer>>): string {
  const folder = mkdtempSync(join(tmpdir(), "coldstow-"));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

export { program };

/** One cooler, one day, ice enough to spare. */
export const fine = `coldstow: 1
title: One warm day
depart: 2027-06-18T06:30
return: 2027-06-19T06:30
party: { adults: 2, vulnerable: false }
coolers:
  - { name: galley, size: 45 qt, build: thick, start: { at: 5 C } }
food:
  - { name: chili, amount: 2 lb, like: chili, state: chilled, at: 3 C, watertight: true, eat: day 1 dinner, in: galley }
ice:
  - { form: cube, pieces: 3, each: 10 lb, at: -2 C, in: galley }
`;

/** The same with nothing cold in it. */
export const warm = fine.slice(0, fine.indexOf("ice:"));
