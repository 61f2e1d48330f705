/** Members in a real page: the same numbers as in Node, in workers, while the page itself stays free. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { MemberPool } from "../../app/worker/memberPool.ts";
import {
  type Draws,
  type MemberTask,
  runTask,
  type TripSource,
  tasksFor,
  tripsOf,
} from "../../core/index.ts";
import { launchBrowser } from "../../scripts/browser.mjs";

declare global {
  interface Window {
    Pool: typeof MemberPool;
  }
}

const root = join(import.meta.dirname, "../..");
const built = mkdtempSync(join(tmpdir(), "coldstow-app-"));
const shell = `<!doctype html><title>members</title>
<script type="module">import { MemberPool } from "/memberPool.js"; window.Pool = MemberPool;</script>`;

let server: Server;
let browser: Browser;
let page: Page;

async function bundle(): Promise<void> {
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: "warn",
    worker: { format: "es" },
    build: {
      outDir: built,
      emptyOutDir: true,
      rolldownOptions: {
        input: join(root, "app/worker/memberPool.ts"),
        preserveEntrySignatures: "strict",
        output: { entryFileNames: "memberPool.js" },
      },
    },
  });
}

/** Serves the page and what was built for it, and nothing else. */
function serve(): Promise<string> {
  server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://here").pathname;
    const isScript = extname(path) === ".js";
    try {
      const body = path === "/" ? shell : readFileSync(join(built, path));
      response.setHeader("content-type", isScript ? "text/javascript" : "text/html").end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((resolve) => {
    server.listen(0, "127.0.0.1", () => {
      resolve(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    });
  });
}

beforeAll(async () => {
  await bundle();
  const [address, started] = await Promise.all([serve(), launchBrowser()]);
  browser = started;
  page = await browser.newPage();
  await page.goto(address);
  await page.waitForFunction(() => window.Pool !== undefined);
});

afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(built, { recursive: true, force: true });
});

function example(name: string): TripSource {
  const file = `${name}.yaml`;
  return { text: readFileSync(join(root, "examples", file), "utf8"), file, beside: [] };
}

interface Flat {
  /** Every number that is not a count, in a fixed order. */
  numbers: number[];
  /** Bins of the series that are not the first one: place, and which bin. */
  counts: [number, number][];
}

/** Runs tasks in the page. Written without names from outside, for it is sent there as text. */
function inPage(source: TripSource, tasks: readonly MemberTask[], most: number): Promise<Flat> {
  return page.evaluate(
    async ({ source, tasks, most }) => {
      const pool = new window.Pool([source], most);
      const parts = await pool.run(tasks);
      pool.close();
      const arraysIn = (value: unknown): (Float64Array | Uint16Array)[] =>
        value instanceof Float64Array || value instanceof Uint16Array
          ? [value]
          : typeof value === "object" && value !== null
            ? Object.values(value).flatMap(arraysIn)
            : [];
      const arrays = arraysIn(parts);
      const counts = arrays.filter((array) => array instanceof Uint16Array).flatMap((array) => [...array]);
      return {
        numbers: arrays.filter((array) => array instanceof Float64Array).flatMap((array) => [...array]),
        counts: counts.flatMap((count, bin): [number, number][] => (count > 0 ? [[bin, count]] : [])),
      };
    },
    { source, tasks, most },
  );
}

function inNode(source: TripSource, tasks: readonly MemberTask[]): Flat {
  const trips = tripsOf([source]);
  const parts = tasks.map((task) => runTask(trips, task));
  const floats = ({ coolers, food }: Draws): number[] =>
    [...coolers, ...food].flatMap((draws) => Object.values(draws as object).flatMap((column) => [...column]));
  const counts = parts.flatMap(({ series }) =>
    series!.flatMap((of) => Object.values(of).flatMap(({ bins }) => [...bins])),
  );
  return {
    numbers: parts.flatMap(floats),
    counts: counts.flatMap((count, bin): [number, number][] => (count > 0 ? [[bin, count]] : [])),
  };
}

describe("members in a page", () => {
  it.each(["family-three-days", "festival-weekend", "desert-river"])(
    "%s: every number is Node's, to a billionth",
    async (name) => {
      const tasks = tasksFor(0, null, 32, 1, true);
      const [there, here] = [await inPage(example(name), tasks, 2), inNode(example(name), tasks)];
      expect(there.numbers.length).toBe(here.numbers.length);
      let worst_rel = 0;
      const apart = there.numbers.filter((value, i) => {
        const other = here.numbers[i]!;
        if (Number.isNaN(value) || Number.isNaN(other)) return !Object.is(value, other);
        const rel = Math.abs(value - other) / Math.max(1e-9, Math.abs(other));
        worst_rel = Math.max(worst_rel, value === other ? 0 : rel);
        return !(value === other || rel <= 1e-9);
      });
      console.log(`${name}: ${here.numbers.length} numbers, worst difference ${worst_rel.toExponential(1)}`);
      expect(apart).toEqual([]);
      // A last digit may carry a value over the edge of its bin.
      const bins = new Map(here.counts);
      const moved = there.counts.reduce(
        (sum, [bin, count]) => sum + Math.abs(count - (bins.get(bin) ?? 0)),
        0,
      );
      const all = here.counts.reduce((sum, [, count]) => sum + count, 0);
      expect(moved / all).toBeLessThan(1e-3);
    },
  );

  it("are the same with one, two and three workers, to the bit", async () => {
    const tasks = tasksFor(0, null, 48, 7, true);
    expect(tasks.length).toBeGreaterThanOrEqual(3);
    const one = await inPage(example("festival-weekend"), tasks, 1);
    for (const most of [2, 3]) {
      const more = await inPage(example("festival-weekend"), tasks, most);
      // Equal in the sense of Object.is, so that NaN equals NaN and nothing is rounded.
      expect(more.numbers.every((value, i) => Object.is(value, one.numbers[i]))).toBe(true);
      expect(more).toEqual(one);
    }
  });
});

/** Longest stretch that the page's own thread worked at one go, in its own time: other programs' turns do not count. */
async function longestWork_ms(act: () => Promise<void>): Promise<number> {
  await browser.startTracing(page, {
    categories: ["toplevel", "__metadata", "disabled-by-default-devtools.timeline"],
  });
  await act();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: { name: string; pid: number; tid: number; tdur?: number; args: { name?: string } }[];
  };
  const mains = traceEvents.filter(
    ({ name, args }) => name === "thread_name" && args.name === "CrRendererMain",
  );
  const work = traceEvents.filter(
    ({ pid, tid, tdur }) => tdur !== undefined && mains.some((main) => main.pid === pid && main.tid === tid),
  );
  expect(work.length).toBeGreaterThan(5);
  return Math.max(...work.map(({ tdur }) => tdur! / 1000));
}

describe("the page", () => {
  it("would be seen to be blocked", async () => {
    const longest_ms = await longestWork_ms(async () => {
      await page.evaluate(() => {
        let sum = 0;
        for (const end = performance.now() + 400; performance.now() < end; ) sum += Math.sqrt(sum + 1);
        return sum;
      });
    });
    expect(longest_ms).toBeGreaterThan(50);
  });

  it("is never blocked for 50 ms while 64 members run", async () => {
    const source = example("family-three-days");
    const tasks = tasksFor(0, null, 64, 1, true);
    let gap_ms = 0;
    const longest_ms = await longestWork_ms(async () => {
      gap_ms = await page.evaluate(
        async ({ source, tasks }) => {
          let last = performance.now();
          let worst = 0;
          const beat = setInterval(() => {
            const now = performance.now();
            worst = Math.max(worst, now - last);
            last = now;
          }, 5);
          const pool = new window.Pool([source]);
          await pool.run(tasks);
          pool.close();
          clearInterval(beat);
          return worst;
        },
        { source, tasks },
      );
    });
    console.log(
      `page: longest work ${longest_ms.toFixed(1)} ms of its own time; longest wait of a 5 ms beat ${gap_ms.toFixed(1)} ms`,
    );
    expect(longest_ms).toBeLessThan(50);
  });

  it("calls members off at once, and can start again", async () => {
    const tasks = tasksFor(0, null, 64, 1, true);
    const { name, waited_ms, again } = await page.evaluate(
      async ({ source, tasks }) => {
        const pool = new window.Pool([source], 2);
        const off = new AbortController();
        let asked_ms = 0;
        const onProgress = (): void => {
          asked_ms ||= performance.now();
          off.abort();
        };
        const name = await pool.run(tasks, { signal: off.signal, onProgress }).then(
          () => "nothing",
          (error: Error) => error.name,
        );
        const waited_ms = performance.now() - asked_ms;
        const again = await pool.run(tasks.slice(0, 1));
        pool.close();
        return { name, waited_ms, again: again.length };
      },
      { source: example("family-three-days"), tasks },
    );
    expect(name).toBe("Cancelled");
    expect(waited_ms).toBeLessThan(100);
    expect(again).toBe(1);
  });

  it("hears of what goes wrong in a worker", async () => {
    const broken = { ...example("family-three-days"), text: "coldstow: 1\n" };
    const told = await page.evaluate(
      ({ source, tasks }) =>
        new window.Pool([source], 2).run(tasks).then(
          () => "nothing",
          (error: Error) => `${error.name}: ${error.message}`,
        ),
      { source: broken, tasks: tasksFor(0, null, 32, 1, false) },
    );
    expect(told).toMatch(/^DomainError: sources must be trip files without a mistake/);
  });
});
