import type { Trip } from "../trip/types.ts";
import type { Mark } from "./types.ts";

const hour_s = 3600;

function eventMarks(trip: Trip): Mark[] {
  const name = (i: number): string => trip.coolers[i].name;
  return trip.events.flatMap((event): Mark[] => {
    const t_h = event.t_s / hour_s;
    if (event.do === "merge")
      return [
        { t_h, cooler: name(event.from), what: "merge", words: `merged into ${name(event.into)}` },
        { t_h, cooler: name(event.into), what: "merge", words: `${name(event.from)} merged in` },
      ];
    if (event.do === "move") return [{ t_h, cooler: name(event.cooler), what: "move", words: event.place }];
    if (event.do === "open") return [{ t_h, cooler: name(event.cooler), what: "open", words: "open" }];
    if (event.do === "drain") return [{ t_h, cooler: name(event.cooler), what: "drain", words: "drained" }];
    if (event.do === "cover") return [{ t_h, cooler: name(event.cooler), what: "cover", words: event.cover }];
    if (event.do === "take out") {
      const item = trip.food.find(({ id }) => id === event.item)!;
      if (item.cooler !== null)
        return [{ t_h, cooler: name(item.cooler), what: "take out", words: item.name }];
    }
    return [];
  });
}

/** What happens to each cooler, for pictures: meals taken out, things put in, ice added, moves with the place's word. */
export function marksOf(trip: Trip): Mark[] {
  const marks = eventMarks(trip);
  for (const item of trip.food) {
    if (item.cooler === null) continue;
    const cooler = trip.coolers[item.cooler].name;
    if (item.putIn_s !== null)
      marks.push({ t_h: item.putIn_s / hour_s, cooler, what: "put in", words: item.name });
    if (item.eat_s !== null)
      marks.push({ t_h: item.eat_s / hour_s, cooler, what: "take out", words: item.name });
  }
  for (const ice of trip.ice)
    if (ice.putIn_s !== null)
      marks.push({
        t_h: ice.putIn_s / hour_s,
        cooler: trip.coolers[ice.cooler].name,
        what: "add ice",
        words: `${ice.pieces} × ${ice.each}`,
      });
  for (const leg of trip.legs)
    if (leg.from_s > 0)
      for (const cooler of trip.coolers)
        marks.push({ t_h: leg.from_s / hour_s, cooler: cooler.name, what: "move", words: leg.place });
  return marks.sort((a, b) => a.t_h - b.t_h);
}

/** Stretches with the sun down, hours, within the trip; all of it in a polar night. */
export function nightSpans_h(trip: Trip): [number, number][] {
  const end_s = trip.duration_s;
  const { rise_s, set_s } = trip.weather.sunTimes(0, end_s);
  const turns = [...rise_s.map((t) => ({ t, night: false })), ...set_s.map((t) => ({ t, night: true }))];
  const nights: [number, number][] = [];
  let from: number | null = trip.weather.at(0).sunHeight_deg < 0 ? 0 : null;
  for (const { t, night } of turns.sort((a, b) => a.t - b.t)) {
    if (night) from ??= t;
    else if (from !== null) {
      if (t > from) nights.push([from / hour_s, t / hour_s]);
      from = null;
    }
  }
  if (from !== null && end_s > from) nights.push([from / hour_s, end_s / hour_s]);
  return nights;
}
