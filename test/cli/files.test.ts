import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { Result } from "../../core/index.ts";
import { build, fine, folderWith, run, warm } from "./build.ts";

beforeAll(build);

const hours = (count: number): string =>
  Array.from({ length: count }, (_, i) => {
    const time = new Date(Date.UTC(2027, 5, 17, i)).toISOString().slice(0, 16);
    return `${time},${(20 + 8 * Math.sin((i / 24) * 2 * Math.PI)).toFixed(1)},40,2,0`;
  }).join("\n");
const csv = `time,temp_C,humidity_pct,wind_m_per_s,ghi_W_per_m2\n${hours(96)}\n`;
const hourly = (name: string): string =>
  fine.replace(
    "coolers:",
    `place: { latitude: 40, longitude: 0, elevation: 0 m, timezone: UTC }\nweather: { hourly: { file: "${name}" } }\ncoolers:`,
  );

describe("an hourly file", () => {
  it("is read beside the trip file or below, whatever the working folder", () => {
    const folder = folderWith({ "trip.yaml": hourly("sky/canyon.csv"), "sky/canyon.csv": csv });
    const done = run(["forecast", join(folder, "trip.yaml"), "--json"], { cwd: "/" });
    expect(done.err).toBe("");
    expect(done.status).toBe(0);
  });

  it("never lies outside that folder: by dots, from the root, or over a link", () => {
    const outside = folderWith({ "secret.csv": csv });
    const folder = folderWith({ "trip/x.csv": csv, "canyon.csv": csv });
    symlinkSync(join(outside, "secret.csv"), join(folder, "trip/link.csv"));
    symlinkSync(outside, join(folder, "trip/door"));
    for (const name of [
      "../canyon.csv",
      join(outside, "secret.csv"),
      "link.csv",
      "door/secret.csv",
      "x.csv/../../canyon.csv",
    ]) {
      writeFileSync(join(folder, "trip/trip.yaml"), hourly(name));
      const done = run(["check", join(folder, "trip/trip.yaml")]);
      expect([name, done.status]).toEqual([name, 2]);
      expect(done.err).toContain("weather.hourly.file");
      expect(done.out).toBe("");
    }
  });

  it("that is missing, a folder, no text or too large is a problem of the trip file, with its line", () => {
    const folder = folderWith({
      "bytes.csv": Buffer.from([0, 1, 2]),
      "large.csv": Buffer.alloc(2_000_001, 0x31),
      "folder.csv/x": "",
    });
    const says: Record<string, RegExp> = {
      "nope.csv": /nothing there/,
      "bytes.csv": /UTF-8/,
      "large.csv": /2 MB/,
      "folder.csv": /folder/,
    };
    for (const [name, words] of Object.entries(says)) {
      writeFileSync(join(folder, "trip.yaml"), hourly(name));
      const done = run(["check", join(folder, "trip.yaml")]);
      expect(done.status).toBe(2);
      expect(done.err).toMatch(words);
      expect(done.err).toMatch(/trip\.yaml:7/);
    }
  });
});

describe("--out", () => {
  it("writes text, result and a picture each, and makes the folder", () => {
    const folder = folderWith({ "trip.yaml": fine });
    const done = run(["forecast", "trip.yaml", "--out", "new/deep", "--quiet"], { cwd: folder });
    expect(done).toMatchObject({ status: 0, err: "" });
    const made = join(folder, "new/deep");
    expect(readdirSync(made).sort()).toEqual([
      "food.svg",
      "forecast.txt",
      "galley-cold.svg",
      "galley-ice.svg",
      "result.json",
      "trip.svg",
    ]);
    expect(readFileSync(join(made, "forecast.txt"), "utf8")).toContain("chili");
    expect(JSON.parse(readFileSync(join(made, "result.json"), "utf8"))).toMatchObject({
      command: "forecast",
    });
    expect(readFileSync(join(made, "galley-ice.svg"), "utf8")).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
  });

  it("writes a planned trip that a forecast takes as it is and that holds", () => {
    const text = `# our own words\n${warm}supply:\n  - { form: cube, each: 10 lb, at: -2 C, price: 4, where: town }\n`;
    const folder = folderWith({ "trip.yaml": text });
    const plan = run(["plan", "trip.yaml", "--out", "out", "--json"], { cwd: folder });
    expect(plan.status).toBe(0);
    const result = JSON.parse(plan.out) as Result;
    expect(result.plan!.file).toBe(join("out", "trip.planned.yaml"));
    expect(result.plan!.ice[0]).toMatchObject({ form: "cube", cooler: "galley", where: "town" });
    expect(readFileSync(join(folder, "out/trip.planned.yaml"), "utf8")).toContain("# our own words");
    expect(run(["forecast", "out/trip.planned.yaml"], { cwd: folder }).status).toBe(0);
  });

  it("hands temperatures of ice back as typed, and its own in the units of the file", () => {
    const plannedOf = (text: string): string => {
      const folder = folderWith({ "trip.yaml": text });
      run(["plan", "trip.yaml", "--out", "out", "--quiet"], { cwd: folder });
      return readFileSync(join(folder, "out/trip.planned.yaml"), "utf8").slice(text.length);
    };
    expect(plannedOf(`${warm}supply:\n  - { form: cube, each: 10 lb, at: 28 F }\n`)).toContain("at: 28 F,");
    expect(plannedOf(`${warm}supply:\n  - { form: cube, each: 10 lb, at: -2 C }\n`)).toContain("at: -2 C,");
    // Shop ice that nobody wrote down is taken at −2 °C.
    const us = warm.replace("at: 3 C", "at: 38 F");
    expect(plannedOf(us)).toContain("at: 28.4 F,");
    const metric = warm.replace("45 qt", "42 L").replace("2 lb", "1 kg");
    expect(plannedOf(metric)).toContain("at: -2 C,");
  });

  it("brings the hourly file along with a planned trip", () => {
    const folder = folderWith({ "trip.yaml": hourly("sky/canyon.csv"), "sky/canyon.csv": csv });
    expect(run(["plan", "trip.yaml", "--out", "out"], { cwd: folder }).status).toBe(0);
    expect(run(["check", "out/trip.planned.yaml"], { cwd: folder }).status).toBe(0);
  });

  it("never writes over what it read, by any name", () => {
    const folder = folderWith({ "trip.planned.yaml": fine });
    const other = folderWith({});
    symlinkSync(join(folder, "trip.planned.yaml"), join(other, "trip.planned.yaml"));
    for (const out of [".", join(folder, "..", folder.split("/").at(-1)!), other]) {
      const done = run(["plan", "trip.planned.yaml", "--out", out], { cwd: folder });
      expect(done).toMatchObject({ status: 2, out: "" });
      expect(done.err).toContain("--out");
    }
    expect(readFileSync(join(folder, "trip.planned.yaml"), "utf8")).toBe(fine);
  });

  it("says what is wrong with a folder that cannot be made", () => {
    const folder = folderWith({ "trip.yaml": fine, file: "" });
    const done = run(["forecast", "trip.yaml", "--out", "file/sub"], { cwd: folder });
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(done.err).toContain("--out");
    expect(done.err).not.toMatch(/\n\s+at |ENOTDIR/);
  });

  it("comes back where the system makes no folder and does not say why", () => {
    const folder = folderWith({ "trip.yaml": fine });
    for (const out of existsSync("/proc/self") ? ["/proc/nowhere", "/proc/self/nowhere/deep"] : []) {
      const done = run(["forecast", "trip.yaml", "--out", out], { cwd: folder });
      expect(done).toMatchObject({ status: 2, out: "" });
      expect(done.err).toContain("--out: must be a folder that can be written");
    }
  });

  it("keeps every name of a cooler inside the folder", () => {
    const names = [
      "../../evil",
      "/etc/cool",
      "a\\b:c*?",
      "..",
      "cool",
      "cool!",
      "größe 漢字",
      "<script>",
      "x".repeat(150),
    ];
    const coolers = names
      .map((name) => `  - { name: ${JSON.stringify(name)}, size: 45 qt, build: thick }`)
      .join("\n");
    const text = `coldstow: 1\ndepart: 2027-06-18T06:30\nreturn: 2027-06-18T18:30\ncoolers:\n${coolers}\n`;
    const folder = folderWith({ "in/trip.yaml": text });
    mkdirSync(join(folder, "in/out"));
    const done = run(["forecast", "trip.yaml", "--out", "out", "--quiet"], { cwd: join(folder, "in") });
    expect(done.err).toBe("");
    expect(done.status).toBe(0);
    expect(readdirSync(folder)).toEqual(["in"]);
    expect(readdirSync(join(folder, "in")).sort()).toEqual(["out", "trip.yaml"]);
    const made = readdirSync(join(folder, "in/out"));
    expect(made).toHaveLength(names.length * 2 + 4);
    for (const name of made) expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{N}-]*\.(?:svg|txt|json)$/u);
    expect(existsSync("/etc/cool-ice.svg")).toBe(false);
  });
});
