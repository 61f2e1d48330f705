import { Temporal } from "temporal-polyfill";
import { isMap, parseDocument } from "yaml";
import { DomainError } from "../quantity/errors.ts";

/** What a trip made from a template is to have of its own. */
export interface NewTrip {
  adults?: number;
  children?: number;
  /** Local ISO. */
  depart?: string;
  return?: string;
}

/**
 * A template with another party and other dates. Everything else stays, comments too: amounts that count per person
 * follow by themselves, fixed ones do not, and neither do days past a shorter trip. With a departure alone the trip
 * keeps its length.
 *
 * @param text a trip file in YAML with `depart` and `return`
 * @throws DomainError when the text is no trip file, or a date is none
 */
export function newTripText(text: string, wanted: NewTrip): string {
  const document = parseDocument(text, { uniqueKeys: false });
  if (!isMap(document.contents)) throw new DomainError("text must be a trip file, got no mapping");
  if (wanted.adults !== undefined) document.setIn(["party", "adults"], wanted.adults);
  if (wanted.children !== undefined) document.setIn(["party", "children"], wanted.children);
  const { depart } = wanted;
  const until =
    wanted.return ?? (depart === undefined ? undefined : movedReturn(document.toJS() as Dates, depart));
  if (depart !== undefined) document.set("depart", depart);
  if (until !== undefined) document.set("return", until);
  return document.toString({ lineWidth: 0 });
}

interface Dates {
  depart: string;
  return: string;
}

/** The return of a trip that departs at another time and takes as many days, by the clock. */
function movedReturn(old: Dates, depart: string): string {
  try {
    const length = Temporal.PlainDate.from(old.depart.slice(0, 10)).until(
      Temporal.PlainDate.from(old.return.slice(0, 10)),
    );
    const date = Temporal.PlainDate.from(depart.slice(0, 10)).add(length);
    return `${date.toString()}${old.return.slice(10)}`;
  } catch {
    throw new DomainError(`depart must be a local date and time such as 2027-06-18T06:30, got ${depart}`);
  }
}
