import { parse } from "yaml";
import {
  editedTrip,
  foods,
  localInstant_ms,
  mealMoments,
  readMenuCsv,
  readTrip,
  type Trip,
  unitsOf,
  withMenu,
} from "../../core/index.ts";
import type { Asked, DeskAsk, MenuOnDesk, Said, TripOnDesk } from "./asks.ts";
import type { LogAsk } from "./logAsks.ts";
import { logAnswer } from "./logDesk.ts";

// Reads and edits trip files, so that neither YAML nor the checks of it are loaded by the page itself.
declare const self: DedicatedWorkerGlobalScope;

self.addEventListener("message", ({ data: { id, ask } }: MessageEvent<Asked<DeskAsk | LogAsk>>) => {
  try {
    const answer = isOfLog(ask) ? logAnswer(ask) : answered(ask);
    self.postMessage({ id, answer } satisfies Said);
  } catch (error) {
    self.postMessage({ id, fault: String(error) } satisfies Said);
  }
});

const isOfLog = (ask: DeskAsk | LogAsk): ask is LogAsk =>
  ask.do === "log" || ask.do === "join" || ask.do === "writeLog";

function answered(ask: DeskAsk): TripOnDesk | MenuOnDesk | readonly string[] {
  if (ask.do === "foods") return Object.keys(foods).sort();
  if (ask.do === "menu") return menuOnDesk(ask.text, ask.menu);
  return onDesk(ask.do === "edit" ? editedTrip(ask.text, ask.edits) : ask.text);
}

function onDesk(text: string): TripOnDesk {
  const reading = readTrip(text, { file: "trip" });
  const units = unitsOf(text);
  if (reading.ok) return { text, typed: reading.trip.typed, units, problems: [], ...factsOf(reading.trip) };
  const typed = typedOf(text);
  const title = (typed as { title?: unknown } | null)?.title;
  return {
    text,
    typed,
    units,
    title: typeof title === "string" ? title : "Trip",
    problems: reading.problems,
    assumed: [],
    hours: null,
    meals: null,
    span_ms: null,
  };
}

/** A food as its row in the trip file says it, name first. */
function foodSaid(food: object): string {
  const parts = Object.entries(food).filter(([key]) => key !== "name");
  return parts.map(([key, value]) => `${key} ${Array.isArray(value) ? value.join(", ") : value}`).join(" · ");
}

function menuOnDesk(text: string, menu: string): MenuOnDesk {
  const depart = (typedOf(text) as { depart?: unknown } | null)?.depart;
  const reading = readMenuCsv(menu, typeof depart === "string" ? { depart } : {});
  const guessed = new Set(
    reading.foods.flatMap(({ line, food, guesses }) => guesses.map((one) => `${line} ${food.name}: ${one}`)),
  );
  return {
    foods: reading.foods.map(({ line, food, guesses }) => ({
      line,
      name: food.name,
      says: foodSaid(food),
      guesses,
    })),
    notes: reading.notes.filter(({ line, says }) => !guessed.has(`${line} ${says}`)),
    problems: reading.problems,
    added: reading.foods.length === 0 ? null : withMenu(text, reading.foods),
  };
}

function factsOf(trip: Trip): Pick<TripOnDesk, "title" | "assumed" | "hours" | "meals" | "span_ms"> {
  const { timezone } = trip.place;
  const from_ms = localInstant_ms(trip.depart, timezone);
  return {
    title: trip.title,
    assumed: trip.assumed,
    hours: trip.duration_s / 3600,
    meals: mealMoments(trip).length,
    span_ms: [from_ms, from_ms + trip.duration_s * 1000],
  };
}

/** What a form can still show of a file with mistakes. */
function typedOf(text: string): unknown {
  try {
    return parse(text, { uniqueKeys: false });
  } catch {
    return null;
  }
}
