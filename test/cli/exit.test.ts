import { spawn, spawnSync } from "node:child_process";
import { closeSync, existsSync, openSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Result } from "../../core/index.ts";
import { build, fine, folderWith, program, run, warm } from "./build.ts";

beforeAll(build);

describe("help and version", () => {
  it("fit on a screen and do not change unnoticed", () => {
    const env = { COLUMNS: "80" };
    const commands = [
      "forecast",
      "plan",
      "habits",
      "stress",
      "compare",
      "camp",
      "closeout",
      "experiment",
      "check",
      "menu",
      "new",
      "serve",
    ];
    for (const args of [["--help"], ...commands.map((command) => [command, "--help"])]) {
      const { status, out } = run(args, { env });
      expect(status).toBe(0);
      expect(out.split("\n").length).toBeLessThan(32);
      expect(out).toMatchSnapshot(args.join(" "));
    }
  });

  it("the version is a version", () => {
    expect(run(["--version"])).toMatchObject({ status: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) });
  });
});

describe("exit status", () => {
  it("0 when all is well, with the answer on standard output", () => {
    const done = run(["forecast", "-"], { input: fine });
    expect(done.err).toBe("");
    expect(done.status).toBe(0);
    expect(done.out).toContain("chili");
  });

  it("1 when food is at risk, and that is no error", () => {
    const done = run(["forecast", "-"], { input: warm });
    expect(done).toMatchObject({ status: 1, err: "" });
    expect(done.out).toContain("chili");
  });

  it("1 when something does not fit", () => {
    const full = fine.replace("pieces: 3", "pieces: 30");
    const done = run(["forecast", "-", "--json"], { input: full });
    expect(done.status).toBe(1);
    expect((JSON.parse(done.out) as Result).coolers[0]!.filled_frac).toBeGreaterThan(1);
  });

  it("2 when a command line is wrong, with what is allowed", () => {
    for (const args of [
      [],
      ["thaw"],
      ["forecast"],
      ["forecast", "-", "--units", "imperial"],
      ["forecast", "-", "--members", "-3"],
      ["forecast", "-", "--members", "1.5"],
      ["habits", "-", "--members", "0"],
      ["stress"],
      ["compare"],
      ["compare", "-"],
      ["compare", "-", "-"],
      ["compare", "a", "b", "c", "d", "e", "f", "g"],
      ["plan", "-", "--aim", "glory"],
      ["forecast", "-", "--wat"],
      ["forecast", "a", "b"],
    ]) {
      const done = run(args);
      expect([args, done.status]).toEqual([args, 2]);
      expect(done.out).toBe("");
      expect(done.err).not.toMatch(/\n\s+at /);
    }
    expect(run(["forecast", "-", "--units", "imperial"]).err).toContain("us, metric");
    expect(run(["forecst", "-"]).err).toContain("Did you mean forecast?");
  });

  it("3 when we are at fault, with a stack only for who asks", () => {
    const broken = { NODE_OPTIONS: "--import=data:text/javascript,Math.cbrt=null" };
    const done = run(["forecast", "-"], { input: fine, env: broken });
    expect(done).toMatchObject({ status: 3, out: "" });
    expect(done.err).toContain("Our bug");
    expect(done.err).not.toMatch(/\n\s+at /);
    const asked = run(["forecast", "-"], { input: fine, env: { ...broken, COLDSTOW_DEBUG: "1" } });
    expect(asked.err).toMatch(/\n\s+at /);
  });

  it("2 when the answer cannot be written, in plain words", () => {
    const full = existsSync("/dev/full") ? [["check"], ["check", "--json"], ["forecast", "--json"]] : [];
    for (const [command, ...flags] of full) {
      const disk = openSync("/dev/full", "w");
      const done = spawnSync(
        process.execPath,
        [program, command!, "-", ...flags, ...(command === "check" ? [] : ["--members", "8"])],
        {
          input: fine,
          stdio: ["pipe", disk, "pipe"],
          encoding: "utf8",
        },
      );
      closeSync(disk);
      expect([command, done.status]).toEqual([command, 2]);
      expect(done.stderr).toBe("The answer could not be written: a full disk.\n");
    }
  });

  it("does not mind a reader that stops early", async () => {
    const child = spawn(process.execPath, [program, "plan", "-", "--json", "--members", "40"], {
      stdio: ["pipe", "pipe", "pipe"],
    });
    let err = "";
    child.stderr.on("data", (part: Buffer) => {
      err += part.toString();
    });
    child.stdout.destroy();
    child.stdin.end(fine);
    const status = await new Promise((resolve) => child.on("close", resolve));
    expect(err).not.toContain("EPIPE");
    expect(err).not.toMatch(/\n\s+at /);
    expect([0, 1]).toContain(status);
  });
});

describe("--json", () => {
  it("prints the result and nothing else", () => {
    const done = run(["forecast", "-", "--json", "--members", "0"], { input: fine });
    const result = JSON.parse(done.out) as Result;
    expect(result).toMatchObject({
      coldstow: 1,
      command: "forecast",
      trip: { title: "One warm day", hours: 24 },
    });
    expect(result.ensemble).toBeUndefined();
    expect(done.out.split("\n")).toHaveLength(2);
    expect(done.err).toBe("");
  });

  it("prints problems on standard output too", () => {
    const done = run(["check", "-", "--json"], { input: fine.replace("45 qt", "45") });
    expect(done).toMatchObject({ status: 2, err: "" });
    const { problems } = JSON.parse(done.out) as {
      problems: { path: string; line: number; must: string; got: string }[];
    };
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path: "coolers[0].size", line: 7, got: "45" });
    expect(JSON.parse(run(["check", "-", "--json", "--wat"], { input: fine }).out).problems).toHaveLength(1);
  });

  it("gives the same answer twice, to the letter", () => {
    const once = run(["plan", "-", "--json"], { input: fine }).out;
    expect(run(["plan", "-", "--json"], { input: fine }).out).toBe(once);
  });
});

describe("units", () => {
  it("are those of the file, unless one asks", () => {
    const metric = fine.replace("45 qt", "42 L").replace("2 lb", "1 kg").replace("10 lb", "4.5 kg");
    expect(run(["forecast", "-"], { input: fine }).out).toContain("40 °F");
    expect(run(["forecast", "-"], { input: metric }).out).toContain("4.4 °C");
    expect(run(["forecast", "-", "--units", "us"], { input: metric }).out).toContain("40 °F");
    expect(run(["forecast", "-", "--units", "metric"], { input: fine }).out).toContain("4.4 °C");
  });
});

describe("--hours", () => {
  it("says where the cold went between two hours, in text and in numbers that add up", () => {
    expect(run(["forecast", "-", "--hours", "6-12"], { input: fine }).out).toContain("hour 6 to 12");
    const lid_kJ = (hours: string): number => {
      const done = run(["forecast", "-", "--json", "--hours", hours], { input: fine });
      return (JSON.parse(done.out) as Result).coldHours!.coolers[0]!.heat_kJ.lid;
    };
    const [day, parts] = [lid_kJ("0-24"), lid_kJ("0-7.5") + lid_kJ("7.5-24")];
    expect(day).toBeGreaterThan(10);
    expect(parts).toBeCloseTo(day, 6);
  });

  it("must lie within the trip, in order", () => {
    for (const hours of ["12-6", "6", "a-b", "6-6", "0-25"]) {
      const done = run(["forecast", "-", "--hours", hours], { input: fine });
      expect([hours, done.status, done.out]).toEqual([hours, 2, ""]);
      expect(done.err).toContain("--hours");
    }
  });
});

describe("--check", () => {
  it("prints the books, which close", () => {
    const done = run(["forecast", "-", "--check"], { input: fine });
    expect(done.out).toContain("missing from the energy books");
    const { coolers } = JSON.parse(run(["forecast", "-", "--json"], { input: fine }).out) as Result;
    expect(Math.abs(coolers[0]!.balance.energy_rel)).toBeLessThan(1e-5);
  });
});

describe("check", () => {
  it("says what was understood and lists what is assumed", () => {
    const done = run(["check", "-"], { input: fine });
    expect(done).toMatchObject({ status: 0, err: "" });
    expect(done.out).toContain("coolers[0].color");
  });

  it("lets food without a cooler pass, which a forecast refuses", () => {
    const text = fine.replace(", in: galley }\nice", " }\nice");
    expect(run(["check", "-"], { input: text })).toMatchObject({
      status: 0,
      err: expect.stringContaining("food[0].in"),
    });
    expect(run(["forecast", "-"], { input: text })).toMatchObject({
      status: 2,
      err: expect.stringContaining("food[0].in"),
    });
  });
});

describe("bad input", () => {
  const wrong: readonly (readonly [string, string | Buffer, RegExp])[] = [
    ["nothing at all", "", /must be/],
    ["bytes that are no text", Buffer.from([0x63, 0, 1, 2]), /UTF-8/],
    ["text in another encoding", Buffer.from("title: caf\xe9", "latin1"), /UTF-8/],
    ["text in UTF-16", Buffer.from(`\ufeff${fine}`, "utf16le"), /UTF-16/],
    ["too much", Buffer.alloc(2_000_001, 0x20), /2 MB/],
    ["broken YAML", "coldstow: [1\n  - {", /:\d+\s+must/],
    [
      "a key that nobody knows",
      fine.replace("title:", "titel:"),
      /standard input:2\s+titel: must[\s\S]*title/,
    ],
    ["a bare number where a unit is needed", fine.replace("45 qt", "45"), /:7\s+coolers\[0\].size: must/],
    ["a return before departure", fine.replace("2027-06-19", "2027-06-17"), /return/],
    ["nested too deep", `coldstow: 1\ntitle: ${"[".repeat(5000)}`, /deep/],
    ["an endless alias", "a: &a [1]\nb: [*a, *a]\n", /alias|key/],
  ];
  for (const [what, input, says] of wrong)
    it(`${what}: exit 2, with place and rule, never a trace of the stack`, () => {
      const done = run(["forecast", "-"], { input });
      expect(done.status).toBe(2);
      expect(done.out).toBe("");
      expect(done.err).toMatch(says);
      expect(done.err).not.toMatch(/\n\s+at |node:internal/);
    });

  it("lists every problem at once", () => {
    const text = fine
      .replace("45 qt", "45 cubits")
      .replace("2 lb", "2 cubits")
      .replace("at: -2 C", "at: 5 C");
    const { problems } = JSON.parse(run(["check", "-", "--json"], { input: text }).out) as {
      problems: { path: string }[];
    };
    expect(problems.map(({ path }) => path)).toEqual(["coolers[0].size", "food[0].amount", "ice[0].at"]);
  });

  it("a conductance that no such cooler has is the person's mistake, not ours", () => {
    const done = run(["forecast", "-"], { input: fine.replace("build: thick", "conductance: 40 W/K") });
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(done.err).toContain("coolers[0].conductance: must be between");
  });

  it("a file that is not there, a folder, and a path through a file", () => {
    const folder = folderWith({ "trip.yaml": fine });
    for (const name of ["nope.yaml", ".", "trip.yaml/deeper", "x".repeat(5000)]) {
      const done = run(["forecast", name], { cwd: folder });
      expect([name, done.status]).toEqual([name, 2]);
      expect(done.err).not.toMatch(/\n\s+at |ENO|EIS/);
    }
  });

  it("Windows line ends and a byte order mark are no problem", () => {
    const plain = run(["forecast", "-", "--json"], { input: fine }).out;
    expect(run(["forecast", "-", "--json"], { input: `\ufeff${fine.replaceAll("\n", "\r\n")}` }).out).toBe(
      plain,
    );
  });
});
