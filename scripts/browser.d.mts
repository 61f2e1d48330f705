import type { Browser } from "playwright-core";

/** Starts the browser; whoever calls closes it. */
export function launchBrowser(): Promise<Browser>;
