import type { Band } from "../../forecast/result.ts";
import { durationWords, isPoint } from "../words.ts";

/** How long something takes, with its range: "14 h (10 h to 20 h)"; an end that the trip does not reach is "longer than the trip". */
export function lastingWords(band: Band): string {
  const end = (hours: number | null): string =>
    hours === null ? "longer than the trip" : durationWords(roundedTo(Math.max(0, hours)));
  if (isPoint(band)) return end(band.p50);
  const [from, to] = [end(band.p10), end(band.p90)];
  return from === to ? end(band.p50) : `${end(band.p50)} (${from} to ${to})`;
}

/** Below two hours to five minutes, below ten to the half hour, then to the hour. */
function roundedTo(hours: number): number {
  const step = hours < 2 ? 1 / 12 : hours < 10 ? 0.5 : 1;
  return Math.ceil(hours / step - 1e-6) * step;
}
