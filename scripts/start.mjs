/**
 * `npm start` plans the example trip; `npm start -- my-trip.yaml [flags]` plans another one.
 * Installs and builds what is missing first. Ends with the exit status of the plan.
 */
import { join } from "node:path";
import { build, install, node, root, say } from "./steps.mjs";

const meaning = {
  0: "Status 0: the plan holds, as surely as the trip asks for (its `confidence`).",
  1: "Status 1: the plan does not hold. Food is at risk, the ice does not last, or something does not fit: see above.",
  2: "Status 2: the trip file has mistakes; each is listed above.",
  3: "Status 3: a fault in Coldstow, not in the trip.",
  130: "Status 130: called off.",
};

function start(given) {
  if (install() !== 0) {
    say("The install failed; nothing was planned.");
    return 3;
  }
  if (build(["core", "cli"]) !== 0) {
    say("The build failed; nothing was planned.");
    return 3;
  }
  const named = given[0] !== undefined && (given[0] === "-" || !given[0].startsWith("-"));
  const args = named ? [...given] : ["examples/family-three-days.yaml", ...given];
  if (!args.some((arg) => arg === "--out" || arg.startsWith("--out="))) args.push("--out", "out/");
  // A path that a person typed counts from where they typed it.
  const cwd = named ? (process.env.INIT_CWD ?? process.cwd()) : root;
  const status = node([join(root, "dist/cli/coldstow.js"), "plan", ...args], { cwd });
  if (!args.includes("--quiet")) say(meaning[status] ?? `Status ${status}.`);
  return status;
}

process.exitCode = start(process.argv.slice(2));
