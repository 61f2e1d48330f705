/** What the least is counted in. */
export type Aim = "pieces" | "weight" | "cost";

/** Whether an amount of ice does its work. More ice turns `short` into `holds`, and in the end into `over`. */
export type Outcome = "holds" | "short" | "over";

/** One kind of piece that can be had. */
export interface Choice {
  each_kg: number;
  /** null: not known, dearer than any that is. */
  price: number | null;
  /** Most pieces worth asking about. */
  max: number;
}

type Ask = (counts: readonly number[]) => Outcome;

/**
 * The least counts of pieces that hold: of one kind, or of two kinds mixed; null where nothing holds. It rests on one
 * law, that a piece more never makes ice hold for less time, so it bisects single kinds and walks down the staircase
 * between every two. Three kinds at once are not tried. Ties go to less weight, then to the kind named first.
 *
 * Of what it returns, no single piece can be left out: that is asked at the end, and does not rest on the law.
 *
 * @param options.budget most questions to ask, 150 if left out; past it the best answer so far stands
 * @param options.knownCount pieces of each kind known to hold otherwise: only less than that is an answer
 */
export function leastPieces(
  choices: readonly Choice[],
  aim: Aim,
  ask: Ask,
  options: { budget?: number; knownCount?: readonly number[] | null } = {},
): readonly number[] | null {
  const known = options.knownCount ?? null;
  const search = new Search(choices, aim, ask, options.budget ?? 150, known);
  if (search.try(choices.map(() => 0)) === "holds") return search.best;
  const single = choices.map((_, i) => search.bisect(i));
  for (let a = 0; a < choices.length; a++)
    for (let b = a + 1; b < choices.length; b++) search.walk(a, b, single[a]!, single[b]!);
  search.leaveOut();
  return search.best === known ? null : search.best;
}

class Search {
  best: readonly number[] | null;
  readonly #choices: readonly Choice[];
  readonly #aim: Aim;
  readonly #ask: Ask;
  readonly #known: Map<string, Outcome> = new Map();
  #left: number;

  constructor(
    choices: readonly Choice[],
    aim: Aim,
    ask: Ask,
    budget: number,
    known: readonly number[] | null,
  ) {
    this.best = known;
    this.#choices = choices;
    this.#aim = aim;
    this.#ask = ask;
    this.#left = budget;
  }

  /** Asks once about each mix, and keeps the least that holds. */
  try(counts: readonly number[]): Outcome {
    const key = counts.join(" ");
    let outcome = this.#known.get(key);
    if (outcome === undefined) {
      this.#left--;
      outcome = this.#ask(counts);
      this.#known.set(key, outcome);
    }
    if (outcome === "holds" && this.#better(counts)) this.best = [...counts];
    return outcome;
  }

  /** The least of one kind that is not short, or not less than the best; past its `max` where that is still short. */
  bisect(kind: number): number {
    let short = 0;
    let enough = this.#choices[kind]!.max + 1;
    while (enough - short > 1 && this.#left > 0) {
      const middle = short + Math.ceil((enough - short) / 2);
      if (middle > this.#choices[kind]!.max) break;
      const counts = this.#mix([kind, middle]);
      if (this.#better(counts) && this.try(counts) === "short") short = middle;
      else enough = middle;
    }
    return enough;
  }

  walk(a: number, b: number, aAlone: number, bAlone: number): void {
    let nA = 1;
    let nB = Math.min(bAlone - 1, this.#choices[b]!.max);
    const lastA = Math.min(aAlone - 1, this.#choices[a]!.max);
    while (nA <= lastA && nB >= 1 && this.#left > 0) {
      const counts = this.#mix([a, nA], [b, nB]);
      if (!this.#better(counts)) nB--;
      else if (this.try(counts) === "short") nA++;
      else nB--;
    }
  }

  /** Leaves out single pieces as long as the rest holds. */
  leaveOut(): void {
    for (let kind = 0; kind < this.#choices.length; kind++) {
      const counts = this.best;
      if (counts === null || counts[kind] === 0) continue;
      const fewer = counts.map((count, i) => (i === kind ? count - 1 : count));
      if (this.try(fewer) === "holds") kind = -1;
    }
  }

  #mix(...parts: readonly (readonly [number, number])[]): number[] {
    const counts = this.#choices.map(() => 0);
    for (const [kind, count] of parts) counts[kind] = count;
    return counts;
  }

  #better(counts: readonly number[]): boolean {
    if (this.best === null) return true;
    const [one, other] = [this.#worth(counts), this.#worth(this.best)];
    const differs = one.findIndex((value, i) => Math.abs(value - other[i]!) > 1e-9);
    return differs >= 0 && one[differs]! < other[differs]!;
  }

  /** In order of weight in the comparison. Every piece adds to it, so fewer of the same is always better. */
  #worth(counts: readonly number[]): number[] {
    let pieces = 0;
    let weight_kg = 0;
    let cost = 0;
    let unpriced = 0;
    for (const [i, count] of counts.entries()) {
      const { each_kg, price } = this.#choices[i]!;
      pieces += count;
      weight_kg += count * each_kg;
      cost += count * (price ?? 0);
      if (price === null) unpriced += count;
    }
    if (this.#aim === "weight") return [weight_kg, pieces, unpriced, cost];
    if (this.#aim === "cost") return [unpriced, cost, weight_kg, pieces];
    return [pieces, weight_kg, unpriced, cost];
  }
}
