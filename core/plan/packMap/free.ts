import type { FloorSize, Put } from "./oneLayer.ts";

interface Free {
  x_m: number;
  y_m: number;
  length_m: number;
  width_m: number;
}

type Span = readonly [from_mm: number, to_mm: number];

/** Stretches across the floor, between two x, that nothing stands on. */
function freeSpans(standing: readonly Put[], from_mm: number, to_mm: number, width_mm: number): Span[] {
  const taken = standing
    .filter(({ x_m, length_m }) => 1000 * x_m < to_mm - 0.5 && 1000 * (x_m + length_m) > from_mm + 0.5)
    .map(({ y_m, width_m }): Span => [Math.round(1000 * y_m), Math.round(1000 * (y_m + width_m))])
    .sort((a, b) => a[0] - b[0]);
  const spans: Span[] = [];
  let at = 0;
  for (const [from, to] of taken) {
    if (from > at) spans.push([at, from]);
    at = Math.max(at, to);
  }
  if (at < width_mm) spans.push([at, width_mm]);
  return spans;
}

/** The floor that boxes leave free, cut into rectangles that do not overlap, from the left. */
export function freeRectangles(standing: readonly Put[], floor: FloorSize): Free[] {
  const [length_mm, width_mm] = [Math.round(1000 * floor.length_m), Math.round(1000 * floor.width_m)];
  const edges = standing.flatMap(({ x_m, length_m }) => [
    Math.round(1000 * x_m),
    Math.round(1000 * (x_m + length_m)),
  ]);
  const cuts = [...new Set([0, ...edges, length_mm])].sort((a, b) => a - b);
  let open = new Map<string, { span: Span; from: number }>();
  const out: Free[] = [];
  const close = ({ span, from }: { span: Span; from: number }, to: number): void => {
    const [y, end] = span;
    out.push({ x_m: from / 1000, y_m: y / 1000, length_m: (to - from) / 1000, width_m: (end - y) / 1000 });
  };
  for (let i = 0; i + 1 < cuts.length; i++) {
    const next: typeof open = new Map();
    for (const span of freeSpans(standing, cuts[i], cuts[i + 1], width_mm)) {
      const key = span.join();
      next.set(key, open.get(key) ?? { span, from: cuts[i] });
      open.delete(key);
    }
    for (const ended of open.values()) close(ended, cuts[i]);
    open = next;
  }
  for (const ended of open.values()) close(ended, length_mm);
  return out;
}
