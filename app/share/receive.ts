import { freshTrip, type KeptTrip, keepTrip } from "../offline/store.ts";
import { plan } from "../plan.svelte.ts";
import { table } from "../trip.svelte.ts";
import { readOnDesk } from "../worker/hand.ts";
import { FileRefused } from "./refused.ts";

interface SentTrip {
  id: string;
  text: string;
  ticks: string[];
  changed_ms: number;
}

/**
 * Takes what came in a file: one trip, which is opened beside those that are there, or all trips of another device, of
 * which the one changed last stays where both have it. It says in a sentence what was done.
 *
 * @throws FileRefused where it is neither; nothing was changed then
 */
export async function receive(text: string, name: string): Promise<string> {
  const all = sentTrips(text, name);
  if (all !== null) return receiveAll(all);
  const { typed, problems, title } = await readOnDesk(text);
  if (typeof typed !== "object" || typed === null || Array.isArray(typed)) {
    const why = problems[0];
    throw new FileRefused(
      `${name} is no trip file${why === undefined ? "" : `: it must be ${why.must}`}. Nothing was changed.`,
    );
  }
  plan.clear();
  await table.take(text);
  const mend = problems.length === 0 ? "" : ` ${problems.length} things in it have to be mended.`;
  return `${title} is open now, beside the trips that you had.${mend}`;
}

/** All trips of a device; null: the text is something else. */
function sentTrips(text: string, name: string): SentTrip[] | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof parsed !== "object" || parsed === null || !("coldstow-trips" in parsed)) return null;
  const { "coldstow-trips": version, trips } = parsed as { "coldstow-trips": unknown; trips?: unknown };
  if (version !== 1)
    throw new FileRefused(
      `${name} has the trips in version ${String(version)}; this app knows version 1. Update it, then open the file again. Nothing was changed.`,
    );
  if (!Array.isArray(trips) || !trips.every(isTrip))
    throw new FileRefused(`${name} is damaged: not every trip in it can be read. Nothing was changed.`);
  return trips;
}

function isTrip(one: unknown): one is SentTrip {
  if (typeof one !== "object" || one === null) return false;
  const { id, text, ticks, changed_ms } = one as Record<string, unknown>;
  const isText = typeof id === "string" && id.length <= 100 && typeof text === "string";
  return (
    isText &&
    typeof changed_ms === "number" &&
    Array.isArray(ticks) &&
    ticks.every((tick) => typeof tick === "string")
  );
}

/** What was here becomes the step that undo leads to. */
async function keepOver({ rev, past: { from, here }, text }: KeptTrip, next: KeptTrip): Promise<void> {
  const past = { from, here: here + 1, to: here + 1 };
  await keepTrip({ ...next, rev, past }, new Map([[here, text]]));
}

async function receiveAll(trips: readonly SentTrip[]): Promise<string> {
  let taken = 0;
  for (const { id, text, ticks, changed_ms } of trips) {
    const own = table.kept.find((kept) => kept.id === id);
    if (own !== undefined && own.changed_ms >= changed_ms) continue;
    const { title } = await readOnDesk(text);
    const next = freshTrip({ id, title, text, ticks, changed_ms });
    await (own === undefined ? keepTrip(next) : keepOver(own, next));
    taken++;
  }
  await table.reload();
  const left = trips.length - taken;
  return `${taken} of ${trips.length} trips taken in${left === 0 ? "" : `; ${left} were here already, as new or newer`}.`;
}
