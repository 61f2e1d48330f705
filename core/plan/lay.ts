import type { IceForm, LayerWish } from "../cooler/types.ts";
import type { TripIce } from "../trip/types.ts";

/**
 * How ice that keeps its shape lies in a cooler: each form where it usually does, between the food, half below and half
 * above it, or above it. Loose ice runs into the gaps in any of them.
 */
export type Lay = "usual" | "among" | "split" | "top";

/** In the order of trying: of two that need as much, the earlier is taken. */
const LAYS: readonly Lay[] = ["usual", "among", "split", "top"];

const isLoose = (form: IceForm): boolean => form === "cube" || form === "crushed";

/** Lays that differ for these forms; the usual one alone where all of it is loose. */
export function laysFor(forms: readonly IceForm[]): Lay[] {
  const seen = new Set<string>();
  return LAYS.filter((lay) => {
    const key = forms.map((form) => layersOf(form, lay).join("+")).join(" ");
    return seen.size < seen.add(key).size;
  });
}

/** Layers over which pieces of a form are dealt out, the first getting the odd one. Common practice. */
export function layersOf(form: IceForm, lay: Lay): LayerWish[] {
  if (isLoose(form) || lay === "among") return ["fill"];
  if (lay === "split") return ["base", "top"];
  if (lay === "top") return ["top"];
  return form === "block" || form === "jug" ? ["base"] : ["top"];
}

const NOUNS: Readonly<Partial<Record<IceForm, string>>> = {
  block: "blocks",
  jug: "jugs",
  "gel pack": "packs",
  "eutectic pack": "packs",
};

const PLACES: Readonly<Record<Exclude<Lay, "usual">, string>> = {
  among: "among the food",
  split: "half at the base and half on top of the food",
  top: "on top of the food",
};

/** "jugs among the food"; null where everything lies as usual. */
export function layWords(ice: readonly TripIce[], lay: Lay): string | null {
  const moved = ice.filter(({ form, layer }) => layersOf(form, "usual")[0] !== layer);
  if (lay === "usual" || moved.length === 0) return null;
  const nouns = new Set(moved.map(({ form }) => NOUNS[form] ?? form));
  return `${[...nouns].join(" and ")} ${PLACES[lay]}`;
}
