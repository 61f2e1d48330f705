import type { Assignment } from "../../forecast/planResult.ts";
import type { Warning } from "../../forecast/result.ts";
import { massWords } from "../../quantity/show.ts";
import { dayAt } from "../moment.ts";
import { dryBox, type Lump, needsNoCold } from "./lumps.ts";
import { shutOf } from "./placed.ts";
import type { Answer } from "./program.ts";
import { mostLifted_kg, type Task } from "./task.ts";
import { eachLifts_kg } from "./weights.ts";

const dryWords = "dry box";

/** What lies in a cooler by an answer. */
const within = (task: Task, answer: Answer, cooler: number): Lump[] =>
  task.lumps.filter((_, i) => answer.place[i] === cooler);

/** When a cooler is opened for the first time: as the file says, or as planned; null: no seal. */
function shutUntil_s(task: Task, answer: Answer, cooler: number): number | null {
  const planned = shutOf(task, answer);
  return planned?.cooler === cooler ? planned.until_s : task.trip.coolers[cooler]!.sealedUntil_s;
}

function dryWhy(task: Task, lump: Lump): string {
  if (lump.items.every((item) => needsNoCold(task.trip.food[item]!))) return "needs no cold";
  return "no cooler has room for it: it does not spoil, but it will be warm";
}

function ruleWhy(lump: Lump): string {
  if (lump.freezesBadly)
    return "no cooler is right for it; mind the seal, and keep it off ice that freezes it";
  return "no cooler is right for it: it is eaten before a seal ends, or none holds its kind";
}

function coolWhy(task: Task, answer: Answer, lump: Lump, cooler: number): string {
  const { trip } = task;
  const lots = within(task, answer, cooler);
  const lastDay = dayAt(trip, lump.lastEaten_s);
  const until_s = shutUntil_s(task, answer, cooler);
  if (lump.ruleBroken) return ruleWhy(lump);
  if (lump.drink && lots.some((one) => !one.drink))
    return "drinks beside food: nowhere else has room or is cheaper";
  if (lump.drink) return "drinks: their lid opens often, so they lie apart from the food";
  const first = `eaten on day ${dayAt(trip, lump.firstEaten_s)}`;
  const shut = until_s !== null ? `; ${first}: in the cooler that stays shut till then` : "";
  if (lump.raw && lots.some(({ ready }) => ready))
    return `raw beside what is eaten as it is: no cooler for itself; lowest, and leak-proof${shut}`;
  if (lump.raw) return `raw: kept away from what is eaten as it is${shut}`;
  if (until_s !== null) return shut.slice(2);
  if (lump.frozen && lots.filter(({ frozen }) => frozen).length > 1)
    return "frozen: with other frozen food, which keeps it frozen and saves ice";
  const latest = Math.max(...lots.map(({ lastEaten_s }) => lastEaten_s));
  if (dayAt(trip, latest) < trip.duration_s / 86_400 - 0.5)
    return `eaten by day ${lastDay}: in a cooler that is used up by day ${dayAt(trip, latest)}`;
  return `eaten by day ${lastDay}: here the ice for it is least`;
}

/** Where every item goes, in the trip's order, with the reason in plain words. */
export function assignmentsOf(task: Task, answer: Answer): Assignment[] {
  const { trip, lumps } = task;
  const out: Assignment[] = [];
  lumps.forEach((lump, i) => {
    const place = answer.place[i]!;
    for (const [k, index] of lump.items.entries()) {
      const [firstEaten_s, lastEaten_s] = lump.eaten_s[k]!;
      const { freezesBadly } = trip.food[index]!;
      const own: Lump = { ...lump, items: [index], firstEaten_s, lastEaten_s, freezesBadly };
      const why = place === dryBox ? dryWhy(task, own) : coolWhy(task, answer, own, place);
      out[index] = {
        item: trip.food[index]!.name,
        cooler: place === dryBox ? dryWords : trip.coolers[place]!.name,
        why: lump.pinned ? "your file says so" : why,
        pinned: lump.pinned,
      };
    }
  });
  return out;
}

/** Rules that something in the file goes against: it stays where it is. */
function pinWarnings({ trip, lumps }: Task): Warning[] {
  return lumps
    .filter(({ pinned }) => pinned)
    .flatMap((lump) =>
      lump.items.flatMap((index): Warning[] => {
        const item = trip.food[index]!;
        if (item.cooler === null) return [];
        const { holds, name, sealedUntil_s } = trip.coolers[item.cooler]!;
        const isDrink = item.like.kind === "drink";
        const wrongKind = holds !== "any" && (holds === "drinks") !== isDrink;
        const early = sealedUntil_s !== null && item.putIn_s === null && lump.firstEaten_s < sealedUntil_s;
        const against = [
          ...(wrongKind ? [`${name} holds ${holds}`] : []),
          ...(early ? [`it is eaten before ${name} is opened`] : []),
        ];
        const says = `${item.name} stays in ${name}, as the file says, though ${against.join(" and ")}`;
        return against.length === 0 ? [] : [{ code: "pin-against-rule", says, path: item.path }];
      }),
    );
}

/** What one has to know about a cooler of the answer. */
function coolerWarnings(task: Task, answer: Answer, c: number): Warning[] {
  const lots = within(task, answer, c);
  const { name } = task.trip.coolers[c]!;
  const path = `coolers[${c}]`;
  const out: Warning[] = [];
  if (lots.some(({ raw }) => raw) && lots.some(({ ready }) => ready))
    out.push({
      code: "raw-beside-ready",
      says: `${name} has raw food beside what is eaten as it is: raw lowest, in a leak-proof box`,
      path,
    });
  if (lots.some(({ drink }) => drink) && lots.some(({ drink }) => !drink))
    out.push({
      code: "drinks-beside-food",
      says: `${name} has drinks beside food: every drink opens its lid`,
      path,
    });
  if (answer.over_L[c]! > 0)
    out.push({
      code: "does-not-fit",
      says: `${name}: food and the ice that it needs take ${answer.over_L[c]!.toFixed(1)} L (${(answer.over_L[c]! / 0.946352946).toFixed(1)} qt) more than there is room for`,
      path,
    });
  return [...out, ...massWarnings(task, answer, c)];
}

const both = (mass_kg: number): string => `${massWords(mass_kg, "metric")} (${massWords(mass_kg, "us")})`;

/** Ice that has no room, and weight that is too much for those who carry. */
function massWarnings(task: Task, answer: Answer, c: number): Warning[] {
  const lots = within(task, answer, c);
  const { name } = task.trip.coolers[c]!;
  const path = `coolers[${c}]`;
  const out: Warning[] = [];
  const lack_kg = answer.lack_kg[c]!;
  if (lack_kg > 0.5)
    out.push({
      code: "no-room-for-ice",
      says: `${name}: to the end it would take about ${both(lack_kg)} of ice more than there is room for at departure`,
      path,
    });
  const weight_kg =
    task.bins[c]!.empty_kg + answer.ice_kg[c]! + lots.reduce((all, { mass_kg }) => all + mass_kg, 0);
  const most_kg = mostLifted_kg(task.trip);
  if (weight_kg > most_kg)
    out.push({
      code: "heavy-cooler",
      says: `${name} would weigh about ${both(weight_kg)}, more than ${eachLifts_kg} kg for each of those who carry it`,
      path,
    });
  return out;
}

/** Everything about an answer that goes against a rule or a wish. */
export function assignWarnings(task: Task, answer: Answer): Warning[] {
  const broken = task.lumps.filter(({ ruleBroken, pinned }) => ruleBroken && !pinned);
  return [
    ...pinWarnings(task),
    ...broken.flatMap(({ items }) =>
      items.map((index) => {
        const { name, path } = task.trip.food[index]!;
        return {
          code: "no-right-cooler",
          says: `${name}: no cooler of the file is right for it; it goes to the least bad`,
          path,
        };
      }),
    ),
    ...task.bins.flatMap((_, c) => coolerWarnings(task, answer, c)),
  ];
}
