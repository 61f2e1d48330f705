import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { build, folderWith, run } from "./build.ts";

beforeAll(build, 120_000);

const example = readFileSync(new URL("../../examples/tests/galley-at-home.yaml", import.meta.url), "utf8");

describe("coldstow icetest", () => {
  it("learns the example's cooler, and writes a history that a trip takes", () => {
    const folder = folderWith({ "test.yaml": example });
    const done = run(["icetest", "test.yaml", "--out", "out"], { cwd: folder });
    expect(done).toMatchObject({ status: 0 });
    expect(done.out).toMatch(/galley melts [\d.]+ lb \([\d.]+ to [\d.]+\) of ice a day/);
    const files = readdirSync(join(folder, "out")).sort();
    expect(files).toEqual(["fit.svg", "galley.history.yaml", "icetest.txt", "result.json"]);
    const trip = `coldstow: 1
title: One warm day
depart: 2027-06-18T06:30
return: 2027-06-19T06:30
coolers:
  - { name: galley, size: 45 qt, build: thick, history: out/galley.history.yaml }
ice:
  - { form: cube, pieces: 3, each: 10 lb, at: -2 C, in: galley }
`;
    const told = run(["forecast", "-"], { cwd: folder, input: trip });
    expect(told.err).toBe("");
    expect(told.out).toMatch(/1 earlier trip put its conductance at/);
  });

  it("says how to run a test of which nothing is weighed, and prints JSON alone where asked", () => {
    const plan = example.slice(0, example.indexOf("weighed:"));
    const done = run(["icetest", "-"], { input: plan });
    expect(done).toMatchObject({ status: 0, err: "" });
    expect(done.out).toMatch(/4\. Write each weight/);
    const json = JSON.parse(run(["icetest", "-", "--json"], { input: plan }).out);
    expect(json).toMatchObject({ coldstow: 1, command: "icetest", tells: false, residual_kg: [], odd: [] });
  });

  it("ends with 1 where the test is too short to tell", () => {
    const short = `${example.slice(0, example.indexOf("weighed:"))}weighed: [{ after: 1 h, ice: 18.6 lb }]\n`;
    const done = run(["icetest", "-"], { input: short });
    expect(done.status).toBe(1);
    expect(done.out).toMatch(/too little to tell/);
  });

  it.each([
    ["a weight that is no number", "weighed: [{ after: 12 h, ice: NaN kg }]", "weighed[0].ice"],
    ["a weight below nothing", "weighed: [{ after: 12 h, ice: -2 kg }]", "weighed[0].ice"],
    [
      "the same hour twice",
      "weighed: [{ after: 12 h, ice: 8 kg }, { after: 12 h, ice: 7 kg }]",
      "weighed[1].after",
    ],
    ["a thousand weighings", `weighed: [${"{ after: 12 h, ice: 8 kg },".repeat(1000)}]`, "weighed"],
    ["no mapping", "weighed: 12", "weighed"],
  ])("refuses %s with its place", (_, weighed, place) => {
    const text = `${example.slice(0, example.indexOf("weighed:"))}${weighed}\n`;
    const done = run(["icetest", "-"], { input: text });
    expect(done).toMatchObject({ status: 2, out: "" });
    expect(done.err).toContain(place);
  });

  it("refuses a room whose file is not there, or lies elsewhere", () => {
    for (const name of ["room.csv", "../room.csv", "/etc/hostname"]) {
      const text = example.replace("room: 75 F", `room: { file: ${name} }`);
      const done = run(["icetest", "-"], { input: text });
      expect(done.status).toBe(2);
      expect(done.err).toContain("room.file");
    }
  });
});
