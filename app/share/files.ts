import { plan } from "../plan.svelte.ts";
import { table } from "../trip.svelte.ts";
import { reckon } from "../worker/hand.ts";
import { FileRefused } from "./refused.ts";
import { saveBlob } from "./save.ts";

/** A file of this size holds no trip. The reader's own bound is lower; this one keeps a page from choking on the text. */
const MOST_BYTES = 8_000_000;

export const keepTripFile = (): void =>
  saveBlob(`${table.desk.title}.coldstow.yaml`, new Blob([table.desk.text], { type: "application/yaml" }));

export function keepPlannedFile(): void {
  if (plan.view === null) return;
  saveBlob(
    `${table.desk.title}.planned.coldstow.yaml`,
    new Blob([plan.view.file], { type: "application/yaml" }),
  );
}

export async function keepCalendar(): Promise<void> {
  const text = await reckon<"calendar">({ do: "calendar", now_s: Math.floor(Date.now() / 1000) });
  saveBlob(`${table.desk.title}.ics`, new Blob([text], { type: "text/calendar" }));
}

/** The trip book as one HTML document, black on white, that holds no script. */
export function bookText(): Promise<string> {
  const { units } = table;
  const made = new Intl.DateTimeFormat("en-CA", { dateStyle: "short" }).format(new Date());
  return reckon<"book">({ do: "book", units, paper: units === "us" ? "Letter" : "A4", made });
}

/**
 * The text of a trip file.
 *
 * @throws FileRefused for what cannot be a trip file; mistakes in one are told by the trip itself
 */
export async function tripTextOf(file: File): Promise<string> {
  if (file.size > MOST_BYTES)
    throw new FileRefused(
      `${file.name} has ${(file.size / 1e6).toFixed(1)} MB; a trip file has at most 2 MB. Nothing was changed.`,
    );
  const text = await file.text();
  if (text.includes("\0")) throw new FileRefused(`${file.name} is no text file. Nothing was changed.`);
  return text;
}

/** All trips that are kept, as one file. */
export function keepEverything(): void {
  const trips = table.kept.map(({ id, text, ticks, changed_ms }) => ({ id, text, ticks, changed_ms }));
  const all = JSON.stringify({ "coldstow-trips": 1, trips }, null, 1);
  saveBlob("coldstow-trips.json", new Blob([all], { type: "application/json" }));
}
