import { shownText, valueAt } from "./typed.ts";

const listWords: Readonly<Record<string, string>> = {
  coolers: "cooler",
  events: "event",
  food: "food",
  ice: "ice",
  legs: "stay",
  supply: "supply",
};

/** What a row of a list is called by. */
function rowName(typed: unknown, list: string, place: number): string {
  const row = valueAt(typed, `${list}[${place}]`);
  for (const key of ["name", "where", "do", "form"]) {
    const text = shownText(valueAt(row, key));
    if (text !== null && text !== "") return text;
  }
  return `${listWords[list] ?? list} ${place + 1}`;
}

/** A path of the trip file as a person says it: `food[2].thick` is "hot dogs: thick". */
export function pathWords(typed: unknown, path: string): string {
  const days = /^weather\.days\[(\d+)\]\.?(.*)$/.exec(path);
  if (days !== null) return `weather of day ${Number(days[1]) + 1}${days[2] === "" ? "" : `: ${days[2]}`}`;
  const row = /^(\w[\w ]*)\[(\d+)\]\.?(.*)$/.exec(path);
  if (row === null) return path.replaceAll(".", ": ");
  const [, list, place, rest] = row;
  const name = rowName(typed, list!, Number(place));
  return rest === "" ? name : `${name}: ${rest!.replaceAll(".", " ")}`;
}
