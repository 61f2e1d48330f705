import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { resultSchema, resultSchemaJson } from "../../core/forecast/resultSchema.ts";
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

  it("is a JSON Schema that names the parts and forbids others", () => {
    expect(resultSchemaJson()).toMatchObject({
      title: "Coldstow result",
      type: "object",
      additionalProperties: false,
      required: expect.arrayContaining(["coldstow", "trip", "food", "coolers", "assumed", "warnings"]),
    });
  });
});
