/** What the forms of the app offer is what the trip file takes, and the page has the colours that pictures name. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type FieldSpec, sections } from "../../app/describe/fields.ts";
import { themes } from "../../core/tell/pictures/tokens.ts";

const root = join(import.meta.dirname, "../..");

interface Schema {
  properties?: Record<string, Schema>;
  items?: Schema;
  anyOf?: Schema[];
  enum?: unknown[];
}
const schema = JSON.parse(readFileSync(join(root, "schema/trip.schema.json"), "utf8")) as Schema;

function at(from: Schema | undefined, path: string): Schema | undefined {
  return path.split(".").reduce<Schema | undefined>((here, key) => here?.properties?.[key], from);
}

const words = ({ enum: own, anyOf = [] }: Schema): unknown[] => [...(own ?? []), ...anyOf.flatMap(words)];

const fields: [string, FieldSpec, Schema | undefined][] = sections.flatMap(({ fields: own = [], list }) => [
  ...own.map((spec): [string, FieldSpec, Schema | undefined] => [spec.path, spec, at(schema, spec.path)]),
  ...(list === undefined ? [] : [...list.fields, ...(list.more ?? [])]).map(
    (spec): [string, FieldSpec, Schema | undefined] => [
      `${list!.path}[].${spec.path}`,
      spec,
      at(at(schema, list!.path)?.items, spec.path),
    ],
  ),
]);

describe("the forms of the app", () => {
  it.each(fields)("ask for something that the trip file has: %s", (_, { choices }, found) => {
    expect(found).toBeDefined();
    if (choices !== undefined) expect([...choices].sort()).toEqual(words(found!).sort());
  });
});

describe("the looks of the page", () => {
  const css = readFileSync(join(root, "app/look/tokens.css"), "utf8");

  it.each([
    ["day", "day"],
    ["sun", "print"],
    ["night", "night"],
  ] as const)("have the colours of the pictures: %s", (look, theme) => {
    const block = css.slice(css.indexOf(`[data-look="${look}"]`)).split("}")[0]!;
    for (const [name, colour] of Object.entries(themes[theme]))
      expect(block).toContain(`--${name}: ${colour.toLowerCase()};`);
  });
});
