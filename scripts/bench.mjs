/** `npm run bench`: builds, then times what a person waits for. `npm run bench -- NAME` runs one file of `bench/`. */
import { readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { build, install, node, root, say } from "./steps.mjs";

function bench(wanted) {
  const status = install() || build(["bench"]);
  if (status !== 0) return status;
  const names = readdirSync(join(root, "bench"))
    .filter((file) => file.endsWith(".ts"))
    .map((file) => basename(file, ".ts"))
    .filter((name) => wanted.length === 0 || wanted.includes(name));
  if (names.length === 0) say("No bench of that name.");
  return names.reduce(
    (worst, name) => node([join(root, "dist/bench", `${name}.js`)]) || worst,
    names.length ? 0 : 2,
  );
}

process.exitCode = bench(process.argv.slice(2));
