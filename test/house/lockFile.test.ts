import { describe, expect, it } from "vitest";
import { read } from "./tree.ts";

interface Locked {
  version?: string;
  integrity?: string;
  resolved?: string;
}

const packages = JSON.parse(read("package-lock.json")).packages as Record<string, Locked>;
const manifest = JSON.parse(read("package.json")) as Record<
  "dependencies" | "devDependencies",
  Record<string, string>
>;

describe("the lock file", () => {
  it("names no place to download from: that is the person's own setting", () => {
    expect(Object.keys(packages).filter((path) => packages[path]!.resolved !== undefined)).toEqual([]);
    expect(read("package-lock.json")).not.toMatch(/https?:\/\/[^"]*\.tgz/);
  });

  it("pins the content of every package", () => {
    const loose = Object.keys(packages).filter(
      (path) => path !== "" && packages[path]!.integrity === undefined,
    );
    expect(loose).toEqual([]);
  });

  it("agrees with package.json, which pins exact versions", () => {
    for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
      expect(packages[`node_modules/${name}`]?.version, name).toBe(version);
    }
  });
});
