import { localTime, momentWords, nameWords, printable, spanWords } from "../words.ts";
import type { CoolerStripData, StripRow } from "./coolerStripData.ts";

/** The strip in words: a sentence a cooler in the title, everything that happens in the description. */
export function stripAlt(data: CoolerStripData): { title: string; desc: string } {
  const { clock, middle } = data;
  const title = data.rows.map((row) => {
    const ice = row.hasIce ? `ice ${spanWords(row.iceOut_h, clock, middle)}` : "no ice put in";
    const until =
      row.emptied === null
        ? ""
        : `, emptied into ${printable(row.emptied.into)} ${momentWords(row.emptied.t_h, clock)}`;
    return `${printable(row.cooler)}: ${ice}${until}.`;
  });
  const places = data.places.map(({ from_h, place }) => `${place} from ${momentWords(from_h, clock)}`);
  const where = places.length === 0 ? [] : [`Everything stands in: ${places.join("; ")}.`];
  return {
    title: title.join(" "),
    desc: [...data.rows.map((row) => rowWords(row, data)), ...where].join(" "),
  };
}

function rowWords({ cooler, sealed_h, marks, dinners, drains_h }: StripRow, data: CoolerStripData): string {
  const { clock } = data;
  const said = [
    ...(sealed_h === null ? [] : [`stays shut until ${momentWords(sealed_h, clock)}`]),
    ...marks.map(({ what, words, t_h }) => `${what} ${printable(words)}, ${momentWords(t_h, clock)}`),
    ...dinners.map(({ words, t_h }) => `dinner ${printable(words)}, ${momentWords(t_h, clock)}`),
  ];
  if (drains_h.length > 0) {
    const days = drains_h.map((t_h) => String(localTime(t_h, clock).day));
    said.push(`let the water out on day ${nameWords(days, days.length)}`);
  }
  return `${printable(cooler)}: ${said.length === 0 ? "nothing is done to it" : said.join("; ")}.`;
}
