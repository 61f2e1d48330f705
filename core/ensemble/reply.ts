import { DomainError, ModelError } from "../quantity/errors.ts";
import type { Draws, MemberTask } from "./types.ts";

/** What a worker sends back for a task. Plain data, for a class does not survive the journey. */
export type Reply =
  | { draws: Draws }
  | { thrown: { name: string; message: string; stack: string; broken: Pick<ModelError, "residual"> | null } };

/** Runs a task; what it throws goes into the reply. */
export function replyTo(task: MemberTask, run: (task: MemberTask) => Draws): Reply {
  try {
    return { draws: run(task) };
  } catch (error) {
    const { name, message, stack } = error instanceof Error ? error : new Error(String(error));
    const broken = error instanceof ModelError ? { residual: error.residual } : null;
    return { thrown: { name, message, stack: stack ?? message, broken } };
  }
}

/**
 * Unpacks a reply.
 *
 * @throws what was thrown where the task ran, as the same kind of error with the stack from there
 */
export function drawsOf(reply: Reply): Draws {
  if ("draws" in reply) return reply.draws;
  const { name, message, stack, broken } = reply.thrown;
  const error =
    broken !== null
      ? new ModelError(message, broken.residual)
      : name === "DomainError"
        ? new DomainError(message)
        : new Error(message);
  // The message of a broken model already says how much is left over; once is enough.
  error.message = message;
  error.stack = stack;
  throw error;
}

/** The memory of a reply, to be handed over instead of copied. */
export function buffersOf(reply: Reply): ArrayBuffer[] {
  const buffers = viewsIn(reply).map(({ buffer }) => buffer);
  return [...new Set(buffers.filter((buffer) => buffer instanceof ArrayBuffer))];
}

function viewsIn(value: unknown): ArrayBufferView[] {
  if (ArrayBuffer.isView(value)) return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(viewsIn) : [];
}
