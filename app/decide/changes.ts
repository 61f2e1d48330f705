import type { TripEdit } from "../../core/index.ts";
import { valueAt } from "../describe/typed.ts";

/** One thing done otherwise, as edits of the trip file. */
export interface Change {
  says: string;
  edits: TripEdit[];
}

const rowsOf = (typed: unknown, list: string): unknown[] => {
  const rows = valueAt(typed, list);
  return Array.isArray(rows) ? rows : [];
};

/**
 * What can be changed on this trip with one press, of what a file says: each is a trip that can be planned anew. What would
 * change nothing is not offered.
 */
export function changesOf(typed: unknown): Change[] {
  return [chilled, oneKind, fewer, bigger, warmThings, shaded].flatMap((change) => change(typed) ?? []);
}

/** A cooler chilled beforehand, or not. */
function chilled(typed: unknown): Change | null {
  const coolers = rowsOf(typed, "coolers");
  if (coolers.length === 0) return null;
  const isChilled = coolers.some((one) => valueAt(one, "start.prechill") !== undefined);
  const value = isChilled ? { kept: "24 C" } : { prechill: "12 h", with: "3 kg" };
  return {
    says: isChilled ? "no chilling of the coolers beforehand" : "coolers chilled the night before",
    edits: coolers.map((_, i) => ({ path: `coolers[${i}].start`, value })),
  };
}

function oneKind(typed: unknown): Change | null {
  const supply = rowsOf(typed, "supply");
  const cubes = supply.filter((one) => valueAt(one, "form") === "cube");
  if (cubes.length === 0 || cubes.length === supply.length) return null;
  return { says: "cubes only", edits: [{ path: "supply", value: cubes }] };
}

/** The last cooler that nothing but food is tied to stays at home; its food is left to us. */
function fewer(typed: unknown): Change | null {
  const coolers = rowsOf(typed, "coolers");
  const named = (name: unknown, key: string): boolean =>
    JSON.stringify(valueAt(typed, key) ?? "").includes(JSON.stringify(name));
  const at = coolers.findLastIndex((one) => {
    const name = valueAt(one, "name");
    return !["ice", "events", "warm load"].some((key) => named(name, key));
  });
  if (coolers.length < 2 || at < 0) return null;
  const name = valueAt(coolers[at], "name");
  const freed = rowsOf(typed, "food").flatMap((one, i) =>
    valueAt(one, "in") === name ? [{ path: `food[${i}].in`, value: undefined }] : [],
  );
  return { says: `without ${name}`, edits: [...freed, { path: `coolers[${at}]`, value: undefined }] };
}

/** The largest cooler half as large again. */
function bigger(typed: unknown): Change | null {
  const sizes = rowsOf(typed, "coolers").map((one, i) => {
    const [, number, unit] = /^([\d.]+) *(qt|L|gal)$/.exec(String(valueAt(one, "size") ?? "")) ?? [];
    return { i, name: valueAt(one, "name"), size: Number(number ?? 0), unit };
  });
  const largest = sizes.sort((a, b) => b.size - a.size)[0];
  if (largest === undefined || largest.size === 0) return null;
  const size = `${Math.round(largest.size * 1.5)} ${largest.unit}`;
  return {
    says: `${largest.name} of ${size}`,
    edits: [{ path: `coolers[${largest.i}].size`, value: size }],
  };
}

function warmThings(typed: unknown): Change | null {
  const edits = rowsOf(typed, "food").flatMap((one, i) =>
    valueAt(one, "state") === "ambient"
      ? [
          { path: `food[${i}].state`, value: "chilled" },
          { path: `food[${i}].at`, value: undefined },
        ]
      : [],
  );
  return edits.length === 0 ? null : { says: "warm drinks chilled at home", edits };
}

function shaded(typed: unknown): Change | null {
  const edits = rowsOf(typed, "legs").flatMap((one, i) => {
    const shade = valueAt(one, "shade");
    return shade === undefined || shade === "100 %" ? [] : [{ path: `legs[${i}].shade`, value: "100 %" }];
  });
  return edits.length === 0 ? null : { says: "full shade", edits };
}
