import type { SeriesBins } from "./types.ts";

/** Says that a member has no value at a moment. */
const none = 0xffff;

/**
 * Room for a series of each member, none of it with a value yet. What is at or below `from` has the first bin to itself, so
 * that "none left" stays exactly none; what is above the last bin is put into it.
 *
 * @param nBins 2…65535
 */
export function makeBins(
  nMoments: number,
  nMembers: number,
  from: number,
  to: number,
  nBins: number,
): SeriesBins {
  const bins = new Uint16Array(nMoments * nMembers).fill(none);
  return { nBins, nMoments, from, width: (to - from) / (nBins - 1), bins };
}

/** Keeps a member's value at a moment; null stays without one. */
export function putInBin(into: SeriesBins, member: number, moment: number, value: number | null): void {
  if (value === null) return;
  const { nBins, nMoments, from, width, bins } = into;
  bins[member * nMoments + moment] =
    value <= from ? 0 : Math.min(nBins - 1, 1 + Math.floor((value - from) / width));
}

/** How many members have each bin at a moment. */
function countsAt({ nBins, nMoments, bins }: SeriesBins, moment: number): Uint32Array {
  const counts = new Uint32Array(nBins);
  for (let i = moment; i < bins.length; i += nMoments) {
    const bin = bins[i]!;
    if (bin !== none) counts[bin]!++;
  }
  return counts;
}

/**
 * Quantiles of the values that there are at a moment, straight within a bin; null where no member has one. Off by no more
 * than a bin.
 */
export function binnedQuantiles(
  of: SeriesBins,
  moment: number,
  shares_frac: readonly number[],
): (number | null)[] {
  const counts = countsAt(of, moment);
  const total = counts.reduce((sum, here) => sum + here, 0);
  return shares_frac.map((p_frac) => (total === 0 ? null : countedQuantile(of, counts, p_frac * total)));
}

function countedQuantile({ nBins, from, width }: SeriesBins, counts: Uint32Array, wanted: number): number {
  let below = 0;
  for (let bin = 0; bin < nBins; bin++) {
    const here = counts[bin]!;
    if (here > 0 && below + here >= wanted)
      return bin === 0 ? from : from + (bin - 1 + (wanted - below) / here) * width;
    below += here;
  }
  return from + (nBins - 1) * width;
}

/** The same series of further members, one stretch after the other. */
export function joinBins(parts: readonly SeriesBins[]): SeriesBins {
  const bins = new Uint16Array(parts.reduce((sum, part) => sum + part.bins.length, 0));
  let at = 0;
  for (const part of parts) {
    bins.set(part.bins, at);
    at += part.bins.length;
  }
  return { ...parts[0]!, bins };
}
