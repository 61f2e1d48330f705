import { drawsOf, type Reply } from "./reply.ts";
import type { Draws } from "./types.ts";

/** Tasks that are out to one worker, oldest first: a worker answers in the order in which it was asked. */
export class Outstanding {
  readonly #waiting: { resolve: (draws: Draws) => void; reject: (error: unknown) => void }[] = [];
  /** Why no answer will come any more. */
  #ended: unknown = null;

  /** Sends a task and waits for its draws. */
  ask(send: () => void): Promise<Draws> {
    return new Promise((resolve, reject) => {
      if (this.#ended !== null) return reject(this.#ended);
      this.#waiting.push({ resolve, reject });
      send();
    });
  }

  /** Takes in the reply to the oldest task. */
  answer(reply: Reply): void {
    const oldest = this.#waiting.shift();
    try {
      oldest?.resolve(drawsOf(reply));
    } catch (error) {
      oldest?.reject(error);
    }
  }

  /** No answer will come any more: all that is out, and all that is asked later, fails with this. The first end counts. */
  end(why: unknown): void {
    this.#ended ??= why;
    for (const { reject } of this.#waiting.splice(0)) reject(this.#ended);
  }
}
