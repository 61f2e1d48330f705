import { nearest } from "./nearest.ts";

const spokenAllergens = [
  ["milk", "dairy, lactose, cheese, butter, cream, yogurt"],
  ["egg", "eggs"],
  ["shellfish", "shrimp, prawns, crab, lobster, crustaceans, clams, mussels"],
  ["tree nuts, peanuts", "nuts, nut"],
  ["tree nuts", "almonds, walnuts, hazelnuts, cashews, pecans, pistachios"],
  ["peanuts", "peanut, groundnuts"],
  ["wheat", "gluten, flour, bread"],
  ["soy", "soya, soybeans, soja, tofu"],
  ["sesame", "tahini"],
] as const;

/** Words that people use for words of the file, by key of the file: what they may mean, and what they write for it. */
const spoken: Readonly<Record<string, readonly (readonly [meant: string, written: string])[]>> = {
  where: [
    ["closed car, cabin, trunk", "car, auto, vehicle, van, suv"],
    ["cabin", "driving, drive, driver, front seat, back seat, bus, camper"],
    ["trunk", "boot, hatchback"],
    ["truck bed, cabin", "truck"],
    ["truck bed", "pickup, bed, trailer"],
    ["roof", "roof rack, roof box, rack"],
    ["raft", "canoe, kayak, deck, dinghy, on deck"],
    ["boat", "bilge, below deck, hold, ship, yacht"],
    ["indoors", "home, house, inside, room, garage, kitchen, hotel, hut"],
    ["camp", "outside, outdoors, campsite, campground, picnic, beach, park, shade"],
  ],
  build: [
    ["standard, thick", "hard, hard side, hard sided, chest, plastic, metal, steel, medium"],
    ["thick", "rotomolded, roto, heavy, premium, expensive"],
    ["thin", "cheap, light, basic, small"],
    ["soft", "bag, soft side, soft sided, backpack, tote"],
    ["foam", "polystyrene, EPS, white foam, disposable"],
    ["icebox", "built in, built-in, boat, fridge box"],
  ],
  color: [
    ["white", "cream, ivory"],
    ["light", "yellow, tan, beige, pink, sand, silver, light blue, light grey, light gray, pale"],
    ["medium", "blue, red, green, grey, gray, orange, purple, turquoise, teal"],
    ["dark", "black, navy, brown, charcoal, dark blue, dark green, dark grey, dark gray, olive"],
  ],
  layer: [
    ["base", "bottom, floor, down, low, lowest, under"],
    ["fill", "middle, between, center, centre, around, anywhere, mid"],
    ["top", "over, upper, lid, above, up"],
  ],
  state: [
    ["chilled", "cold, cool, refrigerated, fridge, fresh, thawed"],
    ["ambient", "room, room temperature, warm, hot, shelf, unrefrigerated"],
    ["frozen", "ice, solid, freezer, hard, deep frozen"],
    ["dry", "pantry, dry box, no cooler"],
  ],
  form: [
    ["cube", "bag, bags, bagged, bag of ice, cubes, loose"],
    ["block, cube", "ice, water ice"],
    ["block", "slab, bar"],
    ["jug", "bottle, bottles, gallon, frozen bottle, frozen water, water bottle, carton"],
    ["gel pack", "pack, ice pack, cold pack, freezer pack, gel, brick"],
    ["crushed", "slush, shaved, chips, flakes, nugget"],
    ["dry ice", "co2, carbon dioxide"],
  ],
  limit: [
    ["consumer", "40 F, 40, 4 C, 4.4 C, 4, home, strict"],
    ["inspected", "41 F, 41, 5 C, 5, restaurant, inspector, commercial"],
  ],
  holds: [
    ["any", "both, all, mixed, everything, food and drinks"],
    ["drinks", "beverages, drink, beer, water"],
    ["food", "meals, meal"],
  ],
  drain: [
    ["keep", "no, none, closed, shut, false, never"],
    ["open", "yes, true, always"],
    ["daily", "every day, once a day, each day"],
  ],
  cover: [
    ["wet cloth", "towel, wet towel, damp cloth"],
    ["reflective", "foil, space blanket, mylar, tarp, reflective sheet"],
    ["blanket", "sleeping bag, quilt, cloth"],
    ["none", "no, nothing, false"],
  ],
  top: [
    ["foam sheet", "foam, pad, mat"],
    ["cold packs", "packs, gel packs, ice packs"],
    ["none", "no, nothing, false"],
  ],
  ground: [
    ["soil", "dirt, earth, mud, ground"],
    ["grass", "lawn, meadow"],
    ["rock", "concrete, asphalt, stone, pavement, gravel, road"],
    ["boards", "wood, deck, table, metal, floor, bench"],
    ["snow", "ice"],
    ["water", "river, lake, sea"],
    ["carpet", "rug, seat"],
  ],
  contains: spokenAllergens,
  allergies: spokenAllergens,
  bone: [
    ["in", "bone-in, bone in, yes, true, with bone"],
    ["out", "boned, boneless, no, false, without bone"],
  ],
  bears: [
    ["locker", "box, bear box, food locker"],
    ["container", "canister, bear canister, can"],
    ["hang", "rope, tree, hung, pole"],
    ["none", "no, nothing, false"],
  ],
  insulation: [
    ["polyurethane", "pu, pur, foamed, polyurethane foam"],
    ["EPS, XPS", "polystyrene, foam"],
    ["vacuum panel", "vacuum, vip"],
    ["air", "none, hollow, nothing"],
  ],
  do: [
    ["add ice", "ice, buy ice, refill, re-ice, add"],
    ["put in", "put, load, add food"],
    ["merge", "combine, transfer, join"],
    ["move", "carry, take"],
    ["drain", "empty, pour"],
  ],
};

const plain = (word: string): string => word.trim().toLowerCase();

const meanings: ReadonlyMap<string, ReadonlyMap<string, string>> = new Map(
  Object.entries(spoken).map(([key, rows]) => [
    key,
    new Map(rows.flatMap(([meant, written]) => written.split(", ").map((word) => [plain(word), meant]))),
  ]),
);

const answers: ReadonlyMap<string, string> = new Map([
  ...["yes", "y", "on", "1"].map((word) => [word, "true"] as const),
  ...["no", "n", "off", "0"].map((word) => [word, "false"] as const),
]);

/**
 * What a word that is not on its list most likely means: by common speech, else by spelling; null when nothing is near.
 *
 * @param key the key of the file under which it stands
 * @param known the words of the list; empty where it is a yes or no
 */
export function meant(key: string, typed: unknown, known: readonly string[]): string | null {
  if (!["string", "number", "boolean"].includes(typeof typed)) return null;
  const word = String(typed).slice(0, 60);
  if (known.length === 0) return answers.get(plain(word)) ?? null;
  const found = meanings.get(key === "to" ? "where" : key)?.get(plain(word));
  return found ?? (typeof typed === "string" ? nearest(word, known) : null);
}
