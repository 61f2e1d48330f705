import { type Forecast, noPaint, type Paint } from "../core/index.ts";
import type { RunFlags } from "./flags.ts";
import type { OpenTrip } from "./openTrip.ts";
import { pictures } from "./pictures.ts";
import { note } from "./speak.ts";
import { writeFolder } from "./writeFolder.ts";

/**
 * With `--out`, writes the text, the result and the pictures into that folder, beside `more`. Files that the trip file
 * names go along with a planned trip, so that it can be read where it lies.
 */
export function keepForecast(
  flags: RunFlags,
  open: OpenTrip,
  forecast: Forecast,
  text: (width: number, colour: Paint) => string,
  planned: ReadonlyMap<string, string> = new Map(),
): void {
  const copies = planned.size === 0 ? [] : [...open.beside].map(([name, { text }]) => [name, text] as const);
  const more = [...pictures(forecast, open.units), ...planned];
  keepFiles(flags, [open], ["forecast.txt", text], forecast.result, more, new Map(copies));
}

/** With `--out`, writes a text, a result and `more` into that folder, and never over what was read. */
export function keepFiles(
  flags: RunFlags,
  opened: readonly OpenTrip[],
  [name, text]: readonly [name: string, text: (width: number, colour: Paint) => string],
  result: unknown,
  more: Iterable<readonly [string, string]>,
  copies: ReadonlyMap<string, string> = new Map(),
): void {
  if (flags.out === undefined) return;
  const files = new Map([
    [name, text(80, noPaint)],
    ["result.json", `${JSON.stringify(result, null, 2)}\n`],
    ...more,
  ]);
  const read = opened.flatMap(({ file, beside }) => [
    ...(file.path === null ? [] : [file.path]),
    ...[...beside.values()].map(({ path }) => path),
  ]);
  const paths = writeFolder(flags.out, files, read, copies);
  note(flags, `Wrote ${paths.length} files into ${flags.out}.`);
}
