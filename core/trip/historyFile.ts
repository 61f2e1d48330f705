import { joinHistory, oddRecords } from "../cooler/joinHistory.ts";
import type { Spread } from "../matter/spread.ts";
import { besideWords, type ReadBeside, staysBeside } from "./beside.ts";
import type { CoolerFile, HistoryFile, InlineHistory } from "./file.ts";
import { measures, Notes } from "./notes.ts";
import { historySchema } from "./schema/history.ts";
import { parseText } from "./text.ts";
import type { CoolerHistory, LearnedRecord, Problem } from "./types.ts";
import { validate } from "./validate.ts";

type HistoryReading = { ok: true; history: CoolerHistory } | { ok: false; problems: Problem[] };

/**
 * Reads a cooler's history (`coldstow-history: 1`): what was believed of its conductance at first, and what each trip
 * taught by itself; and joins them. All problems at once, each with its line; it never throws for what a person wrote.
 */
function readHistory(text: string, name: string): HistoryReading {
  const reading = parseText(text);
  if (!reading.ok) return { ok: false, problems: reading.problems };
  const { typed, lineOf } = reading.parsed;
  const validation = validate(historySchema, typed);
  const notes = new Notes();
  const history = validation.ok ? historyOf(notes, validation.file, name) : null;
  const findings = validation.ok ? notes.findings : validation.findings;
  if (history !== null && findings.length === 0) return { ok: true, history };
  return { ok: false, problems: findings.map((finding) => ({ line: lineOf(finding.path), ...finding })) };
}

function historyOf(
  notes: Notes,
  file: Omit<HistoryFile, "coldstow-history">,
  name: string | null,
): CoolerHistory | null {
  const before = spreadAt(notes, "before", file.before);
  const records = file.learned.map(
    ({ trip, ended = null, from = "close-out", ...typed }, i): LearnedRecord => ({
      trip,
      ended,
      from,
      conductance_W_per_K: spreadAt(notes, `learned[${i}]`, typed),
    }),
  );
  if (notes.findings.length > 0) return null;
  const learned = records.map(({ conductance_W_per_K }) => conductance_W_per_K);
  return {
    file: name,
    cooler: file.cooler,
    before_W_per_K: before,
    records,
    now_W_per_K: joinHistory(before, learned),
    odd: oddRecords(before, learned),
  };
}

function spreadAt(notes: Notes, path: string, typed: HistoryFile["before"]): Spread {
  const at = (key: "low" | "likely" | "high"): number =>
    notes.si(`${path}.${key}`, typed[key], measures.conductance);
  const [p10, p50, p90] = [at("low"), at("likely"), at("high")];
  if (p10 >= p90) notes.refuse(`${path}.high`, `more than low, ${typed.low}`, typed.high);
  else if (p50 < p10 || p50 > p90)
    notes.refuse(`${path}.likely`, `from low, ${typed.low}, to high, ${typed.high}`, typed.likely);
  return { p10, p50, p90 };
}

/**
 * The history of a cooler: in a file beside the trip file that it names, or written there itself; null where there is none,
 * or with the problems noted.
 */
export function coolerHistory(
  notes: Notes,
  path: string,
  { name: cooler, history: typed }: Pick<CoolerFile, "name" | "history">,
  readBeside: ReadBeside | undefined,
): CoolerHistory | null {
  if (typed === undefined) return null;
  return typeof typed === "string"
    ? historyBeside(notes, path, typed, readBeside)
    : historyInline(notes, path, cooler, typed);
}

function historyInline(
  notes: Notes,
  path: string,
  cooler: string,
  typed: InlineHistory,
): CoolerHistory | null {
  const own = new Notes();
  const history = historyOf(own, { cooler, ...typed }, null);
  for (const { path: place, must, got } of own.findings) notes.refuse(`${path}.${place}`, must, got);
  return history;
}

function historyBeside(
  notes: Notes,
  path: string,
  name: string,
  readBeside: ReadBeside | undefined,
): CoolerHistory | null {
  const refuse = (must: string, got: unknown): null => {
    notes.refuse(path, must, got);
    return null;
  };
  if (!staysBeside(name)) return refuse(besideWords, name);
  const text = readBeside?.(name) ?? null;
  if (text === null) return refuse("a file that can be read beside the trip file", name);
  const reading = readHistory(text, name);
  if (reading.ok) return reading.history;
  for (const { line, path: place, must, got } of reading.problems) {
    const where = place === "" ? "text" : place;
    refuse(`in its ${line === null ? "" : `line ${line}, `}${where}, ${must}`, got);
  }
  return null;
}
