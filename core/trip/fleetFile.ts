import { besideWords, type ReadBeside, staysBeside } from "./beside.ts";
import type { CoolerFile, CoolerKeysFile, TripFile } from "./file.ts";
import { nearest } from "./nearest.ts";
import type { Notes } from "./notes.ts";
import { parseText } from "./text.ts";
import type { Finding } from "./validate.ts";
import { validateFleet } from "./validate.ts";

/** A trip's cooler with what the fleet says of it filled in. */
export interface FleetCooler {
  file: CoolerFile;
  /** Its keys that come from the fleet file. */
  filled: readonly string[];
}

/** Keys of a fleet's cooler that give way to a key of the trip, since they would overrule it. */
const givesWay: Readonly<Record<string, readonly string[]>> = {
  size: ["inside"],
  inside: ["size"],
  color: ["absorptance"],
  absorptance: ["color"],
  build: ["wall", "conductance", "history"],
  wall: ["conductance", "history"],
  conductance: ["history"],
  history: ["conductance"],
};

/** What stands in for a cooler that cannot be looked up, so that nothing else is told of it. */
const standIn: CoolerKeysFile = { size: "40 L" };

/**
 * The trip's coolers, each with what it leaves out taken from the cooler of its number in the fleet file. Notes a fleet
 * file that cannot be read, its mistakes, numbers it does not have, and numbers given twice.
 */
export function numberedCoolers(
  notes: Notes,
  file: TripFile,
  readBeside: ReadBeside | undefined,
): FleetCooler[] {
  const first = new Map<number, number>();
  file.coolers.forEach(({ number }, i) => {
    if (number === undefined) return;
    const earlier = first.get(number);
    if (earlier === undefined) first.set(number, i);
    else notes.refuse(`coolers[${i}].number`, `unlike the number of coolers[${earlier}]`, number);
  });
  if (file.fleet === undefined) return file.coolers.map((cooler) => ({ file: cooler, filled: [] }));
  const fleet = readFleet(notes, file.fleet, readBeside);
  return file.coolers.map((cooler, i) => {
    if (cooler.number === undefined) return { file: cooler, filled: [] };
    const known = fleet?.get(cooler.number);
    if (fleet !== null && known === undefined) {
      const numbers = [...fleet.keys()];
      const must = `the number of a cooler in the fleet file: ${numbers.slice(0, 20).join(", ")}`;
      notes.refuse(
        `coolers[${i}].number`,
        must,
        cooler.number,
        nearest(String(cooler.number), numbers.map(String)),
      );
    }
    return filledIn(cooler, known ?? standIn);
  });
}

function filledIn(cooler: CoolerFile, known: CoolerKeysFile): FleetCooler {
  const own = Object.keys(cooler);
  const barred = new Set([...own, ...own.flatMap((key) => givesWay[key] ?? [])]);
  const taken = Object.entries(known).filter(([key]) => !barred.has(key));
  return { file: { ...Object.fromEntries(taken), ...cooler }, filled: taken.map(([key]) => key) };
}

/** Coolers of the fleet file by number; null with the problem noted. */
function readFleet(
  notes: Notes,
  name: string,
  readBeside: ReadBeside | undefined,
): ReadonlyMap<number, CoolerKeysFile> | null {
  const refuse = (must: string, got: unknown, near: string | null = null): null => {
    notes.refuse("fleet", must, got, near);
    return null;
  };
  if (!staysBeside(name)) return refuse(besideWords, name);
  const text = readBeside?.(name) ?? null;
  if (text === null) return refuse("a file that can be read beside the trip file", name);
  const reading = parseText(text);
  if (!reading.ok) {
    for (const { line, path, must, got } of reading.problems) refuse(placed(line, path, must), got);
    return null;
  }
  const validation = validateFleet(reading.parsed.typed);
  if (!validation.ok) {
    const tell = ({ path, must, got, near }: Finding): null =>
      refuse(placed(reading.parsed.lineOf(path), path, must), got, near);
    validation.findings.forEach(tell);
    return null;
  }
  const fleet = new Map<number, CoolerKeysFile>();
  for (const [i, { number, ...keys }] of validation.file.coolers.entries()) {
    const path = `coolers[${i}].number`;
    if (fleet.has(number))
      refuse(placed(reading.parsed.lineOf(path), path, "a number that no other cooler has"), number);
    fleet.set(number, keys);
  }
  return fleet;
}

const placed = (line: number | null, path: string, must: string): string =>
  `in its ${line === null ? "" : `line ${line}, `}${path === "" ? "text" : path}, ${must}`;

/** Tells mistakes in values that came from the fleet file as the fleet file's. */
export function blameFleet(findings: Finding[], path: string, { file, filled }: FleetCooler): void {
  for (const finding of findings) {
    const key = filled.find(
      (one) => finding.path === `${path}.${one}` || finding.path.startsWith(`${path}.${one}.`),
    );
    if (key === undefined) continue;
    finding.must = `in its cooler ${file.number}, ${finding.path.slice(path.length + 1)}, ${finding.must}`;
    finding.path = "fleet";
  }
}
