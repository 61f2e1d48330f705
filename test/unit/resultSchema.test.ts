import { readFileSync } from "node:fs";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { forecast } from "../../core/forecast/forecast.ts";
import { resultSchema, resultSchemaJson } from "../../core/forecast/resultSchema.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import { whatIfSchemasJson } from "../../core/whatif/resultSchema.ts";
import { inventedForecast } from "./fixtures/forecast.ts";

const result = inventedForecast({ banded: true }).result;

describe("the schema of a result", () => {
  it("lets a result through, also after a journey as JSON", () => {
    const read = v.safeParse(resultSchema, JSON.parse(JSON.stringify(result)));
    expect(read.issues?.map((issue) => `${v.getDotPath(issue)}: ${issue.message}`) ?? []).toEqual([]);
  });

  it.each([
    ["an unknown key", { ...result, extra: 1 }],
    ["a missing part", { ...result, coolers: undefined }],
    ["a number that is none", { ...result, limit: { ...result.limit, limit_C: Number.NaN } }],
    ["a verdict that does not exist", { ...result, food: [{ ...result.food[0]!, verdict: "fine" }] }],
    ["another program's file", { ...result, coldstow: 2 }],
  ])("refuses %s", (_what, broken) => {
    expect(v.safeParse(resultSchema, broken).success).toBe(false);
  });

  it("is the one that is shipped; `npm run schema` writes it", () => {
    const shipped = readFileSync(new URL("../../schema/result.schema.json", import.meta.url), "utf8");
    expect(JSON.parse(shipped)).toEqual(JSON.parse(JSON.stringify(resultSchemaJson())));
  });

  it.each(["habits", "stress", "compare"] as const)(
    "of %s is the one that is shipped, and forbids what it does not name",
    (command) => {
      const shipped = readFileSync(new URL(`../../schema/${command}.schema.json`, import.meta.url), "utf8");
      const made = whatIfSchemasJson()[command];
      expect(JSON.parse(shipped)).toEqual(JSON.parse(JSON.stringify(made)));
      expect(made).toMatchObject({ type: "object", additionalProperties: false });
    },
  );

  it("lets every example through, reckoned by the program", () => {
    for (const name of ["family-three-days", "festival-weekend", "desert-river"]) {
      const text = readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), "utf8");
      const reading = readTrip(text, { file: name });
      if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
      const { result: made } = forecast(reading.trip, { effects: false });
      expect(v.safeParse(resultSchema, JSON.parse(JSON.stringify(made))).success).toBe(true);
    }
  });

  it("is a JSON Schema that names the parts and forbids others", () => {
    expect(resultSchemaJson()).toMatchObject({
      title: "Coldstow result",
      type: "object",
      additionalProperties: false,
      required: expect.arrayContaining(["coldstow", "trip", "food", "coolers", "assumed", "warnings"]),
    });
  });
});
