import { sum } from "d3-array";
import { scaleLinear } from "d3-scale";
import type { Doubt } from "../../forecast/result.ts";
import type { Forecast } from "../../forecast/types.ts";
import { adviceOf, mainDoubts } from "../doubtsText.ts";
import { printable } from "../words.ts";
import { box, checkOptions, fitted, line, type PictureOptions, picture, words, wrapped } from "./svg.ts";
import { textureFill, textures } from "./texture.ts";

const EDGE = 14;
const BAR_PX = 16;
const VALUE_PX = 48;
/** A rest below this is not worth a bar. */
const LEAST_frac = 0.03;

interface Row {
  name: string;
  advice: string;
  share_frac: number;
  isRest: boolean;
}

/**
 * What makes the range of one cooler: a bar for each input, as its share of what is not known of the end of the ice, with
 * what would narrow it in words. What no single input explains stands last, in an empty bar.
 *
 * @throws DomainError for a width outside 320…1600 or an id that is no plain word
 */
export function doubtBars(forecast: Forecast, index: number, options: PictureOptions): string {
  checkOptions(options);
  const { width, id } = options;
  const cooler = forecast.result.coolers[index]!;
  const name = printable(cooler.name);
  const room = width - 2 * EDGE;
  const rows = rowsOf(mainDoubts(cooler, 8));
  const left = width >= 600 ? 250 : EDGE;
  const x = scaleLinear(
    [0, Math.max(0.5, ...rows.map(({ share_frac }) => share_frac))],
    [left, width - EDGE - VALUE_PX],
  );
  const members = forecast.result.ensemble?.members;
  const said = rows.length === 0 ? "No doubt stands out." : headWords(rows, members);
  const head = wrapped(said, room, 13, 3);
  let y = 34 + head.length * 17 + 4;
  const drawn = rows.map((row) => {
    const one = drawRow(row, x, options, y);
    y += one.height;
    return one.svg;
  });
  const content = [
    words(fitted(`${name}: what its range is made of`, room, 15, true), EDGE, 20, { size: 15, bold: true }),
    ...head.map((text, i) => words(text, EDGE, 39 + i * 17, { size: 13, fill: "ink2" })),
    ...drawn,
    rows.length === 0 || width < 600 ? "" : line(left, 34 + head.length * 17 + 4, left, y - 6, "ink", 1.5),
  ];
  const alt = rows.map((row) => `${row.name} ${percent(row)}${row.advice === "" ? "" : `: ${row.advice}`}.`);
  return picture(
    options,
    y + 4,
    { title: `${name}: what its range is made of. ${said}`, desc: alt.join(" ") || said },
    textures(id, "likely"),
    content.join(""),
  );
}

function rowsOf(doubts: readonly Doubt[]): Row[] {
  const rows = doubts.map((doubt) => ({
    name: doubt.about,
    advice: adviceWords(doubt),
    share_frac: doubt.share_frac,
    isRest: false,
  }));
  const rest = 1 - sum(rows, ({ share_frac }) => share_frac);
  if (rows.length === 0 || rest < LEAST_frac) return rows;
  return [...rows, { name: "small things, and several at once", advice: "", share_frac: rest, isRest: true }];
}

function adviceWords(doubt: Doubt): string {
  const advice = adviceOf(doubt);
  return advice === null ? "" : `${advice} (range ${Math.round(doubt.narrows_frac * 100)} % narrower)`;
}

function headWords(rows: readonly Row[], members: number | undefined): string {
  const count = members === undefined ? "" : ` Over ${members} members.`;
  return `Mostly ${rows[0]!.name}. Knowing it would narrow the range most.${count}`;
}

function percent({ share_frac }: Row): string {
  return `${Math.round(share_frac * 100)} %`;
}

function drawRow(
  row: Row,
  x: ReturnType<typeof scaleLinear<number, number>>,
  { width, id }: PictureOptions,
  y: number,
): { svg: string; height: number } {
  const wide = width >= 600;
  const left = x.range()[0]!;
  const name = wrapped(row.name, (wide ? left - 2 * EDGE : width - 2 * EDGE) / 1.12, 13, 2);
  const barTop = wide ? y + 4 : y + name.length * 16 + 6;
  const advice = row.advice === "" ? [] : wrapped(row.advice, width - EDGE - left - 8, 12, 2);
  const svg = [
    ...name.map((text, i) => words(text, EDGE, y + 16 + i * 16, { size: 13, bold: true })),
    box(
      left,
      barTop,
      x(row.share_frac),
      barTop + BAR_PX,
      row.isRest ? "sheet" : textureFill("likely", id),
      "sure",
      1.6,
    ),
    words(percent(row), x(row.share_frac) + 7, barTop + 13, { size: 13, bold: true }),
    ...advice.map((text, i) => words(text, left + 8, barTop + BAR_PX + 15 + i * 15, { fill: "ink2" })),
  ].join("");
  const low = barTop + BAR_PX + advice.length * 15;
  return { svg, height: Math.max(low, y + name.length * 16 + 4) - y + 16 };
}
