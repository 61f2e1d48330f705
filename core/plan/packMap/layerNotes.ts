import type { StackLayer } from "./layer.ts";
import type { StowLot } from "./stow.ts";

const naming = (lots: readonly StowLot[]): string => [...new Set(lots.map(({ item }) => item))].join(", ");

const lotsOf = (layer: StackLayer): StowLot[] => [...new Set(layer.puts.map(({ lot }) => lot))];

/** What to mind in one layer of a stack, in the order in which one does it. */
export function layerNotes(stack: readonly StackLayer[], index: number): string[] {
  const layer = stack[index];
  const lots = lotsOf(layer);
  const below = index > 0 ? lotsOf(stack[index - 1]) : [];
  return [
    ...(layer.laid === "end" ? [endNote] : []),
    ...(index === 0 && stack.some(({ laid }) => laid === "pressed") ? [pressNote] : []),
    ...towelNotes(layer, lots, below),
    ...rawNotes(lots.filter(({ kind }) => kind === "raw")),
    ...besideNotes([...lots, ...layer.beside]),
    ...pourNotes(layer),
    ...dryIceNotes(lots),
    ...lots.flatMap((lot) => (lot.note !== null && beginsIn(stack, index, lot) ? [lot.note] : [])),
  ];
}

const endNote = "stand this at one end; the next layers lie beside it, then over it";
const pressNote =
  "a full cooler: press bags flat and fill every gap; each piece is drawn with its room, not with its shape";

function rawNotes(raw: readonly StowLot[]): string[] {
  if (raw.length === 0) return [];
  return [`RAW ${naming(raw)}: in a tray that does not leak, nothing that is eaten as it is below it`];
}

function beginsIn(stack: readonly StackLayer[], index: number, lot: StowLot): boolean {
  return !stack.slice(0, index).some(({ puts }) => puts.some((put) => put.lot === lot));
}

function towelNotes(layer: StackLayer, lots: readonly StowLot[], below: readonly StowLot[]): string[] {
  if (layer.towel_m === 0) return [];
  const bites = lots.filter((lot) => lot.bites);
  const under = below.filter((lot) => lot.bites);
  const tender = naming([...lots, ...below].filter((lot) => lot.tender));
  const ice = naming([...bites, ...under]);
  return [`a folded towel below this layer: ${ice} would freeze ${tender}`];
}

/** A wish can put them into one layer. */
function besideNotes(lots: readonly StowLot[]): string[] {
  const tender = lots.filter((lot) => lot.tender);
  const bites = lots.filter((lot) => lot.bites);
  if (tender.length === 0 || bites.length === 0) return [];
  return [`keep ${naming(tender)} off ${naming(bites)}: a towel between`];
}

function pourNotes({ pours, laid, puts }: StackLayer): string[] {
  if (pours.length === 0) return [];
  const { lots } = pours[0];
  const share_frac = pours.reduce((sum, pour) => sum + pour.share_frac, 0);
  const bags = lots.reduce((sum, { pieces }) => sum + pieces, 0);
  const isBed = puts.length === 0 || (laid === "boxes" && pours.every(({ up_m }) => up_m > 0));
  const where = isBed ? "spread it level" : "pour it into the gaps and shake";
  const all = lots.map(({ stows }) => stows[0].what).join(" and ");
  if (share_frac > 0.995) return [`${all}: ${where}`];
  const part =
    bags > 1 ? `${tenth(share_frac * bags)} of ${bags} bags` : `${Math.round(100 * share_frac)} % of the bag`;
  return [`loose ice, ${part}: ${where}`];
}

const tenth = (count: number): string => (Math.round(count * 10) / 10).toFixed(1).replace(/\.0$/, "");

function dryIceNotes(lots: readonly StowLot[]): string[] {
  if (!lots.some(({ item, kind }) => kind === "ice" && item === "dry ice")) return [];
  return ["dry ice: wrap it in paper, touch it with gloves only, never seal it in; its gas must get out"];
}
