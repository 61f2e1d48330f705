import { writeFileSync } from "node:fs";
import { inputError, systemWords } from "./failure.ts";

/** Writes a text into a file that is not there yet; with `force` over one that is. */
export function writeFile(path: string, text: string, force: boolean): void {
  try {
    writeFileSync(path, text, { flag: force ? "w" : "wx" });
  } catch (error) {
    const isThere = (error as { code?: string }).code === "EEXIST";
    const must = isThere ? "a file that is not there yet, or --force" : "a file that can be written";
    throw inputError(path, "--out", must, isThere ? "one that is" : systemWords(error));
  }
}
