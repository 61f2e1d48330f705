import { medianClosures } from "../../cooler/closures.ts";
import { dayEnds_s, dayIndex } from "./losses.ts";
import { LpText } from "./lpText.ts";
import { dryBox, type Lump } from "./lumps.ts";
import type { Solution } from "./solver.ts";
import { type Bin, firm_L_per_kg, loose_L_per_kg, type Task } from "./task.ts";
import { eachLifts_kg, faults } from "./weights.ts";

/** Where every lump goes, and what each cooler needs for it. */
export interface Answer {
  /** By lump: a cooler, or the dry box. */
  place: readonly number[];
  /** By cooler: ice to have aboard, what of it is loose, and litres that do not fit. */
  ice_kg: readonly number[];
  loose_kg: readonly number[];
  over_L: readonly number[];
  /** By cooler: ice that it would take to the end and has no room for. */
  lack_kg: readonly number[];
  /** The cooler that stays shut for the first half by this plan; null: none, or the file says so. */
  shut: number | null;
  ice_total_kg: number;
  gap_frac: number;
}

/** Lump in place. */
const x = (lump: number, place: number): string => (place === dryBox ? `x${lump}_dry` : `x${lump}_${place}`);

const placesOf = (task: Task, lump: Lump): number[] => {
  const banned = (task.banned ?? []).filter((ban) => ban.lump === lump).map(({ place }) => place);
  return lump.places.filter((place) => !banned.includes(place));
};

/** Every lump goes to just one place, and what is wrong with that place is paid for. */
function placeRows(lp: LpText, task: Task): void {
  task.lumps.forEach((lump, i) => {
    const places = placesOf(task, lump);
    lp.row(
      places.map((place) => [1, x(i, place)]),
      "=",
      1,
    );
    for (const place of places) {
      lp.binary(x(i, place));
      if (lump.pinned) continue;
      const warm_kg =
        place === dryBox && places.length > 1 ? faults.warmItem_kg + faults.warm_ratio * lump.mass_kg : 0;
      // Of places that are as good, the earlier one: two runs never differ.
      lp.cost(warm_kg + 1e-4 * (place + 1) + (lump.ruleBroken ? faults.ruleBroken_kg : 0), x(i, place));
    }
  });
}

/** Columns of the lumps that may lie in a cooler and are so. */
const inside = (
  task: Task,
  cooler: number,
  which: (lump: Lump) => boolean,
): { lump: Lump; column: string }[] =>
  task.lumps.flatMap((lump, i) =>
    which(lump) && placesOf(task, lump).includes(cooler) ? [{ lump, column: x(i, cooler) }] : [],
  );
const any = (): boolean => true;

/** Ice: what the cooler melts day by day while something is in it, and what cooling its load takes. */
function iceRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const { trip, losses } = task;
  const days = Math.min(dayEnds_s(trip).length, task.daysCount ?? Infinity);
  const until_kg = losses.until_kg[c]!;
  const kept = (k: number): string => `y${c}_${k}`;
  const terms: [number, string][] = [[1, `ice${c}`]];
  for (let k = 0; k < days; k++) {
    const more_kg = k === 0 ? bin.more_kg : 0;
    terms.push([-(until_kg[k]! - (until_kg[k - 1] ?? 0) + more_kg), kept(k)]);
    if (k > 0)
      lp.row(
        [
          [1, kept(k - 1)],
          [-1, kept(k)],
        ],
        ">=",
        0,
      );
  }
  for (const { lump, column } of inside(task, c, any)) {
    terms.push([-lump.ice_kg, column]);
    lp.row(
      [
        [1, kept(Math.min(days - 1, dayIndex(trip, lump.lastEaten_s)))],
        [-1, column],
      ],
      ">=",
      0,
    );
  }
  lp.row([...terms, [1, `lack${c}`]], ">=", 0);
  lp.cost(1, `ice${c}`);
  lp.cost(lackCost_ratio(task, bin), `lack${c}`);
  lp.row(
    [
      [1, `ice${c}`],
      [-1, `loose${c}`],
    ],
    task.ice.firm ? ">=" : "=",
    bin.writtenFirm_kg,
  );
  lp.row([[1, `loose${c}`]], task.ice.loose ? ">=" : "=", bin.writtenLoose_kg);
}

/** Without it a cooler that cannot hold ice to the end in one filling would stay empty. */
function lackCost_ratio({ trip }: Task, { holds }: Bin): number {
  if (holds === "drinks") return faults.lackDrinks_ratio;
  const isSold = trip.supply.some(({ when_s, form }) => when_s !== null && form !== "dry ice");
  return isSold ? faults.lackMended_ratio : faults.lack_ratio;
}

/** Room: loose ice runs into the gaps between food as far as it does in a cooler. */
function roomRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const lots = inside(task, c, any);
  const food: [number, string][] = lots.map(({ lump, column }) => [lump.bulk_L, column]);
  const gaps: [number, string][] = lots.map(({ lump, column }) => [
    -lump.gaps_L * medianClosures.gapFill_frac,
    column,
  ]);
  const ice: [number, string][] = [
    [firm_L_per_kg, `ice${c}`],
    [loose_L_per_kg - firm_L_per_kg, `loose${c}`],
  ];
  lp.row([...food, ...ice, [-1, `fill${c}`], [-1, `over${c}`]], "<=", bin.room_L);
  lp.row(
    [
      [1, `fill${c}`],
      [-loose_L_per_kg, `loose${c}`],
    ],
    "<=",
    0,
  );
  lp.row([[1, `fill${c}`], ...gaps], "<=", 0);
  lp.cost(faults.overflow_kg_per_L, `over${c}`);
  const mass: [number, string][] = lots.map(({ lump, column }) => [lump.mass_kg, column]);
  const most_kg = eachLifts_kg * Math.min(4, task.trip.carry.people);
  lp.row([...mass, [1, `ice${c}`], [-1, `heavy${c}`]], "<=", most_kg - bin.empty_kg);
  lp.cost(faults.overweight_ratio, `heavy${c}`);
}

/** A column that is at least 1 as soon as one of these is in the cooler. */
function flag(lp: LpText, task: Task, c: number, name: string, which: (lump: Lump) => boolean): string {
  const column = `${name}${c}`;
  const lots = inside(task, c, which);
  for (const lot of lots)
    lp.row(
      [
        [1, column],
        [-1, lot.column],
      ],
      ">=",
      0,
    );
  return column;
}

function apartRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const both = (name: string, one: string, other: string, fault_kg: number): void => {
    lp.row(
      [
        [1, `${name}${c}`],
        [-1, one],
        [-1, other],
      ],
      ">=",
      -1,
    );
    lp.cost(fault_kg, `${name}${c}`);
  };
  const raw = flag(lp, task, c, "raw", (lump) => lump.raw);
  const ready = flag(lp, task, c, "ready", (lump) => lump.ready);
  both("mixed", raw, ready, faults.rawBesideReady_kg);
  lp.cost(
    faults.frozenApart_kg,
    flag(lp, task, c, "frozen", (lump) => lump.frozen),
  );
  if (bin.holds !== "any" || task.drinksAnywhere === true || task.bins.length < 2) return;
  const drinks = flag(lp, task, c, "drinks", (lump) => lump.drink);
  const food = flag(lp, task, c, "food", (lump) => !lump.drink);
  both("bar", drinks, food, faults.drinksBesideFood_kg);
}

/** One of several coolers may stay shut for the first half: nothing eaten earlier lies in it, and something later does. */
function shutRows(lp: LpText, task: Task): void {
  const half_s = task.trip.duration_s / 2;
  const can = task.bins.flatMap(({ mayShut }, c) => (mayShut ? [c] : []));
  if (can.length === 0) return;
  const saves = task.losses.shutSaves_kg;
  const most_kg = Math.max(...can.map((c) => saves[c]!));
  for (const c of can) {
    const shut = `shut${c}`;
    lp.binary(shut);
    lp.cost(most_kg - saves[c]!, shut);
    for (const { column } of inside(task, c, (lump) => lump.firstEaten_s < half_s))
      lp.row(
        [
          [1, shut],
          [1, column],
        ],
        "<=",
        1,
      );
    const late = inside(task, c, (lump) => lump.firstEaten_s >= half_s);
    lp.row([[1, shut], ...late.map(({ column }): [number, string] => [-1, column])], "<=", 0);
  }
  const all = can.map((c): [number, string] => [1, `shut${c}`]);
  lp.row(all, "<=", 1);
  lp.row([[1, "noshut"], ...all], ">=", 1);
  lp.cost(most_kg + faults.noLastHalf_kg, "noshut");
}

/** The task as LP text. It always has an answer: what does not fit is told in litres. */
export function programOf(task: Task): string {
  const lp = new LpText();
  placeRows(lp, task);
  task.bins.forEach((bin, c) => {
    iceRows(lp, task, bin, c);
    roomRows(lp, task, bin, c);
    apartRows(lp, task, bin, c);
  });
  shutRows(lp, task);
  return lp.text();
}

/** Reads where everything goes off a solution. */
export function answerOf(task: Task, { values, gap_frac }: Solution): Answer {
  const value = (column: string): number => values.get(column) ?? 0;
  const each = (name: string): number[] => task.bins.map((_, c) => Math.max(0, value(`${name}${c}`)));
  const ice_kg = each("ice");
  const shut = task.bins.findIndex((_, c) => value(`shut${c}`) > 0.5);
  return {
    place: task.lumps.map(
      (lump, i) => placesOf(task, lump).find((place) => value(x(i, place)) > 0.5) ?? dryBox,
    ),
    ice_kg,
    loose_kg: each("loose"),
    over_L: each("over").map((over_L) => (over_L < 1e-3 ? 0 : over_L)),
    lack_kg: each("lack"),
    shut: shut === -1 ? null : shut,
    ice_total_kg: ice_kg.reduce((a, b) => a + b, 0),
    gap_frac,
  };
}
