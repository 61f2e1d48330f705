import { describe, expect, it } from "vitest";
import { readHourlyFile } from "../../../core/sky/hourlyFiles.ts";
import type { FileProblem, HourReading, HourWindow } from "../../../core/sky/hourRecord.ts";
import { localInstant_ms } from "../../../core/sky/localTime.ts";

const timezone = "America/Denver";
const departUtc_ms = localInstant_ms("2027-06-18T06:30", timezone);
const window: HourWindow = { departUtc_ms, duration_s: 12 * 3600, timezone };

function problemsOf(reading: HourReading): readonly FileProblem[] {
  return reading.ok ? [] : reading.problems;
}

const heading = "time,temp_C,humidity_pct,wind_m_per_s,cloud_pct";
const clock = (h: number): string => `2027-06-18T${String(h).padStart(2, "0")}:00`;
const goodLines = Array.from({ length: 15 }, (_, i) => `${clock(6 + i)},${20 + i},40,2.5,10`);
const csv = (lines: readonly string[], head = heading): string => [head, ...lines].join("\n");
const csvProblems = (text: string): readonly FileProblem[] =>
  problemsOf(readHourlyFile("canyon.csv", text, window));
const changed = (i: number, line: string): string => csv(goodLines.map((good, k) => (k === i ? line : good)));

describe("hourly CSV", () => {
  it("becomes rows in SI on the trip's clock", () => {
    const reading = readHourlyFile("canyon.csv", csv(goodLines), window);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    expect(reading.rows).toHaveLength(15);
    expect(reading.rows[0]).toMatchObject({
      t_s: -1800,
      air_C: 20,
      wind_m_per_s: 2.5,
      cloud_frac: 0.1,
      global_W_per_m2: null,
    });
    // 20 °C at 40 %: dew point 6.0 °C by any psychrometric table.
    expect(reading.rows[0]!.dewPoint_C).toBeCloseTo(6, 0);
  });

  it("takes semicolons, offsets, blanks, comments, other columns, and a slightly negative night reading", () => {
    const head = "station;time;temp_C;humidity_pct;wind_m_per_s;ghi_W_per_m2";
    const rows = Array.from({ length: 15 }, (_, i) => {
      const utc = new Date(departUtc_ms + (i - 1) * 3.6e6).toISOString().replace(".000Z", "Z");
      return `seven;${utc};25;30;1;${i === 0 ? -2.5 : 500}`;
    });
    const reading = readHourlyFile("x.CSV", `# invented\n${head}\n\n${rows.join("\n")}\n`, window);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    expect(reading.rows.map((row) => row.global_W_per_m2).slice(0, 2)).toEqual([0, 500]);
  });

  it.each([
    { what: "an empty file", text: "  \n ", line: null, must: /hold hourly weather/, got: /empty/ },
    {
      what: "a file too large",
      text: "x".repeat(2_000_001),
      line: null,
      must: /at most 2 MB/,
      got: /2\.0 MB/,
    },
    {
      what: "a missing column",
      text: csv(goodLines, heading.replace("wind_m_per_s", "wind")),
      line: 1,
      must: /wind_m_per_s/,
      got: /time, temp_C/,
    },
    {
      what: "no column of the sky",
      text: csv(goodLines, heading.replace("cloud_pct", "clouds")),
      line: 1,
      must: /ghi_W_per_m2 or cloud_pct/,
      got: /clouds/,
    },
    {
      what: "words for a number",
      text: changed(3, `${clock(9)},warm,40,2,10`),
      line: 5,
      must: /temp_C/,
      got: /^warm$/,
    },
    { what: "NaN", text: changed(3, `${clock(9)},NaN,40,2,10`), line: 5, must: /temp_C/, got: /^NaN$/ },
    {
      what: "a decimal comma",
      text: changed(3, `${clock(9)},"21,5",40,2,10`),
      line: 5,
      must: /temp_C/,
      got: /^21,5$/,
    },
    {
      what: "humidity above 100",
      text: changed(2, `${clock(8)},22,140,2,10`),
      line: 4,
      must: /1 to 100 in humidity_pct/,
      got: /^140$/,
    },
    {
      what: "negative wind",
      text: changed(2, `${clock(8)},22,40,-1,10`),
      line: 4,
      must: /wind_m_per_s/,
      got: /^-1$/,
    },
    {
      what: "heat in the wrong unit",
      text: changed(2, `${clock(8)},98,40,1,10`),
      line: 4,
      must: /−40 to 60/,
      got: /^98$/,
    },
    {
      what: "an hour without sky",
      text: changed(2, `${clock(8)},22,40,1,`),
      line: 4,
      must: /cloud_pct/,
      got: /nothing/,
    },
    {
      what: "a date no calendar has",
      text: changed(2, "2027-02-30T08:00,22,40,1,10"),
      line: 4,
      must: /time/,
      got: /02-30/,
    },
    {
      what: "a time in words",
      text: changed(2, "8 am,22,40,1,10"),
      line: 4,
      must: /2027-06-18T06:00/,
      got: /8 am/,
    },
    {
      what: "times that go back",
      text: changed(5, `${clock(9)},22,40,1,10`),
      line: 7,
      must: /later than the row before/,
      got: /T09:00/,
    },
    {
      what: "moisture that no air on earth holds",
      text: changed(2, `${clock(8)},60,90,2,10`),
      line: 4,
      must: /dew point is at most 50 °C/,
      got: /60 °C with 90 %, dew point 57\.\d °C/,
    },
    { what: "a short line", text: changed(5, clock(11)), line: 7, must: /temp_C/, got: /nothing/ },
  ])("refuses $what", ({ text, line, must, got }) => {
    const problem = csvProblems(text).find((one) => must.test(one.must));
    expect(problem).toBeDefined();
    expect(problem!.line).toBe(line);
    expect(problem!.got).toMatch(got);
  });

  it("refuses a gap of more than three hours in the trip", () => {
    const problems = csvProblems(csv(goodLines.filter((_, i) => i < 4 || i > 7)));
    expect(problems).toEqual([{ line: 6, must: "follow the row before it within 3 h", got: "5.0 h" }]);
  });

  it("refuses a record that does not cover the trip, and says both spans", () => {
    const problems = csvProblems(csv(goodLines.slice(0, 8)));
    expect(problems).toHaveLength(1);
    expect(problems[0]!.must).toContain("2027-06-18T06:30 to 2027-06-18T18:30");
    expect(problems[0]!.got).toContain("2027-06-18T13:00");
    expect(csvProblems(heading)[0]!.got).toBe("no rows");
  });

  it("tells all mistakes at once, but not thousands", () => {
    const bad = goodLines.map((line) => line.replace(",40,", ",400,").replace(",2.5,", ",fast,"));
    expect(csvProblems(csv(bad))).toHaveLength(30);
    const many = Array.from({ length: 300 }, () => "never,x,x,x,x");
    expect(csvProblems(csv(many)).at(-1)!.got).toMatch(/more$/);
  });
});

/** An invented station of one week in June, standard time seven hours behind UTC. */
function epw(
  over: (cells: string[], day: number, hour: number) => string[] = (cells) => cells,
  perHour = "1",
): string {
  const lines = [
    "LOCATION,Nowhere,NA,NON,invented,000000,38.60,-109.60,-7.0,1250.0",
    ...["DESIGN CONDITIONS,0", "TYPICAL/EXTREME PERIODS,0", "GROUND TEMPERATURES,0"],
    ...["HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0", "COMMENTS 1,invented", "COMMENTS 2,invented"],
    `DATA PERIODS,1,${perHour},Data,Sunday, 6/16, 6/21`,
  ];
  for (let day = 16; day <= 21; day++) {
    for (let hour = 1; hour <= 24; hour++) {
      const cells = Array.from({ length: 35 }, () => "0");
      const place = {
        0: 1991 + day,
        1: 6,
        2: day,
        3: hour,
        4: 0,
        6: 10 + hour,
        7: 4.5,
        8: 30,
        9: 87_000,
        21: 3.1,
        22: 4,
      };
      for (const [column, value] of Object.entries(place)) cells[Number(column)] = String(value);
      cells[13] = hour > 6 && hour < 19 ? "600" : "0";
      cells[15] = hour > 6 && hour < 19 ? "150" : "0";
      lines.push(over(cells, day, hour).join(","));
    }
  }
  return `${lines.join("\r\n")}\r\n`;
}

function put(cells: readonly string[], column: number, value: string): string[] {
  return cells.map((cell, i) => (i === column ? value : cell));
}

describe("EnergyPlus weather", () => {
  it("is matched by month, day and hour of standard time, whatever the year", () => {
    const reading = readHourlyFile("canyon.epw", epw(), window);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    // 06:30 daylight time is 05:30 standard: hour 6 of the file ends half an hour later, at 16 °C.
    const row = reading.rows.find(({ t_s }) => t_s === 1800)!;
    expect(row).toMatchObject({
      air_C: 16,
      dewPoint_C: 4.5,
      wind_m_per_s: 3.1,
      cloud_frac: 0.4,
      pressure_Pa: 87_000,
      sunOver_s: 3600,
    });
    expect(reading.rows.find(({ t_s }) => t_s === 5400)).toMatchObject({
      global_W_per_m2: 600,
      diffuse_W_per_m2: 150,
    });
    const midnight = reading.rows.find(({ t_s }) => t_s === 1800 + 18 * 3600)!;
    expect(midnight.air_C).toBe(34);
  });

  it("reaches a day to either side of the trip", () => {
    const reading = readHourlyFile("canyon.epw", epw(), window);
    if (!reading.ok) throw new Error("refused");
    expect(reading.rows[0]!.t_s).toBeLessThanOrEqual(-86_400);
    expect(reading.rows.at(-1)!.t_s).toBeGreaterThanOrEqual(window.duration_s + 86_400);
  });

  it("bridges hours marked missing, up to three, and takes humidity where the dew point is missing", () => {
    const holed = epw((cells, day, hour) => {
      if (day === 18 && hour >= 9 && hour <= 10) cells[6] = "99.9";
      if (day === 18 && hour === 12) cells[7] = "99.9";
      return cells;
    });
    const reading = readHourlyFile("canyon.epw", holed, window);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    expect(reading.rows.some(({ t_s }) => t_s === 1800 + 3 * 3600)).toBe(false);
    // 22 °C at 30 %: dew point 3.6 °C by any psychrometric table.
    expect(reading.rows.find(({ t_s }) => t_s === 1800 + 6 * 3600)!.dewPoint_C).toBeCloseTo(3.6, 0);
  });

  it.each([
    { what: "another kind of file", text: "PK zipped", must: /begin with LOCATION/, got: /PK/ },
    { what: "a time zone in words", text: epw().replace(",-7.0,", ",MST,"), must: /time zone/, got: /MST/ },
    {
      what: "no DATA PERIODS",
      text: epw().replace("DATA PERIODS", "DATES"),
      must: /DATA PERIODS/,
      got: /none/,
    },
    { what: "four records an hour", text: epw(undefined, "4"), must: /one record an hour/, got: /4/ },
    {
      what: "a word for the dry bulb",
      text: epw((c, d, h) => (d === 18 && h === 9 ? put(c, 6, "hot") : c)),
      must: /dry bulb/,
      got: /hot/,
    },
    {
      what: "negative wind",
      text: epw((c, d, h) => (d === 18 && h === 9 ? put(c, 21, "-3") : c)),
      must: /wind/,
      got: /-3/,
    },
    {
      what: "a dew point that no air on earth has",
      text: epw((c, d, h) => (d === 18 && h === 9 ? put(c, 7, "55") : c)),
      must: /dew point from −70 to 50/,
      got: /^55$/,
    },
    {
      what: "a humidity that no air on earth has",
      text: epw((c, d, h) => (d === 18 && h === 9 ? put(put(put(c, 6, "58"), 7, "99.9"), 8, "95") : c)),
      must: /dew point is at most 50 °C/,
      got: /58 °C with 95 %/,
    },
    {
      what: "a long hole",
      text: epw((c, d, h) => (d === 18 && h > 8 && h < 13 ? put(c, 21, "999") : c)),
      must: /within 3 h/,
      got: /5\.0 h/,
    },
    { what: "other dates", text: epw((c) => put(c, 1, "7")), must: /cover the trip/, got: /no rows/ },
  ])("refuses $what", ({ text, must, got }) => {
    const problems = problemsOf(readHourlyFile("canyon.epw", text, window));
    const problem = problems.find((one) => must.test(one.must));
    expect(problem, JSON.stringify(problems)).toBeDefined();
    expect(problem!.got).toMatch(got);
  });

  it("a bad line is told with its number in the file", () => {
    const bad = epw((c, d, h) => (d === 18 && h === 9 ? put(c, 6, "hot") : c));
    const problem = problemsOf(readHourlyFile("canyon.epw", bad, window))[0]!;
    expect(bad.split("\r\n")[problem.line! - 1]).toContain("hot");
  });

  it("29 February is read from the 28th of a file without it", () => {
    const february = epw((c, d) => put(put(c, 1, "2"), 2, String(d + 10)));
    const leap = { ...window, departUtc_ms: localInstant_ms("2028-02-29T08:00", timezone), duration_s: 3600 };
    const reading = readHourlyFile("canyon.epw", february, leap);
    expect(reading.ok).toBe(true);
  });
});
