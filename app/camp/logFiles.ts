import { saveBlob } from "../share/save.ts";
import { camp } from "./log.svelte.ts";

/** A log file is far smaller; more is no log. */
const MOST_BYTES = 4_000_000;

/** Saves the whole log as a file that a person can read. */
export async function keepLogFile(): Promise<void> {
  const title = camp.facts?.title ?? "trip";
  saveBlob(`${title}.log.coldstow.yaml`, new Blob([await camp.asText()], { type: "application/yaml" }));
}

/** The text of a log file; null: it cannot be one. */
export async function logTextOf(file: File): Promise<string | null> {
  if (file.size > MOST_BYTES) return null;
  const text = await file.text();
  return text.includes("\0") ? null : text;
}
