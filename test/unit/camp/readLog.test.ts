import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { LogFile } from "../../../core/camp/logFile.ts";
import { logSchemaJson } from "../../../core/camp/logSchema.ts";
import { readLog } from "../../../core/camp/readLog.ts";
import { writeLog } from "../../../core/camp/writeLog.ts";
import { readTrip } from "../../../core/trip/readTrip.ts";
import type { Problem, Trip } from "../../../core/trip/types.ts";

const trip = tripOf(`
depart: 2027-07-16T09:00
return: 2027-07-18T14:00
place: { timezone: America/New_York }
meals: { breakfast: "08:00", lunch: "12:30", dinner: "18:30" }
coolers: [{ name: chest, size: 52 qt, build: thin }, { name: drinks bag, size: 24 qt, build: soft }]
food: [{ name: eggs, amount: 1 lb, like: egg, eat: day 3 breakfast, in: chest }]
ice: [{ form: cube, amount: 10 lb, in: chest }]
`);

function tripOf(text: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems, null, 1));
  return reading.trip;
}

const logOf = (...entries: string[]): string =>
  `coldstow-log: 1\nentries:\n${entries.map((entry) => `  - { ${entry} }\n`).join("")}`;

function problems(...entries: string[]): readonly Problem[] {
  const reading = readLog(logOf(...entries), trip);
  return reading.ok ? [] : reading.problems;
}

const head = "id: a, at: day 2 12:00";

describe("a camp log", () => {
  it("gives every entry with its moment in seconds since departure and its cooler, in order of time", () => {
    const reading = readLog(
      logOf(
        "id: b, at: 2027-07-17T09:00, cooler: Drinks Bag, read: 41 F",
        "id: a, at: day 1 dinner, cooler: chest, ice: 1/2",
        "id: c, at: '2027-07-17T09:00:00', return: day 4 10:00",
      ),
      trip,
    );
    expect(reading.ok && reading.log.entries.map(({ id, t_s, cooler }) => [id, t_s, cooler])).toEqual([
      ["a", 9.5 * 3600, 0],
      ["b", 24 * 3600, 1],
      ["c", 24 * 3600, null],
    ]);
  });

  it("takes every kind of entry", () => {
    const kinds = [
      "ice: slush",
      "read: 3.5 C, of: eggs",
      "read: 33 F, of: water",
      "drained: true",
      "drained: 2 L",
      "added: { form: cube, pieces: 2, each: 10 lb, from: 28 F }",
      "opened: 3 min",
      "opened: true",
      "out: eggs, share: 50 %",
      "in: { name: trout, amount: 2 kg, like: trout, at: 18 C, eat: day 4 dinner }",
      "out: trout",
      "moved: truck bed, shade: 80 %",
      "merged into: drinks bag",
      "covered: wet cloth",
      "wetted: true",
      "swamped: true",
      "dumped: true",
    ].map((kind, i) => `id: a${i}, at: day 4 12:00, cooler: chest, ${kind}`);
    const others = [
      "withdraws: a1",
      "return: day 5 10:00",
      "skipped: day 3 lunch",
      "swapped: [day 2 lunch, day 2 dinner]",
    ];
    expect(problems(...kinds, ...others.map((kind, i) => `id: b${i}, at: day 3 12:00, ${kind}`))).toEqual([]);
  });

  it.each([
    [`${head}, cooler: chest`, "entries[0]", /^one of ice, read/, "nothing", null],
    [`${head}, cooler: chest, ice: full, drained: true`, "entries[0]", /no second/, "ice and drained", null],
    [`${head}, cooler: chst, ice: full`, "entries[0].cooler", /^the name of a cooler/, "chst", "chest"],
    [`${head}, ice: full`, "entries[0].cooler", /^the name of a cooler/, "nothing", null],
    [`${head}, cooler: chest, ice: half`, "entries[0].ice", /^one of full, 3\/4/, "half", null],
    [`${head}, cooler: chest, out: egs`, "entries[0].out", /item of the trip/, "egs", "eggs"],
    [`${head}, cooler: chest, read: 4`, "entries[0].read", /unit/, "4", null],
    [`${head}, cooler: chest, read: 400 F`, "entries[0].read", /-80 C to 80 C/, "400 F", null],
    [`${head}, cooler: chest, ice: full, of: water`, "entries[0].of", /beside read/, "water", null],
    [`${head}, cooler: chest, opened: 3 d`, "entries[0].opened", /12 h/, "3 d", null],
    [`${head}, cooler: chest, merged into: chest`, "entries[0].merged into", /another/, "chest", null],
    [`${head}, cooler: chest, added: { form: cube }`, "entries[0].added.amount", /^given/, "nothing", null],
    [
      `${head}, cooler: chest, in: { name: mush, amount: 1 kg }`,
      "entries[0].in.like",
      /name is not a food/,
      "mush",
      null,
    ],
    [`${head}, cooler: chest, skipped: day 3 lunch`, "entries[0].cooler", /left out/, "chest", null],
    [`${head}, withdraws: zz`, "entries[0].withdraws", /id of an entry/, "zz", null],
    [`${head}, skipped: day 3`, "entries[0].skipped", /such as day 3 dinner/, "day 3", null],
    [`${head}, drained: true, coler: chest`, "entries[0].coler", /known key/, "coler", "cooler"],
    ["id: a b, at: day 2 12:00, cooler: chest, ice: full", "entries[0].id", /letters, digits/, "a b", null],
    ["id: a, at: 2027-07-12T08:59, cooler: chest, ice: full", "entries[0].at", /3 days before/, null, null],
    ["id: a, at: 2027-08-01T14:01, cooler: chest, ice: full", "entries[0].at", /14 days after/, null, null],
  ])("refuses { %s } with its place, rule, value and line", (entry, path, must, got, near) => {
    const found = problems(entry);
    const problem = found.find((one) => one.path === path);
    expect(problem, JSON.stringify(found)).toBeDefined();
    expect(problem!.must).toMatch(must);
    expect(problem!.line).toBe(3);
    if (got !== null) expect(problem!.got).toBe(got);
    if (near !== null) expect(problem!.near).toBe(near);
  });

  it("takes moments of the days before departure and of extra nights", () => {
    const at = ["2027-07-13T09:00", "2027-07-16T08:00", "2027-08-01T14:00"];
    expect(problems(...at.map((one, i) => `id: a${i}, at: '${one}', cooler: chest, ice: full`))).toEqual([]);
  });

  it("tells all problems at once", () => {
    const found = problems(
      `${head}, cooler: chst, ice: full`,
      "id: b, at: day 99 12:00, cooler: chest, ice: full",
    );
    expect(found.map(({ path, line }) => [path, line])).toEqual([
      ["entries[0].cooler", 3],
      ["entries[1].at", 4],
    ]);
  });

  it("marks what is withdrawn, and refuses to take a withdrawal back", () => {
    const ice = `${head}, cooler: chest, ice: full`;
    const reading = readLog(logOf(ice, "id: b, at: day 2 12:05, withdraws: a"), trip);
    expect(reading.ok && reading.log.entries.map(({ withdrawnBy }) => withdrawnBy)).toEqual(["b", null]);
    const again = problems(
      ice,
      "id: b, at: day 2 12:05, withdraws: a",
      "id: c, at: day 2 12:06, withdraws: b",
    );
    expect(again[0]).toMatchObject({ path: "entries[2].withdraws", line: 5 });
  });

  it("counts what stands twice once, and refuses one id for two things", () => {
    const ice = `${head}, cooler: chest, ice: full`;
    const reading = readLog(logOf(ice, "at: day 2 12:00, id: a, ice: full, cooler: chest"), trip);
    expect(reading.ok && reading.log.entries).toHaveLength(1);
    expect(problems(ice, `${head}, cooler: chest, ice: 1/4`)[0]).toMatchObject({
      path: "entries[1].id",
      line: 4,
    });
  });

  it("is refused as a whole where it is something else", () => {
    for (const text of ["- 1", "coldstow-log: 2\nentries: []", "entries: []", "{", ""])
      expect(readLog(text, trip).ok, text).toBe(false);
  });
});

describe("a written log", () => {
  const file: LogFile = {
    "coldstow-log": 1,
    trip: "Heron Hollow: three days",
    entries: [
      {
        id: "b",
        at: "2027-07-17T09:00:05",
        cooler: "drinks bag",
        added: { form: "cube", pieces: 1, each: "10 lb" },
      },
      { id: "c", at: "2027-07-16T18:30:00", cooler: "chest", ice: "1/2", by: "yes: no" },
      { id: "a", at: "2027-07-17T09:00:05", withdraws: "c" },
    ],
  };

  it("has an entry a line, by time and then by id, and reads back as it was", () => {
    const text = writeLog(file);
    const ids = [...text.matchAll(/^ {2}- \{ id: (\w+),/gm)].map(([, id]) => id);
    expect(ids).toEqual(["c", "a", "b"]);
    expect(text.trimEnd().split("\n")).toHaveLength(6);
    const reading = readLog(text, trip);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    const byId = (log: LogFile): LogFile["entries"] =>
      [...log.entries].sort((a, b) => (a.id < b.id ? -1 : 1));
    expect(byId(reading.file)).toEqual(byId(file));
    expect(reading.file.trip).toBe(file.trip);
    expect(writeLog(reading.file)).toBe(text);
  });

  it("may be empty", () => {
    expect(readLog(writeLog({ "coldstow-log": 1, entries: [] }), trip).ok).toBe(true);
  });
});

describe("the JSON Schema of a camp log", () => {
  it("is shipped as generated, and lets an entry say one thing alone", () => {
    const shipped = readFileSync(new URL("../../../schema/log.schema.json", import.meta.url), "utf8");
    expect(JSON.parse(shipped)).toEqual(JSON.parse(JSON.stringify(logSchemaJson())));
    const { properties } = logSchemaJson() as {
      properties: { entries: { items: { oneOf: { required: string[] }[]; properties: object } } };
    };
    const { items } = properties.entries;
    for (const { required } of items.oneOf)
      for (const key of required) expect(Object.keys(items.properties)).toContain(key);
  });
});
