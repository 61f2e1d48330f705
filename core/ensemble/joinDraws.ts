import { DomainError } from "../quantity/errors.ts";
import { joinBins } from "./seriesBins.ts";
import type { CoolerSeriesBins, Draws } from "./types.ts";

type Columns<T> = { [K in keyof T]: Float64Array };

function joined<T extends Columns<T>>(parts: readonly T[], nMembers: number): T {
  const out: Record<string, Float64Array> = {};
  for (const key of Object.keys(parts[0]!) as (keyof T & string)[]) {
    const column = new Float64Array(nMembers);
    let at = 0;
    for (const part of parts) {
      column.set(part[key], at);
      at += part[key].length;
    }
    out[key] = column;
  }
  return out as T;
}

function seriesOf(parts: readonly CoolerSeriesBins[]): CoolerSeriesBins {
  const of = (key: keyof CoolerSeriesBins): CoolerSeriesBins[typeof key] =>
    joinBins(parts.map((part) => part[key]));
  return {
    air_C: of("air_C"),
    ice_kg: of("ice_kg"),
    dryIce_kg: of("dryIce_kg"),
    water_L: of("water_L"),
    warmestPerishable_C: of("warmestPerishable_C"),
  };
}

/**
 * Puts stretches of members together, in the order of the members; it is the same as if one had run them all.
 *
 * @throws DomainError when a stretch is missing or comes twice
 */
export function joinDraws(parts: readonly Draws[]): Draws {
  const [first] = parts;
  if (first === undefined) throw new DomainError("parts must hold at least one stretch, got none");
  let to = first.from;
  for (const part of parts) {
    if (part.from !== to) throw new DomainError(`a stretch must begin with member ${to}, got ${part.from}`);
    to = part.to;
  }
  const n = to - first.from;
  return {
    from: first.from,
    to,
    coolers: first.coolers.map((_, i) =>
      joined(
        parts.map((part) => part.coolers[i]!),
        n,
      ),
    ),
    food: first.food.map((_, i) =>
      joined(
        parts.map((part) => part.food[i]!),
        n,
      ),
    ),
    series:
      first.series === null
        ? null
        : first.series.map((_, i) => seriesOf(parts.map((part) => part.series![i]!))),
  };
}
