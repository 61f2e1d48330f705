import type {
  Aim,
  Answer,
  Assumed,
  CompareRow,
  PlanWhys,
  Problem,
  Result,
  TripEdit,
  UnitSystem,
} from "../../core/index.ts";

/*
 * What a page asks of its two workers and what comes back: plain data. The desk reads and edits trip files, and is always
 * free; the reckoner runs forecasts and plans, and is ended when what it works at is no longer wanted.
 */

/** A trip file as it was read. */
export interface TripOnDesk {
  /** The file, as it would be kept. */
  text: string;
  /** The file as parsed, for forms to show; null where it is no YAML. */
  typed: unknown;
  title: string;
  problems: readonly Problem[];
  /** Empty where there are problems. */
  assumed: readonly Assumed[];
  /** Units that the file is typed in. */
  units: UnitSystem;
  /** Hours from departure to return, and meals in between; null where there are problems. */
  hours: number | null;
  meals: number | null;
  /** Departure and return as instants, ms since 1970, so that a page knows what is now; null where there are problems. */
  span_ms: readonly [number, number] | null;
}

export type DeskAsk =
  | { do: "read"; text: string }
  | { do: "edit"; text: string; edits: readonly TripEdit[] }
  | { do: "menu"; text: string; menu: string }
  | { do: "foods" };

/** A menu out of a spreadsheet as it was read, before anything is added. */
export interface MenuOnDesk {
  foods: readonly { line: number; name: string; says: string; guesses: readonly string[] }[];
  /** What was passed over, by line, in words. */
  notes: readonly { line: number; says: string }[];
  problems: readonly Problem[];
  /** The trip file with the foods in it; null: there is nothing to add. */
  added: string | null;
}

/** Pictures by name, each an SVG; they take their colours from the page. */
export interface PlanPictures {
  /** All coolers through the days. */
  strip: string;
  /** What each merge is worth, in the plan's order. */
  merges: readonly string[];
  food: string;
  /** By cooler, in the trip's order. */
  ice: readonly string[];
  cold: readonly string[];
  doubts: readonly string[];
  /** null: nothing lies in it. */
  pack: readonly (string | null)[];
}

/** A plan as a page shows it. */
export interface PlanView {
  result: Result;
  answer: Answer;
  whys: PlanWhys;
  /** Hours at which the lid of each cooler is lifted for something. */
  openings_h: readonly (readonly number[])[];
  pictures: PlanPictures;
  /** What was decided, in words, as the command line says it. */
  text: string;
  /** The trip file with everything planned written into it. */
  file: string;
  holds: boolean;
  members: number;
}

/** A text with its picture. */
export interface Study {
  text: string;
  picture: string;
}

/** A trip planned for comparison, beside the one on the table. */
export interface PlanBeside {
  /** With everything planned written into it. */
  file: string;
  holds: boolean;
}

/** A trip file to be set beside others, and what it is called. */
export interface NamedFile {
  says: string;
  text: string;
}

/** Plans side by side over the same members, in the order in which they were named: A, B, C. */
export interface CompareView {
  picture: string;
  rows: readonly CompareRow[];
  /** What may be lost in each. */
  risks: readonly string[];
  /** How much longer ice lasts from one to another, in sentences. */
  pairs: readonly string[];
}

/** One cooler at an hour of the trip. */
export interface MomentView {
  picture: string;
  /** The hour and the ice, as a slider says them. */
  says: string;
}

export type ReckonAsk =
  | { do: "plan"; text: string; units: UnitSystem; members: number; aim: Aim; width: number }
  | { do: "beside"; text: string; members: number; aim: Aim }
  | { do: "compare"; files: readonly NamedFile[]; members: number; units: UnitSystem; width: number }
  | { do: "moment"; cooler: number; t_h: number; units: UnitSystem; width: number }
  | { do: "show"; units: UnitSystem; width: number }
  | { do: "book"; units: UnitSystem; paper: "A4" | "Letter"; made: string }
  | { do: "calendar"; now_s: number }
  | { do: "habits"; text: string; units: UnitSystem; members: number; width: number }
  | { do: "stress"; text: string; units: UnitSystem; members: number; width: number };

/** Answers by what was asked. */
export interface ReckonAnswers {
  plan: PlanView;
  beside: PlanBeside;
  compare: CompareView;
  moment: MomentView;
  show: PlanView;
  book: string;
  calendar: string;
  habits: Study;
  stress: Study;
}

export interface Asked<T> {
  id: number;
  ask: T;
}

/** What a worker says, first how far it is, at last the answer. */
export type Said =
  | { id: number; done_frac: number; says: string }
  | { id: number; answer: unknown }
  | { id: number; problems: readonly Problem[] }
  /** A newer question came: this one is answered no more. */
  | { id: number; isOld: true }
  | { id: number; fault: string };
