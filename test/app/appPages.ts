/** The built app, served by the built command, and phones of people who use it. */
import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { expect } from "vitest";

const command = join(import.meta.dirname, "../../dist/cli/coldstow.js");

/** One server with the phones of a test, and what they must never do: break, or ask for anything that is not its own. */
export class AppPages {
  address = "";
  faults: string[] = [];
  #server: ChildProcess | null = null;
  #contexts: BrowserContext[] = [];

  async serve(): Promise<void> {
    const server = spawn(process.execPath, [command, "serve", "--port", "0", "--quiet"]);
    this.#server = server;
    this.address = await new Promise((resolve, reject) => {
      server.stdout.once("data", (line: Buffer) => resolve(line.toString().trim()));
      server.stderr.on("data", (line: Buffer) => reject(new Error(line.toString())));
    });
  }

  async end(): Promise<void> {
    const server = this.#server!;
    await new Promise((resolve) => {
      server.once("exit", resolve);
      server.kill();
    });
  }

  /** A device of its own: nothing of another is kept on it. */
  async device(
    browser: Browser,
    options: Parameters<Browser["newContext"]>[0] = {},
  ): Promise<BrowserContext> {
    const context = await browser.newContext({ viewport: { width: 360, height: 740 }, ...options });
    this.#contexts.push(context);
    return context;
  }

  async page(context: BrowserContext): Promise<Page> {
    const page = await context.newPage();
    page.on("pageerror", ({ message }) => this.faults.push(message));
    page.on("request", (request) => {
      if (!request.url().startsWith(this.address) && !/^(blob|data):/.test(request.url()))
        this.faults.push(`asks for ${request.url()}`);
    });
    return page;
  }

  /** The app on a page, with nothing in it or with what was there. */
  async opened(context: BrowserContext, hash = ""): Promise<Page> {
    const page = await this.page(context);
    await page.goto(`${this.address}${hash}`);
    await page.locator("h1").first().waitFor();
    return page;
  }

  /** The app with a trip made from a template. */
  async begun(context: BrowserContext, template: string): Promise<Page> {
    const page = await this.page(context);
    await this.fill(page, template);
    return page;
  }

  async fill(page: Page, template: string): Promise<void> {
    await page.goto(this.address);
    await page.getByRole("radio", { name: new RegExp(`^${template}`) }).check();
    await page.getByRole("button", { name: "Begin", exact: true }).click();
    await page.getByRole("button", { name: "Plan it" }).waitFor();
  }

  async afterEach(): Promise<void> {
    for (const context of this.#contexts) await context.close();
    this.#contexts = [];
    const told = this.faults;
    this.faults = [];
    expect(told).toEqual([]);
  }
}
