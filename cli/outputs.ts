import { type Forecast, noPaint, type Paint } from "../core/index.ts";
import type { Flags } from "./flags.ts";
import type { OpenTrip } from "./openTrip.ts";
import { pictures } from "./pictures.ts";
import { note } from "./speak.ts";
import { writeFolder } from "./writeFolder.ts";

/**
 * With `--out`, writes the text, the result and the pictures into that folder, beside `more`. Files that the trip file
 * names go along with a planned trip, so that it can be read where it lies.
 */
export function keepOutputs(
  flags: Flags,
  open: OpenTrip,
  forecast: Forecast,
  text: (width: number, colour: Paint) => string,
  planned: ReadonlyMap<string, string> = new Map(),
): void {
  if (flags.out === undefined) return;
  const copies = new Map(
    planned.size === 0 ? [] : [...open.beside].map(([name, { text }]) => [name, text] as const),
  );
  const files = new Map([
    ["forecast.txt", text(80, noPaint)],
    ["result.json", `${JSON.stringify(forecast.result, null, 2)}\n`],
    ...pictures(forecast, open.units),
    ...planned,
  ]);
  const read = [
    ...(open.file.path === null ? [] : [open.file.path]),
    ...[...open.beside.values()].map(({ path }) => path),
  ];
  const paths = writeFolder(flags.out, files, read, copies);
  note(flags, `Wrote ${paths.length} files into ${flags.out}.`);
}
