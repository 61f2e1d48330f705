import { nearest } from "./nearest.ts";
import { tripKeys } from "./schema/trip.ts";
import { type Finding, shown } from "./validate.ts";

/** A file with the misspelt keys of its top level put right, and what was wrong with them. */
export interface Spelled {
  typed: unknown;
  findings: Finding[];
  /** A path of the spelled file as it stands in the typed one. */
  typedPath(path: string): string;
}

/**
 * Puts right the keys of the top level that are misspelt: else everything under `cooler:` for `coolers:` would be told
 * again as missing. A key with no known one near, or whose known one is there too, is left as it is.
 */
export function spelled(typed: unknown): Spelled {
  const slips = new Map<string, string>();
  if (typeof typed !== "object" || typed === null || Array.isArray(typed))
    return { typed, findings: [], typedPath: (path) => path };
  for (const key of Object.keys(typed)) {
    if (tripKeys.includes(key) || key === "__proto__") continue;
    const near = nearest(key, tripKeys);
    if (near !== null && !Object.hasOwn(typed, near) && !slips.has(near)) slips.set(near, key);
  }
  const misspelt = new Map([...slips].map(([near, key]) => [key, near]));
  const pairs = Object.entries(typed).map(([key, value]) => [misspelt.get(key) ?? key, value] as const);
  return {
    typed: slips.size === 0 ? typed : Object.fromEntries(pairs),
    findings: [...slips].map(([near, key]) => ({
      path: shown(key),
      must: `a known key: ${tripKeys.join(", ")}`,
      got: shown(key),
      near,
    })),
    typedPath: (path) => path.replace(/^[^.[]+/, (key) => slips.get(key) ?? key),
  };
}
