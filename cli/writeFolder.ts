import { mkdirSync, realpathSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { inputError, systemWords } from "./failure.ts";

/**
 * Writes files into a folder, which is made if need be, and gives their paths. A file that was read in this run is
 * never written over, whatever link or spelling leads to it.
 *
 * @param files name in the folder → text
 * @param read real paths of the files read
 * @param copies files of the person's that go along under the names they use, unless they lie there already
 */
export function writeFolder(
  folder: string,
  files: ReadonlyMap<string, string>,
  read: readonly string[],
  copies: ReadonlyMap<string, string>,
): string[] {
  const inside = [...copies].filter(([name]) => !normalize(name).startsWith(".."));
  const all = new Map([...files, ...inside].map(([name, text]) => [join(folder, name), text]));
  try {
    for (const path of all.keys()) {
      makeFolder(dirname(path));
      if (!read.includes(realPath(path))) continue;
      if (!inside.some(([name]) => join(folder, name) === path))
        throw inputError(path, "--out", "a folder where no file that was read would be overwritten", path);
      all.delete(path);
    }
    for (const [path, text] of all) writeFileSync(path, text);
  } catch (error) {
    if ((error as Error).name === "InputError") throw error;
    const place = (error as { path?: string }).path ?? folder;
    throw inputError(folder, "--out", "a folder that can be written", `${place}: ${systemWords(error)}`);
  }
  return [...all.keys()];
}

/**
 * Makes a folder and those above it, one call each: Node's own recursive one never comes back where the system denies
 * that a folder is there which it lets one look at, as under /proc.
 */
function makeFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  if (dirname(folder) !== folder) makeFolder(dirname(folder));
  try {
    mkdirSync(folder);
  } catch (error) {
    // Somebody else may have made it in between.
    if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) throw error;
  }
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

/**
 * A name fit for a file: letters and digits of any script, everything else a dash, at most 40 characters. Names that
 * come out the same are numbered.
 */
export function fileNames(names: readonly string[]): string[] {
  const used = new Set<string>();
  return names.map((name) => {
    const plain = name
      .normalize("NFC")
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-");
    const short =
      [...plain]
        .slice(0, 40)
        .join("")
        .replace(/^-+|-+$/g, "") || "cooler";
    let found = short;
    for (let n = 2; used.has(found); n++) found = `${short}-${n}`;
    used.add(found);
    return found;
  });
}
