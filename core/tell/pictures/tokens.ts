/** Screen by day; paper and full sun; red light at night. */
export type Theme = "day" | "print" | "night";

type Tokens = Readonly<Record<string, string>>;

const day: Tokens = {
  paper: "#F1F5F4",
  sheet: "#FFFFFF",
  ink: "#10252B",
  ink2: "#465A61",
  edge: "#6B7F86",
  rule: "#CBD6D8",
  night: "#E6EBF0",
  nightLine: "#D3DBE3",
  sure: "#1B6379",
  likely: "#4B90A6",
  likelyBg: "#DCEEF2",
  luckyBg: "#EAF5F7",
  heat: "#AD4216",
  heatFill: "#E9B596",
  eat: "#8A5600",
  eatFill: "#F2C45A",
  water: "#2A5C94",
  waterFill: "#D5E3F1",
  f1: "#E79A4B",
  f2: "#EDB57A",
  f3: "#F3CFA6",
  f4: "#F8E5CF",
};

const print: Tokens = {
  paper: "#FFFFFF",
  sheet: "#FFFFFF",
  ink: "#000000",
  ink2: "#000000",
  edge: "#000000",
  rule: "#000000",
  night: "#FFFFFF",
  nightLine: "#000000",
  sure: "#000000",
  likely: "#000000",
  likelyBg: "#FFFFFF",
  luckyBg: "#FFFFFF",
  heat: "#000000",
  heatFill: "#FFFFFF",
  eat: "#000000",
  eatFill: "#FFFFFF",
  water: "#000000",
  waterFill: "#FFFFFF",
  f1: "#FFFFFF",
  f2: "#FFFFFF",
  f3: "#FFFFFF",
  f4: "#FFFFFF",
};

const night: Tokens = {
  paper: "#000000",
  sheet: "#000000",
  ink: "#FF0000",
  ink2: "#FF0000",
  edge: "#C80000",
  rule: "#5A0000",
  night: "#240000",
  nightLine: "#5A0000",
  sure: "#C80000",
  likely: "#C80000",
  likelyBg: "#000000",
  luckyBg: "#000000",
  heat: "#FF0000",
  heatFill: "#240000",
  eat: "#FF0000",
  eatFill: "#240000",
  water: "#C80000",
  waterFill: "#240000",
  f1: "#5A0000",
  f2: "#3C0000",
  f3: "#240000",
  f4: "#000000",
};

/** Colours by name. Pictures know the names alone, so one picture serves every theme. */
export const themes: Readonly<Record<Theme, Tokens>> = { day, print, night };

/** The `<style>` element that gives a picture its colours. */
function themeStyle(theme: Theme): string {
  const list = Object.entries(themes[theme]).map(([name, colour]) => `--${name}:${colour}`);
  return `<style>svg{${list.join(";")}}</style>`;
}

/** A picture as a file of its own: the theme's colours and its ground come first. The picture is otherwise the same. */
export function standalone(svg: string, theme: Theme): string {
  const end = svg.indexOf(">") + 1;
  const ground = '<rect width="100%" height="100%" fill="var(--sheet)"/>';
  return `${svg.slice(0, end)}${themeStyle(theme)}${ground}${svg.slice(end)}\n`;
}
