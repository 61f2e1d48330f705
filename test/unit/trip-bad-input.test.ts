import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Problem } from "../../core/trip/types.ts";

const lines = {
  coldstow: "coldstow: 1",
  depart: "depart: 2027-06-18T06:30",
  return: "return: 2027-06-22T15:00",
  place: "place: { latitude: 38, longitude: -110, elevation: 1250 m, timezone: America/Denver }",
  coolers: "coolers: [{ name: galley, size: 65 qt }, { name: bar, size: 45 qt }]",
  food: "food: [{ name: chili, amount: 2.4 kg, in: galley }]",
  ice: "ice: [{ form: block, amount: 10 kg, in: galley }]",
};

/** A good file, with some lines replaced, added, or (null) left out. */
function file(change: Record<string, string | null>): string {
  return Object.entries({ ...lines, ...change })
    .filter(([, line]) => line !== null)
    .map(([, line]) => line)
    .join("\n");
}

function problemsOf(text: string, beside: (name: string) => string | null = () => null): readonly Problem[] {
  const reading = readTrip(text, { file: "trip.yaml", readBeside: beside });
  return reading.ok ? [] : reading.problems;
}

interface Case {
  says: string;
  text?: string;
  /** Lines of the good file to replace, add or (null) leave out. */
  put?: Record<string, string | null>;
  path: string;
  /** A part of the words after "must be". */
  must: string;
  got?: string;
  near?: string | null;
  line?: number | null;
}

function mistakes(name: string): Case[] {
  return parse(readFileSync(new URL(`./fixtures/${name}.yaml`, import.meta.url), "utf8"));
}

const food = (keys: string): string => file({ food: `food: [{ ${keys} }]` });
const hourly = (name: string): string =>
  file({ weather: `weather: { hourly: { file: ${JSON.stringify(name)} } }` });

const textCases: Case[] = [
  { says: "not YAML", text: "coldstow: [1", path: "", must: "valid YAML or JSON", line: 1 },
  {
    says: "a tab for indentation",
    text: file({ x: "meals:\n\tlunch: '12:00'" }),
    path: "",
    must: "indented with spaces",
    got: "a tab character",
    line: 9,
  },
  {
    says: "a key given twice",
    text: file({ x: "title: a\ntitle: b" }),
    path: "title",
    must: "given once",
    line: 9,
  },
  {
    says: "an alias",
    text: file({ x: "title: &t a\ncarry: *t" }),
    path: "carry",
    must: "written out in full",
    got: "the alias *t",
    line: 9,
  },
  { says: "a tag", text: file({ x: "title: !secret a" }), path: "", must: "without ! tags", line: 8 },
  {
    says: "binary data",
    text: file({ x: "title: !!binary aGk=" }),
    path: "title",
    must: "without ! tags",
    line: 8,
  },
  { says: "two documents", text: `${file({})}\n---\na: 1`, path: "", must: "one document", line: 8 },
  { says: "a mapping as a key", text: "? { a: 1 }\n: 2", path: "", must: "plain word" },
  {
    says: "a file of over 2 MB",
    text: `# ${"x".repeat(2_000_001)}`,
    path: "",
    must: "a file of at most 2 MB",
    line: null,
  },
  {
    says: "brackets without end",
    text: `a: ${"[".repeat(500_000)}`,
    path: "",
    must: "nested at most 20 deep",
    line: 1,
  },
  {
    says: "braces 21 deep",
    text: `\na: ${"{ a: ".repeat(21)}1${" }".repeat(21)}`,
    path: "",
    must: "nested at most 20 deep",
    line: 2,
  },
  {
    says: "dashes without end",
    text: `\n\n${"- ".repeat(300_000)}x`,
    path: "",
    must: "nested at most 20 deep",
    line: 3,
  },
  {
    says: "indentation without end",
    text: Array.from({ length: 1500 }, (_, i) => `${" ".repeat(i)}a:`).join("\n"),
    path: "",
    must: "nested at most 20 deep",
  },
  {
    says: "indentation 22 deep",
    text: Array.from({ length: 22 }, (_, i) => `${" ".repeat(i)}a:`).join("\n"),
    path: "*",
    must: "nested at most 20 deep",
  },
];

function check({ text, put, path, must, got, near, line }: Case): void {
  const problems = problemsOf(text ?? file(put ?? {}));
  const problem = problems.find((one) => path === "*" || one.path === path);
  if (problem === undefined) throw new Error(`no problem at ${path}: ${JSON.stringify(problems, null, 1)}`);
  expect(problem.must).toContain(must);
  if (got !== undefined) expect(problem.got).toBe(got);
  if (near !== undefined) expect(problem.near).toBe(near);
  if (line !== undefined) expect(problem.line).toBe(line);
}

describe("what a person may get wrong", () => {
  it("starts from a file without mistakes", () => expect(problemsOf(file({}))).toEqual([]));
  describe("in the shape", () => it.each(mistakes("trip-mistakes-shape"))("$says", check));
  describe("in the meaning", () => it.each(mistakes("trip-mistakes-meaning"))("$says", check));
  describe("in the text", () => it.each(textCases)("$says", check));

  it("is told all at once, in order of lines", () => {
    const text = file({
      title: "title: 5",
      coolers: "coolers: [{ nam: galley, size: 65, build: thik }]",
      x: "foo: 1",
    });
    expect(problemsOf(text).map(({ line, path }) => [line, path])).toEqual([
      [5, "coolers[0].nam"],
      [5, "coolers[0].name"],
      [5, "coolers[0].size"],
      [5, "coolers[0].build"],
      [8, "title"],
      [9, "foo"],
    ]);
  });

  it("tells mistakes of shape and of meaning together, and none that only follow", () => {
    const text = file({
      coolers: "coolers: [{ name: galley, size: 65 }, { nam: bar, size: 45 quarks }]",
      food: "food: [{ name: chili, amuont: 2 kg, in: bar }, { name: trout, amount: 1 kg, at: 300 C, in: galley }, 7]",
      ice: "ice: [{ form: blok, amount: 10 kg, in: gallery }, { form: cube, amount: 10 lbs, at: 9 C, in: galley }]",
      more: "events: [{ at: day 40 12:00, do: drain, cooler: galley }, { at: day 2 12:00, do: dance }]",
      last: "weather: { days: [{ high: 34, low: 15 C }, { high: 10 C, low: 20 C }] }",
    });
    expect(problemsOf(text).map(({ path }) => path)).toEqual([
      "coolers[1].nam",
      "coolers[0].size",
      "coolers[1].name",
      "coolers[1].size",
      "food[0].amuont",
      "food[2]",
      "food[1].at",
      "ice[0].form",
      "ice[1].at",
      "events[1].do",
      "events[0].at",
      "weather.days[0].high",
      "weather.days[1].low",
    ]);
  });

  it("tells a misspelt section first, and nothing that only follows", () => {
    const text = file({
      coolers: null,
      x: "cooler: [{ name: galley, size: 65 }, { name: bar, size: 45 qt }]",
    });
    expect(problemsOf(text).map(({ line, path, near }) => [line, path, near])).toEqual([
      [7, "cooler", "coolers"],
      [7, "cooler[0].size", null],
    ]);
    expect(problemsOf(text.replace("size: 65 }", "size: 65 qt }"))).toHaveLength(1);
  });

  it("is one problem where it is one slip", () => {
    const one = (text: string): void => expect(problemsOf(text)).toHaveLength(1);
    one(file({ x: "meals:\n\tlunch: '12:00'\n\tdinner: '18:00'\nlegs:\n\t- where: camp" }));
    one(file({ coolers: "coolers: [{ name: galley, size: 65 qt }, { name: galley, size: 45 qt }]" }));
    one(file({ food: "food: [{ name: chili, amount: 0,6 kg, in: galley }]" }));
    one(
      file({ return: "return: Sunday", x: "events: [{ at: day 2 12:00, do: move, cooler: bar, to: camp }]" }),
    );
    one(file({ coldstow: null, title: "titel: a" }));
  });

  it.each([
    ["legs: [{ where: car }]", "closed car, cabin, trunk"],
    ["legs: [{ where: home }]", "indoors"],
    ["legs: [{ ground: dirt }]", "soil"],
    ["limit: 40 F", "consumer"],
    ["limit: 41", "inspected"],
    ["party: { vulnerable: yes }", "true"],
    ["coolers: [{ name: galley, size: 65 qt, build: hard }, { name: bar, size: 9 qt }]", "standard, thick"],
    ["coolers: [{ name: galley, size: 65 qt, color: Blue }, { name: bar, size: 9 qt }]", "medium"],
    ["coolers: [{ name: galley, size: 65 qt, drain: no }, { name: bar, size: 9 qt }]", "keep"],
    ["food: [{ name: chili, amount: 1 kg, in: bar, layer: bottom }]", "base"],
    ["food: [{ name: chili, amount: 1 kg, in: bar, state: room }]", "ambient"],
    ["food: [{ name: chili, amount: 1 kg, in: bar, state: cold }]", "chilled"],
    ["ice: [{ form: bag, amount: 10 kg, in: galley }]", "cube"],
    ["events: [{ at: day 2 12:00, do: refill, to: bar }]", "add ice"],
  ])("%s is answered with %s", (line, near) => {
    const key = line.slice(0, line.indexOf(":"));
    expect(problemsOf(file({ [key]: line })).map((problem) => problem.near)).toEqual([near]);
  });

  it("tells the ends of a conductance that it then takes", () => {
    const put = (conductance: string): string =>
      file({
        coolers: `coolers: [{ name: galley, size: 65 qt, conductance: ${conductance} }, { name: bar, size: 45 qt }]`,
      });
    const must = problemsOf(put("0.03 W/K"))[0]!.must;
    const [, least, most] = /between (\S+ W\/K) and (\S+ W\/K)/.exec(must)!;
    expect(problemsOf(put(least!))).toEqual([]);
    expect(problemsOf(put(most!))).toEqual([]);
  });

  it("finds every misspelt key of one mapping", () => {
    const paths = problemsOf(
      file({ coolers: "coolers: [{ name: galley, size: 65 qt, colr: white, bild: thick }]" }),
    ).map(({ path, near }) => [path, near]);
    expect(paths).toEqual([
      ["coolers[0].colr", "color"],
      ["coolers[0].bild", "build"],
    ]);
  });

  it("offers three foods for an unknown one", () => {
    const [problem] = problemsOf(food("name: chikn, amount: 2 kg, in: galley"));
    expect(problem?.near?.split(", ")).toHaveLength(3);
    expect(problem?.near).toMatch(/chicken/);
  });

  it("passes no prototype on", () => {
    problemsOf(file({ x: "__proto__: { polluted: 1 }" }));
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("is refused before it takes long when it is hostile", () => {
    const start = performance.now();
    problemsOf(Array.from({ length: 50_000 }, (_, i) => `k${i}: 1`).join("\n"));
    problemsOf(`a: ${"[".repeat(1_900_000)}`);
    expect(performance.now() - start).toBeLessThan(15_000);
  });

  it("stays within 200 problems", () => {
    expect(problemsOf(Array.from({ length: 1000 }, (_, i) => `k${i}: 1`).join("\n"))).toHaveLength(200);
  });

  it("asks for no weather file outside the folder", () => {
    const asked: string[] = [];
    const beside = (name: string): null => {
      asked.push(name);
      return null;
    };
    for (const name of ["../x.csv", "/x.csv", "a/../../x.csv", "..\\x.csv", "sky/june.csv"])
      problemsOf(hourly(name), beside);
    expect(asked).toEqual(["sky/june.csv"]);
  });

  it("tells what is wrong with a weather file", () => {
    const short =
      "time,temp_C,humidity_pct,wind_m_per_s,cloud_pct\n2027-06-18T06:00,20,50,2,10\n2027-06-18T07:00,21,50,2,10\n";
    const [problem] = problemsOf(hourly("sky.csv"), () => short);
    expect(problem).toMatchObject({ path: "weather.hourly.file", line: 8 });
    expect(problem?.must).toMatch(/^a file to cover the trip, 2027-06-18T06:30 to 2027-06-22T15:00/);
  });

  it("reads JSON, indented with tabs, with lines", () => {
    const json = JSON.stringify(
      {
        coldstow: 1,
        depart: "2027-06-18T06:30",
        return: "2027-06-20T06:30",
        coolers: [{ name: "a", size: "45 qt" }],
      },
      null,
      "\t",
    );
    expect(problemsOf(json)).toEqual([]);
    expect(problemsOf(json.replace("45 qt", "45"))[0]).toMatchObject({ line: 8, path: "coolers[0].size" });
  });
});
