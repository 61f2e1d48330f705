import type { PackLayer, PackPlace } from "../../forecast/planResult.ts";
import type { TripCooler } from "../../trip/types.ts";
import { type LayerItem, layerItems } from "../packWords.ts";
import { packBox, wordIn } from "./packMarks.ts";
import { box, words, wrapped } from "./svg.ts";

type Inside = TripCooler["body"]["inside"];

/** One layer seen from above, with letters and what they stand for. */
export function packPlan(
  layer: PackLayer,
  inside: Inside,
  [x, y, width]: readonly [number, number, number],
  id: string,
): { svg: string; height: number } {
  const scale = width / inside.length_m;
  const top = y + 20;
  const deep = inside.width_m * scale;
  const items = layerItems(layer).filter(({ kind }) => kind !== "loose ice");
  const key = items.flatMap((item, i) =>
    wrapped(`${letter(i)} ${item.says}${under(item, layer)}`, width, 12, 2),
  );
  const isLoose = ({ kind }: PackPlace): boolean => kind === "loose ice";
  const firm = layer.places.filter((place) => !isLoose(place)).sort((a, b) => a.z_m - b.z_m);
  const places = [...layer.places.filter(isLoose), ...firm].map((place) =>
    packBox(place, frameOf(place, [x, top + deep], scale), id),
  );
  const letters = firm
    .filter((place) => !isCovered(place, layer))
    .map((place) => {
      const i = items.findIndex(({ item, kind }) => item === place.item && kind === place.kind);
      return wordIn(letter(i), frameOf(place, [x, top + deep], scale));
    });
  const svg = [
    words(`${layer.layer + 1} from above`, x, y + 13, { bold: true }),
    ...places,
    ...letters,
    box(x, top, x + width, top + deep, "none", "ink", 2).replace("var(--none)", "none"),
    ...key.map((text, i) => words(text, x, top + deep + 16 + i * 15)),
  ];
  return { svg: svg.join(""), height: 20 + deep + 10 + key.length * 15 };
}

const letter = (i: number): string =>
  String.fromCharCode(97 + (i % 26)) + (i < 26 ? "" : String(Math.floor(i / 26)));

/** Front edges are down: `corner` is the left front corner of the inside. */
function frameOf(
  { x_m, y_m, length_m, width_m }: PackPlace,
  [x, y]: readonly [number, number],
  scale: number,
): readonly [number, number, number, number] {
  const left = x + x_m * scale;
  const bottom = y - y_m * scale;
  return [left, bottom - width_m * scale, left + length_m * scale, bottom];
}

/** True where something lies on it that hides its middle. */
function isCovered(place: PackPlace, { places }: PackLayer): boolean {
  const [x, y] = [place.x_m + place.length_m / 2, place.y_m + place.width_m / 2];
  return places.some(
    (other) =>
      other.z_m > place.z_m + 1e-6 &&
      other.kind !== "loose ice" &&
      other.x_m < x &&
      x < other.x_m + other.length_m &&
      other.y_m < y &&
      y < other.y_m + other.width_m,
  );
}

function under({ item, kind }: LayerItem, layer: PackLayer): string {
  const mine = layer.places.filter((place) => place.item === item && place.kind === kind);
  return mine.every((place) => isCovered(place, layer)) ? ", below" : "";
}
