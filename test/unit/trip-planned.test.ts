import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type AddedIce, plannedYaml } from "../../core/trip/plannedYaml.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import { templates } from "../../core/trip/templates.ts";
import type { Trip } from "../../core/trip/types.ts";

const block: AddedIce = {
  form: "block",
  pieces: 2,
  each: "10 lb",
  at: "-8 C",
  liquid: "0 %",
  in: "a",
  layer: "base",
  price: 4.5,
};
const cube: AddedIce = {
  form: "cube",
  pieces: 1,
  each: "5 kg",
  at: "-2 C",
  liquid: "3 %",
  in: "a",
  layer: null,
  price: null,
};
const head =
  "coldstow: 1\ndepart: 2027-06-18T06:30\nreturn: 2027-06-20T15:00\ncoolers: [{ name: a, size: 45 qt }]\n";

function read(text: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(`${JSON.stringify(reading.problems)}\n${text}`);
  return reading.trip;
}

const added = (text: string): unknown[] =>
  read(text)
    .ice.slice(-2)
    .map(({ form, pieces, each, start_C, price }) => [form, pieces, each, start_C, price]);

const expected = [
  ["block", 2, "10 lb", -8, 4.5],
  ["cube", 1, "5 kg", -2, null],
];

describe("the planned trip file", () => {
  it.each([
    [
      "a list with comments",
      `${head}# mine\nice:   # all of it\n  - { form: jug, each: 1 gal } # from home\n  # later?\n\n# food\nfood: []\n`,
    ],
    ["a list of block mappings", `${head}ice:\n- form: jug\n  each: 1 gal   # from home\nfood: []\n`],
    ["a list in brackets", `${head}ice: [{ form: jug, each: 1 gal }, ] # one\nfood: []\n`],
    ["an empty list", `${head}ice: []\n`],
    ["no list", `${head}# the end`],
    ["no list and a document's end", `---\n${head}# the end\n...\n`],
    ["Windows line ends", `${head}ice:\n  - { form: jug, each: 1 gal }\n`.replace(/\n/g, "\r\n")],
    [
      "JSON",
      JSON.stringify({
        coldstow: 1,
        depart: "2027-06-18T06:30",
        return: "2027-06-20T15:00",
        coolers: [{ name: "a", size: "45 qt" }],
        ice: [],
      }),
    ],
    [
      "JSON without ice",
      JSON.stringify(
        {
          coldstow: 1,
          depart: "2027-06-18T06:30",
          return: "2027-06-20T15:00",
          coolers: [{ name: "a", size: "45 qt" }],
        },
        null,
        2,
      ),
    ],
  ])("adds ice to %s", (name, text) => {
    const planned = plannedYaml(
      text,
      { ice: [block, cube], food: [], coolers: [], events: [] },
      "Ice that the plan adds.\nWeights as bought.",
    );
    expect(added(planned)).toEqual(expected);
    if (name.startsWith("JSON")) expect(() => JSON.parse(planned)).not.toThrow();
    // What the person wrote is still there, in order, to the letter.
    let from = 0;
    for (const part of text.split(/(?<=[\s,[\]{}])/)) {
      from = planned.indexOf(part, from);
      expect(from, part).toBeGreaterThanOrEqual(0);
      from += part.length;
    }
  });

  it.each(templates)("keeps every line of $file", ({ file }) => {
    const text = readFileSync(new URL(`../../examples/${file}`, import.meta.url), "utf8");
    const ice = { ...block, in: read(text).coolers[0]!.name };
    const planned = plannedYaml(
      text,
      { ice: [ice], food: [], coolers: [], events: [] },
      "Ice that the plan adds.",
    );
    expect(planned.split("\n").filter((line) => !text.includes(line))).toHaveLength(2);
    expect(planned.length).toBeGreaterThan(text.length);
    expect(read(planned).ice.some(({ each, start_C }) => each === "10 lb" && start_C === -8)).toBe(true);
  });

  it("puts names in quotes that YAML would read otherwise", () => {
    for (const name of ["true", "12", "a, b", "x: y", "#1", "- a", "café 2", "{x}", 'say "ice"']) {
      const text = head.replace("name: a", `name: ${JSON.stringify(name)}`);
      expect(
        read(
          plannedYaml(text, { ice: [{ ...block, in: name }], food: [], coolers: [], events: [] }, "Added."),
        ).ice[0]?.cooler,
      ).toBe(0);
    }
  });

  it("is the same text where nothing is added", () =>
    expect(plannedYaml(head, { ice: [], food: [], coolers: [], events: [] }, "x")).toBe(head));
});
