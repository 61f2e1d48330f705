import { describe, expect, it } from "vitest";
import { Outstanding } from "../../../core/ensemble/outstanding.ts";
import { buffersOf, drawsOf, type Reply, replyTo } from "../../../core/ensemble/reply.ts";
import { spreadOver, type TaskWorker } from "../../../core/ensemble/spread.ts";
import { tasksFor } from "../../../core/ensemble/tasks.ts";
import { Cancelled, type Draws, type MemberTask } from "../../../core/ensemble/types.ts";
import { DomainError, ModelError } from "../../../core/quantity/errors.ts";

const drawsFor = ({ from, to }: MemberTask): Draws => ({ from, to, coolers: [], food: [], series: null });

/** A worker that takes its time: `turns` rounds of waiting for each task. */
const slow = (turns: number, done: MemberTask[] = []): TaskWorker => ({
  run: async (task) => {
    for (let turn = 0; turn < turns; turn++) await null;
    done.push(task);
    return drawsFor(task);
  },
});

const tasks = tasksFor(0, null, 100, 1, false);

describe("spreading tasks over workers", () => {
  it("answers in the order of the tasks, whoever is faster", async () => {
    const answers = await spreadOver([slow(9), slow(1), slow(4)])(tasks);
    expect(answers.map(({ from, to }) => [from, to])).toEqual(tasks.map(({ from, to }) => [from, to]));
  });

  it("gives the next task to whoever is free, each task once", async () => {
    const [quick, lazy]: [MemberTask[], MemberTask[]] = [[], []];
    await spreadOver([slow(1, quick), slow(20, lazy)])(tasks);
    expect(quick.length).toBeGreaterThan(lazy.length);
    expect(new Set([...quick, ...lazy])).toEqual(new Set(tasks));
    expect(quick.length + lazy.length).toBe(tasks.length);
  });

  it("tells progress that never falls and ends with 1", async () => {
    const told: number[] = [];
    await spreadOver([slow(3), slow(1)])(tasks, { onProgress: (done_frac) => told.push(done_frac) });
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
    expect(told).toHaveLength(tasks.length);
  });

  it("hands out nothing more once it is called off", async () => {
    const signal = { aborted: false };
    const done: MemberTask[] = [];
    const onProgress = (): void => {
      signal.aborted = true;
    };
    await expect(spreadOver([slow(1, done)])(tasks, { signal, onProgress })).rejects.toThrow(Cancelled);
    expect(done).toHaveLength(1);
    await expect(spreadOver([slow(1)])(tasks.slice(0, 1), { signal })).rejects.toThrow(Cancelled);
  });

  it("passes the first error on and hands out nothing more", async () => {
    const done: MemberTask[] = [];
    const broken: TaskWorker = { run: () => Promise.reject(new ModelError("books", 2)) };
    await expect(spreadOver([broken, slow(1, done)])(tasks)).rejects.toThrow(ModelError);
    expect(done.length).toBeLessThanOrEqual(1);
  });

  it("has nothing to do for no tasks", async () => {
    expect(await spreadOver([slow(1)])([])).toEqual([]);
  });
});

describe("a reply", () => {
  const task = tasks[0]!;
  const journey = (reply: Reply): Reply => structuredClone(reply);

  it("brings draws back as they are, with their memory handed over once", () => {
    const column = Float64Array.of(1, Number.NaN, -0);
    const cooler = {
      iceOut_h: column,
      iceCarriedOn_h: column,
      overLimit_h: column,
      iceLeft_kg: column,
      warmest_C: column,
    };
    const reply = replyTo(task, () => ({ ...drawsFor(task), coolers: [cooler] }));
    const buffers = buffersOf(reply);
    expect(buffers).toEqual([column.buffer]);
    const sent = structuredClone(reply, { transfer: buffers });
    expect(column.length).toBe(0);
    expect(Object.is(drawsOf(sent).coolers[0]!.iceOut_h[2], -0)).toBe(true);
    expect(drawsOf(sent).coolers[0]!.iceOut_h[1]).toBeNaN();
  });

  it.each([
    [new ModelError("the books do not close", 0.5), ModelError],
    [new DomainError("outside_C must be −60…90, got 300"), DomainError],
    [new TypeError("x is not a function"), Error],
  ])("brings back %s as the same kind of error, with its words and its stack", (error, kind) => {
    const reply = journey(
      replyTo(task, () => {
        throw error;
      }),
    );
    let thrown: unknown;
    try {
      drawsOf(reply);
    } catch (caught) {
      thrown = caught;
    }
    expect(thrown).toBeInstanceOf(kind);
    expect((thrown as Error).message).toBe(error.message);
    expect((thrown as Error).stack).toBe(error.stack);
    if (error instanceof ModelError) expect((thrown as ModelError).residual).toBe(0.5);
  });
});

describe("tasks that are out", () => {
  const reply = (from: number): Reply => ({ draws: drawsFor({ ...tasks[0]!, from, to: from + 1 }) });

  it("are answered in the order they were sent", async () => {
    const outstanding = new Outstanding();
    const [first, second] = [outstanding.ask(() => {}), outstanding.ask(() => {})];
    outstanding.answer(reply(1));
    outstanding.answer(reply(2));
    expect([(await first).from, (await second).from]).toEqual([1, 2]);
  });

  it("all fail when the worker ends, and so do later ones, which are not sent; the first end counts", async () => {
    const outstanding = new Outstanding();
    const out = outstanding.ask(() => {});
    outstanding.end(new Cancelled("called off"));
    outstanding.end(new Error("ended by itself"));
    await expect(out).rejects.toThrow(Cancelled);
    let sent = false;
    const late = outstanding.ask(() => {
      sent = true;
    });
    await expect(late).rejects.toThrow(Cancelled);
    expect(sent).toBe(false);
  });
});
