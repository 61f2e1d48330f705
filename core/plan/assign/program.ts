import { medianClosures } from "../../cooler/closures.ts";
import { dayEnds_s, dayIndex } from "./losses.ts";
import { LpText } from "./lpText.ts";
import { dryBox, type Lump } from "./lumps.ts";
import type { Solution } from "./solver.ts";
import { type Bin, firm_L_per_kg, loose_L_per_kg, mostLifted_kg, type Task } from "./task.ts";
import { farOver_ratio, faults } from "./weights.ts";

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
        place === dryBox && places.length > 1
          ? faults.warmItem_kg * lump.items.length + faults.warm_ratio * lump.mass_kg
          : 0;
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

/** One column less the other. */
const atLeast = (more: string, less: string): [number, string][] => [
  [1, more],
  [-1, less],
];

/** What must not meet what in a cooler; what is neither meets both. */
const sideOf = ({ raw, ready }: Lump): "raw" | "ready" | "" => (raw ? "raw" : ready ? "ready" : "");

/**
 * Columns that say on which days anything of one side is still in the cooler. Only days on which something may be the last
 * have one: a cooler that is kept on one of them was kept on all before. The first says whether there is any at all.
 */
function keptRows(lp: LpText, task: Task, c: number, side: ReturnType<typeof sideOf>, days: number[]): void {
  const kept = (day: number): string => `y${side}${c}_${day}`;
  const lots = inside(task, c, (lump) => sideOf(lump) === side);
  days.forEach((day, k) => {
    lp.binary(kept(day));
    if (k > 0) lp.row(atLeast(kept(days[k - 1]!), kept(day)), ">=", 0);
  });
  for (const { lump, column } of lots) lp.row(atLeast(kept(lastDayOf(task, lump)), column), ">=", 0);
}

const lastDayOf = ({ trip, daysCount }: Task, lump: Lump): number =>
  Math.min(dayIndex(trip, lump.lastEaten_s), Math.min(dayEnds_s(trip).length, daysCount ?? Infinity) - 1);

/** Days on which the last of what may lie in a cooler may go. */
const daysOf = (task: Task, c: number, which: (lump: Lump) => boolean): number[] =>
  [...new Set(inside(task, c, which).map(({ lump }) => lastDayOf(task, lump)))].sort((a, b) => a - b);

/** The first of `days` that is not before one day. */
const from = (days: readonly number[], day: number): number | undefined => days.find((one) => one >= day);

/**
 * How long each cooler is kept cold, and whether raw meets ready in it. Both sides have days of their own, and a cooler
 * that has one side is lost to the other unless it is paid for: without this a half of each would lie in every cooler of the
 * relaxed program, and its bound would say nothing.
 */
function dayRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const days = daysOf(task, c, any);
  keptRows(lp, task, c, "", days);
  const raw = daysOf(task, c, (lump) => sideOf(lump) === "raw");
  const ready = daysOf(task, c, (lump) => sideOf(lump) === "ready");
  keptRows(lp, task, c, "raw", raw);
  keptRows(lp, task, c, "ready", ready);
  const isMixable = raw.length > 0 && ready.length > 0;
  for (const day of days) {
    const sides = [
      ...[from(raw, day)].flatMap((one) => (one === undefined ? [] : [`yraw${c}_${one}`])),
      ...[from(ready, day)].flatMap((one) => (one === undefined ? [] : [`yready${c}_${one}`])),
    ].map((column): [number, string] => [-1, column]);
    const mixed: [number, string][] = isMixable ? [[1, `mixed${c}`]] : [];
    if (sides.length > 0) lp.row([[1, `y${c}_${day}`], ...mixed, ...sides], ">=", 0);
    for (const one of isMixable ? sides : []) lp.row([[1, `y${c}_${day}`], one], ">=", 0);
  }
  if (!isMixable) return;
  lp.binary(`mixed${c}`);
  lp.cost(faults.rawBesideReady_kg, `mixed${c}`);
  const [anyRaw, anyReady] = [`yraw${c}_${raw[0]}`, `yready${c}_${ready[0]}`];
  lp.row(
    [
      [1, `mixed${c}`],
      [-1, anyRaw],
      [-1, anyReady],
    ],
    ">=",
    -1,
  );
  sideRows(lp, task, bin, c, "raw", anyRaw);
  sideRows(lp, task, bin, c, "ready", anyReady);
}

/** Room and weight of one side alone: says nothing new, but keeps a share of a cooler from holding more than its share. */
function sideRows(lp: LpText, task: Task, bin: Bin, c: number, side: string, isIn: string): void {
  const lots = inside(task, c, (lump) => sideOf(lump) === side);
  const bulk = lots.map(({ lump, column }): [number, string] => [lump.bulk_L, column]);
  const mass = lots.map(({ lump, column }): [number, string] => [lump.mass_kg, column]);
  const most_kg = Math.max(0, mostLifted_kg(task.trip) - bin.empty_kg);
  lp.row([...bulk, [-bin.room_L, isIn], [-1, `over${c}`]], "<=", 0);
  lp.row([...mass, [-most_kg, isIn], [-1, `heavy${c}`]], "<=", 0);
}

/** Ice: what the cooler melts until the last thing in it is eaten, and what cooling its load takes. */
function iceRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const days = daysOf(task, c, any);
  const until_kg = task.losses.until_kg[c]!;
  const terms: [number, string][] = [[1, `ice${c}`]];
  days.forEach((day, k) => {
    const before_kg = k === 0 ? -bin.more_kg : until_kg[days[k - 1]!]!;
    terms.push([before_kg - until_kg[day]!, `y${c}_${day}`]);
  });
  for (const { lump, column } of inside(task, c, any)) terms.push([-lump.ice_kg, column]);
  lp.row([...terms, [1, `lack${c}`]], ">=", 0);
  lp.cost(1, `ice${c}`);
  lp.cost(lackCost_ratio(task, bin), `lack${c}`);
  const firm = atLeast(`ice${c}`, `loose${c}`);
  lp.row(firm, task.ice.firm ? ">=" : "=", bin.writtenFirm_kg);
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
}

/** What its carriers should lift at the most, and what is far more than that. */
function weightRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const load: [number, string][] = inside(task, c, any).map(({ lump, column }) => [lump.mass_kg, column]);
  const most_kg = mostLifted_kg(task.trip);
  const over = (column: string, from_kg: number, ratio: number): void => {
    lp.row([...load, [1, `ice${c}`], [-1, column]], "<=", from_kg - bin.empty_kg);
    lp.cost(ratio, column);
  };
  over(`heavy${c}`, most_kg, faults.overweight_ratio);
  over(`tooheavy${c}`, farOver_ratio * most_kg, faults.farOverweight_ratio);
}

/** A column that is 1 as soon as one of these is in the cooler; null where none of them can be. */
function flag(
  lp: LpText,
  task: Task,
  c: number,
  name: string,
  which: (lump: Lump) => boolean,
): string | null {
  const column = `${name}${c}`;
  const lots = inside(task, c, which);
  if (lots.length === 0) return null;
  lp.binary(column);
  for (const lot of lots) lp.row(atLeast(column, lot.column), ">=", 0);
  return column;
}

function apartRows(lp: LpText, task: Task, bin: Bin, c: number): void {
  const both = (name: string, one: string | null, other: string | null, fault_kg: number): void => {
    if (one === null || other === null) return;
    const column = `${name}${c}`;
    lp.row(
      [
        [1, column],
        [-1, one],
        [-1, other],
      ],
      ">=",
      -1,
    );
    lp.binary(column);
    lp.cost(fault_kg, column);
  };
  const frozen = flag(lp, task, c, "frozen", (lump) => lump.frozen);
  if (frozen !== null) lp.cost(faults.frozenApart_kg, frozen);
  if (bin.holds !== "any" || task.drinksAnywhere === true || task.bins.length < 2) return;
  const drinks = flag(lp, task, c, "drinks", (lump) => lump.drink);
  const food = drinks === null ? null : flag(lp, task, c, "food", (lump) => !lump.drink);
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
  lp.cost(most_kg + (faults.noLastHalf_kg_per_day * half_s) / 86_400, "noshut");
}

/** Whether nothing tells two coolers apart but their names. */
function areTwins(task: Task, a: number, b: number): boolean {
  const { until_kg, shutSaves_kg } = task.losses;
  const isSame = (one: number, other: number): boolean => Math.abs(one - other) < 1e-6;
  const [one, other] = [task.bins[a]!, task.bins[b]!];
  return (
    (Object.keys(one) as (keyof Bin)[]).every((key) => one[key] === other[key]) &&
    isSame(shutSaves_kg[a]!, shutSaves_kg[b]!) &&
    until_kg[a]!.every((kg, k) => isSame(kg, until_kg[b]![k]!)) &&
    task.lumps.every((lump) => {
      const places = placesOf(task, lump);
      return places.includes(a) === places.includes(b);
    })
  );
}

/** Of two coolers that are alike the first is the fuller: the same answer with both changed over is not looked at again. */
function twinRows(lp: LpText, task: Task): void {
  for (let c = 0; c + 1 < task.bins.length; c++) {
    if (!areTwins(task, c, c + 1)) continue;
    const load = (cooler: number, sign: number): [number, string][] =>
      inside(task, cooler, any).map(({ lump, column }) => [sign * lump.bulk_L, column]);
    lp.row([...load(c, 1), ...load(c + 1, -1)], ">=", 0);
  }
}

/** The task as LP text. It always has an answer: what does not fit is told in litres. */
export function programOf(task: Task): string {
  const lp = new LpText();
  placeRows(lp, task);
  task.bins.forEach((bin, c) => {
    dayRows(lp, task, bin, c);
    iceRows(lp, task, bin, c);
    roomRows(lp, task, bin, c);
    weightRows(lp, task, bin, c);
    apartRows(lp, task, bin, c);
  });
  shutRows(lp, task);
  twinRows(lp, task);
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
