/**
 * `npm test`: installs what is missing, runs every stage even when an earlier one failed, and closes with
 * `N passed, N failed`. Each stage before the tests counts as one; then every test counts.
 */
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { build, buildPage, install, node, root, say, tool } from "./steps.mjs";

const report = join(root, "dist/tests.json");

/** A warning that never fails anything is never read. */
const lintFlags = ["--error-on-warnings", "--diagnostic-level=warn", "--max-diagnostics=50", "--colors=off"];

const stages = [
  ["build", () => build()],
  ["app", () => buildPage()],
  [
    "screens",
    () =>
      node([tool("svelte-check/bin/svelte-check"), "--tsconfig", "app/tsconfig.json", "--fail-on-warnings"]),
  ],
  ["format and lint", () => node([tool("@biomejs/biome/bin/biome"), "ci", ...lintFlags])],
  ["dead code", () => node([tool("knip/bin/knip.js"), "--no-progress"])],
];

/** Runs vitest and reads its report back. A file that would not load is one failure; so is a run that broke otherwise. */
function runTests() {
  mkdirSync(join(root, "dist"), { recursive: true });
  rmSync(report, { force: true });
  const status = node(
    [
      tool("vitest/vitest.mjs"),
      "run",
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    // A missing golden file is a failure here, not a new truth.
    { env: { CI: "true" } },
  );
  const count = { passed: 0, failed: 0, skipped: 0 };
  const folders = new Map();
  for (const file of existsSync(report) ? JSON.parse(readFileSync(report, "utf8")).testResults : []) {
    const folder = relative(root, file.name).split(sep).slice(0, 2).join("/");
    const here = folders.get(folder) ?? { passed: 0, failed: 0 };
    const passed = file.assertionResults.filter((test) => test.status === "passed").length;
    const broken = file.assertionResults.filter((test) => test.status === "failed").length;
    const failed = broken === 0 && file.status === "failed" ? 1 : broken;
    folders.set(folder, { passed: here.passed + passed, failed: here.failed + failed });
    count.passed += passed;
    count.failed += failed;
    count.skipped += file.assertionResults.length - passed - broken;
  }
  if (status !== 0 && count.failed === 0) count.failed = 1;
  return { count, folders };
}

function test() {
  const lines = [];
  let passed = 0;
  let failed = 0;
  const note = (name, ok) => {
    lines.push(`${ok ? "passed" : "FAILED"}  ${name}`);
    if (ok) passed += 1;
    else failed += 1;
  };
  const installed = install() === 0;
  note("install", installed);
  if (installed) {
    for (const [name, run] of stages) {
      say(`\n— ${name}`);
      note(name, run() === 0);
    }
    say("\n— tests");
    const { count, folders } = runTests();
    for (const [folder, n] of [...folders].sort(([a], [b]) => a.localeCompare(b))) {
      lines.push(`${n.failed ? "FAILED" : "passed"}  ${folder}: ${n.passed} passed, ${n.failed} failed`);
    }
    if (count.skipped) lines.push(`        ${count.skipped} skipped`);
    passed += count.passed;
    failed += count.failed;
  }
  console.log(`\n${lines.join("\n")}\n\n${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

process.exitCode = test();
