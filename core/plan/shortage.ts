import type { IcePiece } from "../forecast/planResult.ts";
import type { Warning } from "../forecast/result.ts";
import type { Trip, TripIce } from "../trip/types.ts";
import { type Fill, fillCooler } from "./fillCooler.ts";
import type { Judgement } from "./need.ts";
import { iceWords, isReplaceable, type Offer, offerWords, packedWords } from "./offer.ts";
import { type Fills, type Scene, type Stage, stageFor, triedIn, usableFrom } from "./scene.ts";
import { waysOutOf } from "./wayOut.ts";

/** What would have been the least ice for one cooler, counted from nothing, beside what the file has aboard. */
export interface EnoughIce {
  cooler: string;
  /** null: no amount that fits holds. */
  enough: readonly IcePiece[] | null;
  /** `enough` in short: "3 × 10-lb bags of cubes". */
  words: string | null;
  written: readonly IcePiece[];
  says: string;
}

/** Ways out that are told. */
const MOST_WAYS = 3;

/** For every cooler that no ice on offer serves: the best that fits, why it is not enough, and ways out with what each gives. */
export function shortWarnings(
  scene: Scene,
  trip: Trip,
  fills: Fills,
  enough: readonly EnoughIce[],
  offers: readonly Offer[],
): Warning[] {
  return fills.flatMap((fill, i) => {
    if (fill.holds) return [];
    const path = `coolers[${i}]`;
    const written = trip.ice.filter((ice) => ice.cooler === i && isReplaceable(ice));
    const more = written.length === 0 ? "" : ", added to what the file has,";
    const added =
      fill.ice.length === 0 ? "none is added" : `planned is the best that fits, ${packedWords(fill)}`;
    const tried = `none of the ice tried (${offerWords(offers)})${more} is enough`;
    const says = `${fill.need.cooler}: ${tried}; ${added}: ${fill.judgement.failing.join("; ")}`;
    const code = fill.judgement.outcome === "over" ? "does-not-fit" : "ice-short";
    const others = fills.flatMap((other, k) => (k === i ? [] : other.ice));
    const stage = { ...stageFor({ ...trip, ice: [...trip.ice, ...others] }, i), steers: false };
    const ways = [
      ...insteadWords(written, enough[i]!, fill.need.cooler),
      ...wayOutWords(scene, stage, fill, offers, { used: others, isAdded: written.length > 0 }),
    ];
    return [
      { code, says, path },
      ...ways.slice(0, MOST_WAYS).map((way) => ({ code: "way-out", says: way, path })),
    ];
  });
}

/** What the file has may be what stands in the way. */
function insteadWords(written: readonly TripIce[], { words }: EnoughIce, cooler: string): string[] {
  if (written.length === 0 || words === null) return [];
  return [`leave out of ${cooler} what the file has (${iceWords(written)}): ${words} is then enough`];
}

/** The changes that go furthest with the ice planned, each then asked what ice it needs. */
function wayOutWords(
  scene: Scene,
  stage: Stage,
  fill: Fills[number],
  offers: readonly Offer[],
  { used, isAdded }: { used: readonly TripIce[]; isAdded: boolean },
): string[] {
  scene.says(`ways out for ${fill.need.cooler}`);
  const tried = waysOutOf(stage.trip, stage.cooler).map((way) => {
    const names = new Set(way.trip.food.map(({ name }) => name));
    const foods = new Set([...fill.need.foods].filter((name) => names.has(name)));
    const changed = { ...stage, trip: way.trip, need: { ...fill.need, foods } };
    return { way, changed, judgement: triedIn(scene, changed, offers, used)(fill.ice) };
  });
  const best = tried.sort((a, b) => reach(b.judgement) - reach(a.judgement)).slice(0, MOST_WAYS);
  return best.map(({ way, changed, judgement }) => {
    if (judgement.outcome === "holds") return `${way.does}: the same ice is then enough`;
    const usable = usableFrom(offers, changed, used);
    const { aim } = scene.options;
    // The lay that went furthest: all of them for every way would take long.
    const again = fillCooler(stage.cooler, usable, aim, triedIn(scene, changed, offers, used), [fill.lay]);
    const enough = `${isAdded ? "adding " : ""}${packedWords(again)} is then enough`;
    return `${way.does}: ${again.holds ? enough : gainWords(fill, judgement)}`;
  });
}

/** Larger goes further: first that it fits, then the food, then the ice. */
function reach(judgement: Judgement): number {
  const over = judgement.outcome === "over" ? -1e6 * judgement.filled_frac : 0;
  return over + judgement.food_h * 1000 + judgement.ice_h;
}

function gainWords(
  { judgement: before, need }: Fill & Pick<Fills[number], "need">,
  after: Judgement,
): string {
  const percent = (share_frac: number): string => `${Math.ceil(share_frac * 100)} %`;
  if (after.outcome === "over" || before.outcome === "over")
    return `${percent(after.filled_frac)} full instead of ${percent(before.filled_frac)}`;
  const food = `the food holds ${(after.food_h - before.food_h).toFixed(1)} h longer`;
  const ice = `the ice ${(after.ice_h - before.ice_h).toFixed(1)} h longer`;
  return `not enough by itself: ${need.foods.size > 0 ? `${food}, ` : ""}${ice}`;
}
