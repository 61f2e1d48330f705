import {
  entryWords,
  type Log,
  localInstant_ms,
  logDiff,
  mealMoments,
  mergeLogs,
  readLog,
  readTrip,
  type Trip,
  type UnitSystem,
  writeLog,
} from "../../core/index.ts";
import type { CampFacts, IceKind, JoinOnDesk, LogAnswers, LogAsk, Logged, LogOnDesk } from "./logAsks.ts";

/** What the desk answers to the Camp place. */
export function logAnswer(ask: LogAsk): LogAnswers[LogAsk["do"]] {
  if (ask.do === "writeLog") return writeLog(ask.log);
  const reading = readTrip(ask.text, { file: "trip" });
  if (!reading.ok && ask.do === "log") return { problems: reading.problems, facts: null, entries: [] };
  if (!reading.ok) return { problems: reading.problems, fresh: [], nClashes: 0, title: null, other: null };
  return ask.do === "log" ? onDesk(reading.trip, ask) : joinOnDesk(reading.trip, ask);
}

function onDesk(trip: Trip, { log, units }: Extract<LogAsk, { do: "log" }>): LogOnDesk {
  const facts = factsOf(trip);
  const reading = readLog(JSON.stringify(log), trip);
  if (!reading.ok) return { problems: reading.problems, facts, entries: [] };
  return { problems: [], facts, entries: shown(reading.log, facts, units) };
}

function shown(log: Log, facts: CampFacts, units: UnitSystem): Logged[] {
  return log.entries.map(({ id, t_s, cooler, file, withdrawnBy }) => ({
    id,
    at_ms: facts.depart_ms + t_s * 1000,
    by: file.by ?? null,
    cooler: cooler === null ? null : facts.coolers[cooler]!,
    says: entryWords(file, units),
    file,
    isWithdrawn: withdrawnBy !== null,
  }));
}

/** The other log is read by itself first, so that a mistake is told with its line. Logs are handed over whole. */
function joinOnDesk(trip: Trip, { log, other, units }: Extract<LogAsk, { do: "join" }>): JoinOnDesk {
  const nothing = { fresh: [], nClashes: 0, title: null, other: null };
  const alone = readLog(other, trip);
  if (!alone.ok) return { ...nothing, problems: alone.problems };
  const merged = mergeLogs(log, alone.file);
  const whole = readLog(JSON.stringify(merged), trip);
  if (!whole.ok) return { ...nothing, problems: whole.problems };
  const { fresh, nClashes } = logDiff(log, alone.file);
  const ids = new Set(fresh.map(({ id }) => id));
  const all = shown(whole.log, factsOf(trip), units);
  return {
    problems: [],
    fresh: all.filter(({ id }) => ids.has(id)),
    nClashes,
    title: alone.file.trip ?? null,
    other: alone.file,
  };
}

function factsOf(trip: Trip): CampFacts {
  const { timezone } = trip.place;
  const depart_ms = localInstant_ms(trip.depart, timezone);
  const typed = trip.typed as { weather?: { days?: { high?: string; low?: string }[] } };
  return {
    title: trip.title,
    timezone,
    depart: trip.depart,
    depart_ms,
    return_ms: depart_ms + trip.duration_s * 1000,
    coolers: trip.coolers.map(({ name }) => name),
    items: trip.food.map(({ name, cooler, like }) => ({
      name,
      cooler: cooler === null ? null : trip.coolers[cooler]!.name,
      like: like.key,
    })),
    ice: iceKinds(trip),
    meals: mealMoments(trip).map(({ t_s, meal, day }) => ({
      name: `day ${day} ${meal}`,
      at_ms: depart_ms + t_s * 1000,
    })),
    shops: [...new Set(trip.supply.flatMap(({ where, when_s }) => (when_s === null ? [] : [where])))],
    days: (typed.weather?.days ?? []).map(({ high, low }) => ({ high: high ?? "", low: low ?? "" })),
  };
}

function iceKinds({ ice, supply }: Trip): IceKind[] {
  const kinds = new Map<string, IceKind>();
  for (const { form, each } of [...supply, ...ice]) {
    const key = `${form} ${each}`;
    if (!kinds.has(key)) kinds.set(key, { form, each });
  }
  return [...kinds.values()];
}
