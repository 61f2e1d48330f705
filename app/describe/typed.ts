/** The value at a path of a parsed trip file; undefined: nothing stands there. */
export function valueAt(typed: unknown, path: string): unknown {
  let here: unknown = typed;
  for (const [, place, key] of path.matchAll(/\[(\d+)\]|([^.[\]]+)/g)) {
    if (typeof here !== "object" || here === null) return undefined;
    const step = place === undefined ? key! : Number(place);
    here = Object.hasOwn(here, step) ? (here as Record<string | number, unknown>)[step] : undefined;
  }
  return here;
}

/** A value as a field shows it, just as it was typed; null: the file has more there than a field can show. */
export function shownText(value: unknown): string | null {
  if (value === undefined || value === null) return "";
  if (typeof value === "object")
    return Array.isArray(value) && value.every(isPlain) ? value.join(", ") : null;
  return String(value);
}

const isPlain = (one: unknown): boolean => typeof one === "string" || typeof one === "number";

/** What a person typed, as the trip file takes it. Empty: nothing, so that it is left to us. */
export function fileValue(kind: string, text: string): unknown {
  const bare = text.trim();
  if (bare === "") return undefined;
  const isNumber = kind === "whole" || kind === "number";
  // What is no number is kept as it was typed: the file's own check then says what it must be.
  if (isNumber && /^-?\d+(\.\d+)?$/.test(bare)) return Number(bare);
  return bare;
}
