import { closeSync, fstatSync, openSync, readSync, realpathSync, statSync } from "node:fs";
import { dirname, isAbsolute, relative, resolve, sep } from "node:path";
import { inputError, systemWords } from "./failure.ts";

/** Most bytes of a trip file or of an hourly file. */
const MOST_BYTES = 2_000_000;
const STDIN = "-";

/** A text file with where it really is; `path` is null for standard input. */
export interface TextFile {
  /** As the person named it. */
  name: string;
  path: string | null;
  text: string;
}

/** Reads the file that a person named; `-` is standard input. It must be UTF-8 text of at most 2 MB. */
export function readNamed(name: string): TextFile {
  if (name === STDIN)
    return { name: "standard input", path: null, text: decode("standard input", readOpen(0, name)) };
  let path: string;
  try {
    path = realpathSync(name);
  } catch (error) {
    throw inputError(name, "", "a file that can be read", systemWords(error));
  }
  return { name, path, text: decode(name, readAt(path, name)) };
}

/**
 * Reads a file that a trip file names. Links are followed first: what it comes to must lie in the trip file's folder
 * or below (for standard input, the working folder).
 *
 * @returns the text, or why not, in words for a list of problems
 */
export function readBeside(
  trip: TextFile | null,
  name: string,
): { text: string; path: string } | { must: string; got: string } {
  const must = "a file in the trip file's folder or below it";
  if (isAbsolute(name) || name.includes("\0")) return { must, got: "a path from the root" };
  const folder = realpathSync(trip?.path ? dirname(trip.path) : process.cwd());
  try {
    const path = realpathSync(resolve(folder, name));
    const inside = relative(folder, path);
    if (inside === ".." || inside.startsWith(`..${sep}`) || isAbsolute(inside))
      return { must, got: "a file outside it" };
    // A pipe would wait for ever.
    if (!statSync(path).isFile()) return { must: "a file", got: "a folder or a device" };
    return { text: decode(name, readAt(path, name)), path };
  } catch (error) {
    const problem = (error as { problems?: readonly { must: string; got: string }[] }).problems?.[0];
    return problem === undefined
      ? { must: "a file that can be read", got: systemWords(error) }
      : { must: problem.must, got: problem.got };
  }
}

function readAt(path: string, name: string): Buffer {
  let file: number;
  try {
    file = openSync(path, "r");
  } catch (error) {
    throw inputError(name, "", "a file that can be read", systemWords(error));
  }
  try {
    if (fstatSync(file).isDirectory()) throw inputError(name, "", "a file", "a folder");
    return readOpen(file, name);
  } finally {
    closeSync(file);
  }
}

/** Reads to the end, or until it is too much: a pipe or a device has no size to ask for. */
function readOpen(file: number, name: string): Buffer {
  const parts: Buffer[] = [];
  let total = 0;
  for (;;) {
    const part = Buffer.alloc(65_536);
    const count = readSome(file, part, name);
    if (count === 0) return Buffer.concat(parts);
    total += count;
    if (total > MOST_BYTES) throw inputError(name, "", "a file of at most 2 MB", "a larger one");
    parts.push(part.subarray(0, count));
  }
}

function readSome(file: number, into: Buffer, name: string): number {
  try {
    return readSync(file, into);
  } catch (error) {
    const code = (error as { code?: string }).code;
    if (code === "EOF") return 0;
    if (code === "EAGAIN") {
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
      return readSome(file, into, name);
    }
    throw inputError(name, "", "a file that can be read", systemWords(error));
  }
}

function decode(name: string, bytes: Buffer): string {
  if (bytes.includes(0))
    throw inputError(name, "", "text in UTF-8", "bytes that are not text, or text in UTF-16");
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw inputError(name, "", "text in UTF-8", "text in another encoding: save it as UTF-8");
  }
}
