import { spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Result } from "../../core/index.ts";
import { build, fine, folderWith, program, run, warm } from "./build.ts";

beforeAll(build);

describe("members in worker threads", () => {
  it("give the same answer to the letter with one, two and three workers", () => {
    const args = ["forecast", "-", "--json", "--members", "40"];
    const one = run(args, { input: fine, env: { COLDSTOW_WORKERS: "1" } });
    expect(one).toMatchObject({ status: 0, err: "" });
    const { ensemble, coolers } = JSON.parse(one.out) as Result;
    expect(ensemble).toMatchObject({ members: 40, seed: 1 });
    expect(coolers[0]!.series.ice_kg.p10.at(-1)).toBeLessThan(coolers[0]!.series.ice_kg.p90.at(-1)!);
    for (const workers of ["2", "3"])
      expect(run(args, { input: fine, env: { COLDSTOW_WORKERS: workers } }).out).toBe(one.out);
  });

  it("another seed is another draw", () => {
    const out = (seed: string): string =>
      run(["forecast", "-", "--json", "--members", "16", "--seed", seed], { input: fine }).out;
    expect(out("2")).not.toBe(out("3"));
  });

  it("a plan runs the trip that it planned, not the one that was written", () => {
    const folder = folderWith({ "trip.yaml": warm });
    const args = ["--members", "40", "--json"];
    const plan = run(["plan", "trip.yaml", "--out", "out", ...args], { cwd: folder });
    const planned = JSON.parse(plan.out) as Result;
    expect(planned.coolers[0]!.iceOut_h.p10 ?? 24).toBeGreaterThan(0);
    const again = JSON.parse(
      run(["forecast", "out/trip.planned.yaml", ...args], { cwd: folder }).out,
    ) as Result;
    expect(planned.coolers[0]!.series.ice_kg).toEqual(again.coolers[0]!.series.ice_kg);
    expect(planned.coolers[0]!.doubts).toEqual(again.coolers[0]!.doubts);
    expect(planned.food.map(({ overLimit_frac }) => overLimit_frac)).toEqual(
      again.food.map(({ overLimit_frac }) => overLimit_frac),
    );
  });

  it("a fault in a worker is our fault, told as one in this thread", () => {
    const preload =
      'import { isMainThread } from "node:worker_threads"; if (!isMainThread) Math.cbrt = null;';
    const env = {
      NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(preload)}`,
      COLDSTOW_WORKERS: "2",
    };
    const done = run(["forecast", "-", "--members", "40"], { input: fine, env });
    expect(done).toMatchObject({ status: 3, out: "" });
    expect(done.err).toContain("Our bug");
    expect(done.err).not.toMatch(/\n\s+at /);
  });

  it("a number of workers that is none is the person's mistake", () => {
    for (const workers of ["0", "many"]) {
      const done = run(["forecast", "-", "--members", "40"], {
        input: fine,
        env: { COLDSTOW_WORKERS: workers },
      });
      expect([workers, done.status]).toEqual([workers, 2]);
      expect(done.err).toContain("COLDSTOW_WORKERS");
    }
  });
});

describe("Ctrl-C", () => {
  it.each(["1", "2"])("calls the runs off and writes nothing (%s workers)", async (workers) => {
    const folder = folderWith({ "trip.yaml": fine });
    const child = spawn(
      process.execPath,
      [program, "stress", "trip.yaml", "--members", "60000", "--out", "out"],
      {
        cwd: folder,
        env: { ...process.env, COLDSTOW_WORKERS: workers },
      },
    );
    let out = "";
    let err = "";
    child.stdout.on("data", (part: Buffer) => {
      out += part.toString();
    });
    child.stderr.on("data", (part: Buffer) => {
      err += part.toString();
    });
    // Long enough to be among the runs; there are hours of them.
    const timer = setInterval(() => child.kill("SIGINT"), 4000);
    const status = await new Promise((resolve) => child.on("close", resolve));
    clearInterval(timer);
    expect({ status, out, err }).toEqual({ status: 130, out: "", err: "Called off; nothing was written.\n" });
    expect(readdirSync(folder)).toEqual(["trip.yaml"]);
  });
});
