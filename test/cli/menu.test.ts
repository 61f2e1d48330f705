import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { build, fine, folderWith, run } from "./build.ts";

beforeAll(build);

const menu = "item,amount,meal\nflank steak,2,Fri dinner\nmilk,1 qt,day 1 lunch\n";

describe("menu", () => {
  it("prints food entries, and what was guessed on standard error", () => {
    const done = run(["menu", "-", "--depart", "2027-06-18"], { input: menu });
    expect(done.status).toBe(0);
    expect(done.out).toMatch(
      /^food:\n {2}- \{ name: flank steak, .*eat: day 1 dinner.*# guessed: no unit: lb/,
    );
    expect(done.err).toContain("line 2: flank steak: no unit: lb");
    expect(run(["menu", "-", "--depart", "2027-06-18", "--quiet"], { input: menu }).err).toBe("");
    const json = run(["menu", "-", "--depart", "2027-06-18", "--json"], { input: menu });
    expect((JSON.parse(json.out) as { foods: unknown[] }).foods).toHaveLength(2);
  });

  it("adds to a trip, which knows its own weekdays, and the result can be checked", () => {
    const folder = folderWith({ "menu.csv": menu, "trip.yaml": fine });
    const done = run(["menu", "menu.csv", "--into", "trip.yaml", "--out", "new.yaml"], { cwd: folder });
    expect([done.status, done.out]).toEqual([0, ""]);
    expect(readFileSync(join(folder, "trip.yaml"), "utf8")).toBe(fine);
    expect(readFileSync(join(folder, "new.yaml"), "utf8")).toContain("chili");
    expect(run(["check", "new.yaml"], { cwd: folder }).status).toBe(0);
  });

  it("never writes over a file unless that was asked for", () => {
    const folder = folderWith({ "menu.csv": menu, "trip.yaml": fine });
    const args = ["menu", "menu.csv", "--into", "trip.yaml", "--out", "trip.yaml"];
    const refused = run(args, { cwd: folder });
    expect(refused.status).toBe(2);
    expect(refused.err).toContain("--force");
    expect(readFileSync(join(folder, "trip.yaml"), "utf8")).toBe(fine);
    expect(run([...args, "--force"], { cwd: folder }).status).toBe(0);
    expect(readFileSync(join(folder, "trip.yaml"), "utf8")).toContain("flank steak");
  });

  it("lists every mistake with its line, and prints nothing else", () => {
    const done = run(["menu", "-"], { input: `${menu}bacon,some,day 1 dinner\n` });
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(done.err).toContain("departure must be");
    expect(done.err).toContain("some");
    const late = menu.replace("day 1 lunch", "day 9 lunch");
    const folder = folderWith({ "menu.csv": late, "trip.yaml": fine });
    expect(run(["menu", "menu.csv", "--into", "trip.yaml"], { cwd: folder })).toMatchObject({
      status: 2,
      out: "",
    });
  });
});

describe("new", () => {
  it("gives a template with its remarks, one's own party and dates, and it can be checked", () => {
    const args = ["new", "river", "--adults", "8", "--children", "1", "--depart", "2028-07-01T06:00"];
    const done = run(args);
    expect(done.status).toBe(0);
    expect(done.out).toContain("# Six adults, five dry days");
    expect(done.out).toMatch(/adults: 8, children: 1/);
    expect(done.out).toContain("return: 2028-07-05T16:00");
    expect(done.err).toContain("fixed amount");
    expect(run(["check", "-"], { input: done.out }).status).toBe(0);
  });

  it("tells what a shorter trip leaves to be mended", () => {
    const done = run(["new", "family", "--depart", "2027-07-16T09:00", "--return", "2027-07-17T14:00"]);
    expect(done.status).toBe(0);
    expect(done.err).toContain("Still to be mended");
  });

  it("refuses a template that is none and a date that no calendar has", () => {
    const none = run(["new", "moon"]);
    expect(none).toMatchObject({ status: 2, out: "" });
    expect(none.err).toContain("family, festival, river");
    expect(run(["new", "river", "--depart", "2027-02-30T06:00"]).status).toBe(2);
    expect(run(["new", "river", "--adults", "many"]).status).toBe(2);
  });
});
