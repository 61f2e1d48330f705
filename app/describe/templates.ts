import { templates as known, type Template } from "../../core/index.ts";
import desertRiver from "../../examples/desert-river.yaml?url";
import familyThreeDays from "../../examples/family-three-days.yaml?url";
import festivalWeekend from "../../examples/festival-weekend.yaml?url";
import lakeTwelve from "../../examples/lake-twelve.yaml?url";

const addresses: Readonly<Record<string, string>> = {
  "desert-river.yaml": desertRiver,
  "family-three-days.yaml": familyThreeDays,
  "festival-weekend.yaml": festivalWeekend,
  "lake-twelve.yaml": lakeTwelve,
};

/** A template that can be opened, offline too. */
export interface OpenTemplate extends Template {
  text: () => Promise<string>;
}

export const templates: readonly OpenTemplate[] = known.map((template) => ({
  ...template,
  text: async () => {
    const answer = await fetch(addresses[template.file]!);
    if (!answer.ok) throw new Error(`status ${answer.status}`);
    return answer.text();
  },
}));

/** A trip with next to nothing in it, three days from tomorrow. */
export function blankTrip(now: Date): string {
  const day = (after: number): string => {
    const date = new Date(now.getFullYear(), now.getMonth(), now.getDate() + after, 12);
    return `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, "0")}-${String(date.getDate()).padStart(2, "0")}`;
  };
  return [
    "coldstow: 1",
    "title: New trip",
    `depart: ${day(1)}T08:00`,
    `return: ${day(3)}T15:00`,
    "party: { adults: 2 }",
    "weather: { days: [ { high: 28 C, low: 15 C } ] }",
    "coolers:",
    "  - { name: cooler, size: 50 L }",
    "food: []",
    "",
  ].join("\n");
}
