import type { LogEntryFile, SaidEntry } from "../../core/index.ts";
import { loads } from "./steps.ts";

/** What is being logged, tap by tap; an entry only once it is done. */
export interface Draft {
  /** null: it is about the trip. */
  cooler: string | null;
  act: Act | null;
  /** What was chosen so far, in the order of the steps. */
  picks: readonly string[];
  /** Where a dial stands that is not chosen yet; null: where it begins. */
  dial: number | null;
  /** Hours ago. */
  earlier_h: number;
  /** It is only asked what would be; nothing is logged before the person says that it happened. */
  isSupposed?: boolean;
}

/** What is said of one cooler. */
export const coolerActs = [
  "ice",
  "read",
  "drained",
  "added",
  "opened",
  "out",
  "in",
  "moved",
  "swamped",
  "merged into",
  "covered",
  "dumped",
] as const;

/** What is said of the trip itself. */
export const tripActs = ["none at", "skipped", "swapped", "return"] as const;

export const acts = [...coolerActs, ...tripActs] as const;
export type Act = (typeof acts)[number];

export const actWords: Readonly<Record<Act, string>> = {
  ice: "Ice left",
  read: "Thermometer",
  drained: "Water let out",
  added: "Ice added",
  opened: "Stood open",
  out: "Taken out",
  in: "Put in",
  moved: "Moved",
  swamped: "Swamped",
  "merged into": "Emptied into",
  covered: "Cover",
  dumped: "Lost",
  "none at": "No ice at the shop",
  skipped: "Meal not eaten",
  swapped: "Meals swapped",
  return: "Home later or sooner",
};

/** The entries that a complete draft stands for: one, or two where water was let out as well. */
export function saidBy({ cooler, act, picks }: Draft, day: number): SaidEntry[] {
  const [first = "", second = "", third = ""] = picks;
  const about = (said: SaidEntry): SaidEntry[] => [cooler === null ? said : { cooler, ...said }];
  switch (act) {
    case "ice":
      return [...about({ ice: first }), ...(second === "yes" ? about({ drained: true }) : [])];
    case "read":
      return about({ read: second, ...(first === "air" ? {} : { of: first.replace(/^item /, "") }) });
    case "added":
      return about({ added: { ...(JSON.parse(first) as object), pieces: Number(second) } });
    case "out":
      return about({ out: first, ...(second === "all" ? {} : { share: second }) });
    case "in": {
      const says = loads.find(([like]) => like === first)?.[1] ?? first;
      return about({
        in: { name: `${says.toLowerCase()}, day ${day}`, like: first, amount: second, at: third },
      });
    }
    case "drained":
      return about({ drained: first === "true" ? true : first });
    case "swamped":
    case "dumped":
      return about({ [act]: true });
    case "swapped":
      return about({ swapped: [first, second] });
    default:
      return about({ [act!]: first });
  }
}

/** An entry out of what it says. */
export const entryOf = (said: SaidEntry, head: { id: string; at: string; by: string }): LogEntryFile =>
  ({ ...head, ...said }) as LogEntryFile;
