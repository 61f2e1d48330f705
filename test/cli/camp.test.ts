import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as v from "valibot";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { CampJson } from "../../core/camp/campResult.ts";
import { campSchema, campSchemaJson } from "../../core/camp/campSchema.ts";
import { build, run } from "./build.ts";

const trip = "examples/desert-river.yaml";
const log = "examples/logs/desert-river.yaml";
const out = mkdtempSync(join(tmpdir(), "camp-"));

beforeAll(build);
afterAll(() => rmSync(out, { recursive: true, force: true }));

const head = "coldstow-log: 1\nentries:\n";

describe("coldstow camp", () => {
  let result: CampJson;
  beforeAll(() => {
    const done = run(["camp", trip, log, "--members", "48", "--json", "--out", out]);
    expect([0, 1]).toContain(done.status);
    result = JSON.parse(done.out) as CampJson;
  }, 120_000);

  it("answers as its schema says", () => {
    expect(v.safeParse(campSchema, result).issues).toBeUndefined();
    const shipped = readFileSync(new URL("../../schema/camp.schema.json", import.meta.url), "utf8");
    expect(JSON.parse(shipped)).toEqual(JSON.parse(JSON.stringify(campSchemaJson())));
  });

  it("knows every look, and that less ice was seen than thought", () => {
    const { camp } = result;
    expect(camp.nEntries).toBe(12);
    expect(camp.looks).toHaveLength(11);
    const galley = camp.learned.find(({ cooler }) => cooler === "galley")!;
    expect(galley.iceOutBefore_h.p10).toBeNull();
    expect(galley.iceOut_h.p10).not.toBeNull();
    // What was seen was drawn from a world with worse walls: what is learned goes that way.
    expect(galley.conductance_W_per_K.p50!).toBeGreaterThan(galley.conductanceBefore_W_per_K.p50!);
  });

  it("keeps the answer, the picture, the trip as lived and the joined log", () => {
    const read = (name: string): string => readFileSync(join(out, name), "utf8");
    expect(read("camp.txt")).toContain("Redwall bends");
    expect(read("looks.svg")).toContain("saw ice at ½");
    expect(read("log.yaml")).toContain("ana-01");
    const again = run(["forecast", join(out, "trip.lived.yaml"), "--json"]);
    expect([0, 1]).toContain(again.status);
    const lived = run(["check", join(out, "trip.lived.yaml")]);
    expect(lived.status).toBe(0);
    expect(read("trip.lived.yaml")).toContain("2027-06-12T09:40");
  });

  it("gives the same however often and in whatever order logs are named", () => {
    const args = ["--members", "8", "--json"];
    const once = run(["camp", trip, log, ...args]);
    expect(run(["camp", trip, log, join(out, "log.yaml"), log, ...args]).out).toBe(once.out);
  });

  it("refuses a log with a mistake, naming place, rule and value", () => {
    const input = `${head}  - { id: a, at: day 2 07:00, cooler: gally, ice: half }\n`;
    const done = run(["camp", trip, "-"], { input });
    expect(done.status).toBe(2);
    expect(done.err).toContain("entries[0].ice");
    expect(done.err).toContain("half");
  });

  it("refuses a log that leads to a trip that is none, and loses nothing", () => {
    const input = `${head}  - { id: a, at: day 2 07:00, return: day 1 07:10 }\n`;
    expect(run(["camp", trip, "-"], { input }).status).toBe(2);
  });

  it("tells of an empty log only what is planned", () => {
    const done = run(["camp", trip, "-", "--members", "8"], { input: `${head.trim()} []\n` });
    expect([0, 1]).toContain(done.status);
    expect(done.out).toContain("nobody looked inside");
  });
});
