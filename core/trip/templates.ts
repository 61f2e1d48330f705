/** An example that ships with the program and doubles as a starting point. */
export interface Template {
  name: string;
  says: string;
  /** In the folder `examples`. */
  file: string;
}

/** Every template. All names, places and numbers in them are invented. */
export const templates: readonly Template[] = [
  {
    name: "family",
    says: "four people, three humid summer days, one chest and a drinks bag, US units",
    file: "family-three-days.yaml",
  },
  {
    name: "festival",
    says: "six friends, a three-day summer festival, two chests, ice sold at set hours, metric",
    file: "festival-weekend.yaml",
  },
  {
    name: "river",
    says: "six people, five dry days on a desert river, a food and a drinks chest, US units",
    file: "desert-river.yaml",
  },
  {
    name: "lake",
    says: "twelve people, seven days at a lake, four chests, everything left to plan, metric",
    file: "lake-twelve.yaml",
  },
];
