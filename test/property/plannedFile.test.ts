import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EventEntry, PlannedChanges } from "../../core/trip/plannedYaml.ts";
import { plannedYaml } from "../../core/trip/plannedYaml.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import type { Trip } from "../../core/trip/types.ts";

/* Trip files in the many ways that a person may write the same thing down. */

type Entry = Record<string, unknown>;
type Style = "flow" | "commented flow" | "block" | "commented block";

const names = ["a", "true", "cooler, big", "12", "bar: left", "#1"];
const moments = ["day 2 dinner", "day 3 lunch", "every breakfast"];

const food: fc.Arbitrary<Entry> = fc
  .record(
    {
      name: fc.constantFrom("stew", "beef # raw", "'milk'", "ham: sliced"),
      like: fc.constantFrom("stew", "milk", "ham"),
      amount: fc.constantFrom("1 kg", "2 lb"),
      in: fc.constantFrom(...names),
      state: fc.constantFrom("frozen", "chilled"),
      eat: fc.oneof(fc.constantFrom(...moments), fc.constant(moments)),
      shape: fc.constant({ bag: "25 mm" }),
      contains: fc.constantFrom([], ["milk", "egg"]),
    },
    { requiredKeys: ["name", "like", "amount", "eat"] },
  )
  .chain((entry) => fc.shuffledSubarray(Object.entries(entry), { minLength: Object.keys(entry).length }))
  .map((pairs) => Object.fromEntries(pairs));

const quoted = (value: unknown): string => JSON.stringify(value).replaceAll('":', '": ');

function written(entry: Entry, style: Style, indent: string): string {
  const pairs = Object.entries(entry);
  if (style === "flow") return `${indent}- { ${pairs.map(([k, v]) => `${k}: ${quoted(v)}`).join(", ")} }\n`;
  if (style === "commented flow")
    return `${indent}- { # mine\n${pairs.map(([k, v]) => `${indent}    ${k}: ${quoted(v)}, # of ${k}\n`).join("")}${indent}  }\n`;
  const note = style === "block" ? "" : "  # as before";
  const lines = pairs.map(([key, value]) => {
    if (!Array.isArray(value) || value.length === 0) return `${key}: ${quoted(value)}${note}\n`;
    return `${key}:${note}\n${value.map((one) => `${indent}  - ${quoted(one)}${note}\n`).join("")}`;
  });
  const after = style === "block" ? "" : `${indent}  # next\n\n`;
  return `${indent}- ${lines.join(`${indent}  `)}${after}`;
}

const plan: fc.Arbitrary<PlannedChanges> = fc
  .record({
    food: fc.uniqueArray(
      fc.record(
        {
          index: fc.integer({ min: 0, max: 4 }),
          in: fc.constantFrom(...names, "dry box"),
          state: fc.constantFrom("frozen", "chilled"),
        },
        { requiredKeys: ["index"] },
      ),
      { selector: ({ index }) => index },
    ),
    ice: fc.array(
      fc.record({
        form: fc.constantFrom("block", "cube", "jug"),
        pieces: fc.integer({ min: 1, max: 9 }),
        each: fc.constantFrom("10 lb", "5 kg"),
        at: fc.constant("-4 C"),
        liquid: fc.constant("0 %"),
        in: fc.constantFrom(...names),
        layer: fc.constantFrom("base", null),
        price: fc.constantFrom(4.5, null),
      }),
      { maxLength: 2 },
    ),
    events: fc.array(
      fc.constantFrom<EventEntry>(
        { at: "day 2 16:00", do: "merge", from: "true", into: "12" },
        { at: "2027-06-19T08:00", do: "add ice", to: "bar: left", form: "cube", pieces: 2, each: "10 lb" },
      ),
      { maxLength: 2 },
    ),
  })
  .map((changes) => ({ ...changes, coolers: [] }) as PlannedChanges);

const file = fc.record({
  food: fc.array(
    fc.tuple(food, fc.constantFrom<Style>("flow", "commented flow", "block", "commented block")),
    {
      minLength: 5,
      maxLength: 5,
    },
  ),
  indent: fc.constantFrom("", "  ", "    "),
  ice: fc.constantFrom(
    "",
    "ice: []\n",
    "ice:\n  - { form: jug, each: 1 gal, in: a } # home\n",
    "ice:\n- form: jug\n  each: 1 gal\n  in: a\n",
  ),
  events: fc.constantFrom(
    "",
    "events: [ { at: day 2 08:00, do: drain, cooler: a } ]  # once\n",
    "events:\n  - at: day 2 08:00\n    do: drain\n    cooler: a\n",
  ),
  last: fc.constantFrom("", "# the end", "\n\n# the end\n"),
  json: fc.constantFrom(null, 0, 2),
  crlf: fc.boolean(),
});

const head = `depart: 2027-06-18T06:30\nreturn: 2027-06-21T15:00\ncoolers:\n${names.map((name) => `  - { name: ${JSON.stringify(name)}, size: 60 L }\n`).join("")}`;

function read(text: string): Trip {
  const reading = readTrip(text, { file: "trip.yaml" });
  if (!reading.ok) throw new Error(`${JSON.stringify(reading.problems)}\n${text}`);
  return reading.trip;
}

function textOf(drawn: typeof file extends fc.Arbitrary<infer T> ? T : never): string {
  const list = drawn.food.map(([entry, style]) => written(entry, style, drawn.indent)).join("");
  const yaml = `${head}${drawn.ice}food: # drinks too\n${list}${drawn.events}${drawn.last}`;
  if (drawn.json !== null) return JSON.stringify(read(yaml).typed, null, drawn.json);
  return drawn.crlf ? yaml.replaceAll("\n", "\r\n") : yaml;
}

/** The file as parsed, with the changes made by hand. */
function changed(typed: Entry, { food: placed, ice, events }: PlannedChanges): Entry {
  const items = structuredClone(typed.food) as Entry[];
  for (const { index, ...values } of placed) Object.assign(items[index]!, values);
  const lots = ice.map(({ liquid, layer, price, ...lot }) => ({
    ...lot,
    ...(lot.form === "jug" ? {} : { liquid }),
    ...(layer === null ? {} : { layer }),
    ...(price === null ? {} : { price }),
  }));
  const longer = (key: string, more: readonly object[]): object =>
    more.length === 0 ? {} : { [key]: [...((typed[key] as object[] | undefined) ?? []), ...more] };
  return { ...typed, food: items, ...longer("ice", lots), ...longer("events", events) };
}

describe("the planned trip file", () => {
  it("reads as the same trip but for what was decided, however it is written", () => {
    fc.assert(
      fc.property(file, plan, (drawn, changes) => {
        const text = textOf(drawn);
        const planned = plannedYaml(text, changes, "Put in by the plan.\nTwo lines.");
        const before = read(text).typed as Entry;
        expect(read(planned).typed).toEqual(changed(before, changes));
        if (drawn.json !== null) expect(() => JSON.parse(planned)).not.toThrow();
        // No comment of the person's is lost or moved to another order.
        const comments = (of: string): string[] =>
          of.match(/# (?:mine|of \w+|as before|next|home|once|the end|drinks too)/g) ?? [];
        expect(comments(planned)).toEqual(comments(text));
        expect(planned.includes("\r\n")).toBe(text.includes("\r\n"));
      }),
      { numRuns: 150 },
    );
  });

  it("changes no line of food that stays as it is", () => {
    fc.assert(
      fc.property(file, (drawn) => {
        const text = textOf(drawn);
        const same = read(text).food.map((_, index) => ({ index }));
        expect(plannedYaml(text, { ice: [], food: same, coolers: [], events: [] }, "x")).toBe(text);
      }),
      { numRuns: 30 },
    );
  });

  it("wants places that are there", () => {
    expect(() =>
      plannedYaml(head, { ice: [], food: [{ index: 0, in: "a" }], coolers: [], events: [] }, "x"),
    ).toThrow(/index must be/);
  });
});
