/** Hands out the text of a file that lies beside the trip file, or null when there is none. */
export type ReadBeside = (name: string) => string | null;

export const besideWords = "a relative path in the trip file's folder or below, with / between folders";

/** Whether a file name points into the trip file's folder or below, on any system. */
export function staysBeside(name: string): boolean {
  if (/[\\:\p{Cc}]/u.test(name) || name.startsWith("/") || name.startsWith("~")) return false;
  return name
    .split("/")
    .every((part) => part !== "" && part !== "." && part !== ".." && !/^\.\s*\.?\s*$/.test(part));
}
