import { isMap, parseDocument } from "yaml";
import { DomainError } from "../quantity/errors.ts";
import { type Step, stepsOf } from "./paths.ts";

/** One change of a trip file, as a person makes it in a form. */
export interface TripEdit {
  /** As in a problem or an assumption: `coolers[0].openings.per day`. A place one past the end of a list adds to it. */
  path: string;
  /** What stands there from now on, in the file's own words; undefined: nothing, the key or the list entry is taken out. */
  value: unknown;
}

/**
 * The text of a trip file after edits. Values that were not edited stay as they were typed, and so do
 * comments; lines may be broken elsewhere. Mappings and lists on the way are made. It does not check the outcome: read it with `readTrip`.
 *
 * @param text YAML or JSON with a mapping at its root, or nothing at all
 * @throws DomainError when the text is no such file
 */
export function editedTrip(text: string, edits: readonly TripEdit[]): string {
  const document = parseDocument(text.trim() === "" ? "{}" : text, { uniqueKeys: false });
  if (document.errors.length > 0 || !isMap(document.contents))
    throw new DomainError("text must be a trip file, got no mapping");
  // A file begun from nothing is written in lines, not in braces.
  if (document.contents.items.length === 0) document.contents.flow = false;
  for (const { path, value } of edits) {
    const steps = stepsOf(path);
    if (value === undefined) document.deleteIn(steps);
    else put(document, steps, value);
  }
  return document.toString({ lineWidth: 0 });
}

type Doc = ReturnType<typeof parseDocument>;

/** Sets a value; a list that is not there yet is made as a list. */
function put(document: Doc, steps: readonly Step[], value: unknown): void {
  steps.forEach((step, i) => {
    if (i === 0) return;
    const upTo = steps.slice(0, i);
    if (document.getIn(upTo) !== undefined && document.getIn(upTo) !== null) return;
    document.setIn(upTo, document.createNode(typeof step === "number" ? [] : {}));
  });
  document.setIn(steps, document.createNode(value));
}
