/** A step into a parsed file: a key of a mapping or a place in a list. */
export type Step = string | number;

const stepPattern = /\[(\d+)\]|([^.[\]]+)/g;

/** The path as a person reads it: `coolers[0].openings.per day`. */
export function pathOf(steps: readonly Step[]): string {
  let path = "";
  for (const step of steps) {
    if (typeof step === "number") path += `[${step}]`;
    else path += path === "" ? step : `.${step}`;
  }
  return path;
}

/** The steps of a path written by `pathOf`. Keys of the trip file hold no dots or brackets. */
export function stepsOf(path: string): Step[] {
  return [...path.matchAll(stepPattern)].map(([, place, key]) =>
    place === undefined ? (key as string) : Number(place),
  );
}

const inert = new Set(["__proto__", "constructor", "prototype"]);

/** Sets an own key, even one such as `__proto__`, without touching any prototype. */
export function setOwn(target: object, key: Step, value: unknown): void {
  Object.defineProperty(target, key, { value, writable: true, enumerable: true, configurable: true });
}

/** A deep copy of parsed plain values; keys such as `__proto__` stay ordinary keys. */
export function copy(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copy);
  if (typeof value !== "object" || value === null) return value;
  const twin = {};
  for (const [key, part] of Object.entries(value)) setOwn(twin, key, copy(part));
  return twin;
}

/**
 * A deep copy of a parsed trip file with one value put in, making the mappings and lists on the way. It does not
 * check the outcome: read it with `readTripObject`.
 *
 * @param typed the file as parsed (`Trip.typed`); left as it was
 * @param path as in `Assumed.path`, for instance `coolers[0].openings.per day`
 * @param value as one would type it; a plain number ("12") becomes a number, true and false become booleans
 */
export function withValue(typed: unknown, path: string, value: string): unknown {
  const steps = stepsOf(path);
  if (steps.some((step) => inert.has(String(step)))) return copy(typed);
  const root = { trip: copy(typed) };
  let here: Record<Step, unknown> = root;
  let last: Step = "trip";
  for (const step of steps) {
    const next = Object.hasOwn(here, last) ? here[last] : undefined;
    if (typeof next !== "object" || next === null) here[last] = typeof step === "number" ? [] : {};
    here = here[last] as Record<Step, unknown>;
    last = step;
  }
  setOwn(here, last, scalarOf(value));
  return root.trip;
}

/** What the file format would make of a plain word. */
function scalarOf(value: string): unknown {
  if (/^-?\d+(\.\d+)?$/.test(value)) return Number(value);
  if (value === "true" || value === "false") return value === "true";
  return value;
}
