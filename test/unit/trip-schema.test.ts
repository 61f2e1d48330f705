import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fleetSchemaJson } from "../../core/trip/schema/coolers.ts";
import { tripSchemaJson } from "../../core/trip/schema/trip.ts";

interface Node {
  type?: string;
  description?: string;
  properties?: Record<string, Node>;
  additionalProperties?: boolean;
  items?: Node;
  anyOf?: Node[];
  oneOf?: Node[];
}

function everyNode(node: Node): Node[] {
  const below = [...Object.values(node.properties ?? {}), ...(node.anyOf ?? []), ...(node.oneOf ?? [])];
  return [node, ...[...below, ...(node.items === undefined ? [] : [node.items])].flatMap(everyNode)];
}

describe("the JSON Schema of the trip file", () => {
  const schema = tripSchemaJson() as Node;

  it("is shipped as generated", () => {
    const shipped = JSON.parse(
      readFileSync(new URL("../../schema/trip.schema.json", import.meta.url), "utf8"),
    );
    expect(shipped).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  it("is shipped as generated for the fleet file too, with the same keys for a cooler but a number for a name", () => {
    const fleet = fleetSchemaJson() as Node;
    const shipped = JSON.parse(
      readFileSync(new URL("../../schema/fleet.schema.json", import.meta.url), "utf8"),
    );
    expect(shipped).toEqual(JSON.parse(JSON.stringify(fleet)));
    const keys = (node: Node): string[] =>
      Object.keys(node.properties?.coolers?.items?.properties ?? {}).filter((key) => key !== "name");
    expect(keys(fleet)).toEqual(keys(schema));
  });

  it("knows every key of the file format, and no other", () => {
    expect(Object.keys(schema.properties ?? {})).toEqual([
      "coldstow",
      "title",
      "depart",
      "return",
      "place",
      "party",
      "limit",
      "confidence",
      "meals",
      "weather",
      "legs",
      "fleet",
      "coolers",
      "food",
      "ice",
      "supply",
      "freezer",
      "carry",
      "warm load",
      "rules",
      "events",
    ]);
    for (const node of everyNode(schema))
      if (node.properties !== undefined) expect(node.additionalProperties).toBe(false);
  });

  it("tells an editor what each text must be", () => {
    for (const node of everyNode(schema)) {
      for (const [key, value] of Object.entries(node.properties ?? {})) {
        if (value.type === "string") expect(value.description, key).toBeTruthy();
      }
    }
  });
});
