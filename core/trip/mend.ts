import type { TripFile } from "./file.ts";
import { copy, pathOf, type Step, stepsOf } from "./paths.ts";
import { bounds } from "./text.ts";
import { type Finding, validateTrip } from "./validate.ts";

type Parsed = Record<Step, unknown>;

/** A file mended for a further look: never to be reckoned with. */
export interface Mended {
  file: TripFile;
  /** Findings in it, less those that only follow from what was mended. */
  independent(findings: readonly Finding[]): Finding[];
}

/**
 * A copy of a file of the wrong shape that has the right one: what was found wrong is left out, and entries that need
 * it are stood in for, so that all mistakes in the rest can be told at once. Null when too much is missing.
 */
export function mended(typed: unknown, flagged: readonly Finding[]): Mended | null {
  if (typeof typed !== "object" || typed === null || Array.isArray(typed)) return null;
  if (flagged.length >= bounds.problems) return null;
  const file = copy(typed) as Parsed;
  const paths = flagged.map(({ path }) => path);
  for (const path of paths) leaveOut(file, stepsOf(path));
  const replaced: string[] = [];
  for (let round = 0; round < 4; round++) {
    const validation = validateTrip(file);
    if (validation.ok) {
      const independent = (findings: readonly Finding[]): Finding[] =>
        findings.filter((finding) => standsAlone(finding, paths, replaced));
      return { file: validation.file, independent };
    }
    for (const { path } of validation.findings) {
      const touched = mend(file, stepsOf(path));
      if (touched === null) return null;
      replaced.push(pathOf(touched));
    }
  }
  return null;
}

/** Takes out what stands at a path; a place in a list is kept, empty, so that the others keep theirs. */
function leaveOut(file: Parsed, steps: readonly Step[]): void {
  const last = steps.at(-1);
  let holder: unknown = file;
  for (const step of steps.slice(0, -1)) holder = (holder as Parsed | null | undefined)?.[step];
  if (last === undefined || typeof holder !== "object" || holder === null) return;
  if (Array.isArray(holder)) holder[last as number] = null;
  else delete (holder as Parsed)[last];
}

/** Mends what is missing at a path and returns the path of what it changed; null where nothing helps. */
function mend(file: Parsed, steps: readonly Step[]): readonly Step[] | null {
  const [section, place] = steps;
  // The rest of a number that a comma cut in two.
  if (/^\d/.test(String(steps.at(-1))) && typeof steps.at(-1) === "string") {
    leaveOut(file, steps);
    return steps;
  }
  if (steps.length < 2) return null;
  const entries = file[section as string];
  if (typeof place !== "number" || !Array.isArray(entries) || (steps.length > 3 && section !== "events")) {
    leaveOut(file, steps.slice(0, -1));
    return steps.slice(0, -1);
  }
  if (section === "coolers" && steps[2] === "name") {
    (entries[place] as Parsed).name = `cooler ${place}`;
    return steps;
  }
  const entry = standIn(section as string, file, place);
  if (entry === null) leaveOut(file, steps.slice(0, -1));
  else entries[place] = entry;
  return steps.slice(0, entry === null ? -1 : 2);
}

/** An entry without mistakes for a list of the file; null for lists whose entries need nothing. */
function standIn(section: string, file: Parsed, place: number): object | null {
  const cooler = nameIn((file.coolers as unknown[] | undefined)?.[0]) ?? "cooler 0";
  if (section === "coolers") return { name: `cooler ${place}`, size: "40 L" };
  if (section === "food") return { name: "water", amount: "1 L", in: "dry box" };
  if (section === "ice") return { form: "block", amount: "1 kg", in: cooler };
  if (section === "supply") return { form: "block", each: "1 kg" };
  return section === "events" ? { at: file.depart, do: "drain", cooler } : null;
}

function nameIn(entry: unknown): string | null {
  const name = (entry as { name?: unknown } | null)?.name;
  return typeof name === "string" && name.length > 0 && name.length <= 200 ? name : null;
}

/** Whether a finding would be there in a file without the mistakes already told. */
function standsAlone(finding: Finding, flagged: readonly string[], replaced: readonly string[]): boolean {
  const within = (path: string): boolean =>
    finding.path === path || finding.path.startsWith(`${path}.`) || finding.path.startsWith(`${path}[`);
  if (flagged.some(within) || replaced.some(within)) return false;
  const holder = finding.path.slice(0, Math.max(0, finding.path.lastIndexOf(".")));
  if (finding.got === "nothing" && flagged.some((path) => path.startsWith(`${holder}.`))) return false;
  const namesLost = flagged.some((path) => /^coolers\[\d+\](\.name)?$/.test(path));
  return !(namesLost && finding.must.startsWith("the name of a cooler"));
}
