import type { Browser } from "playwright-core";

/** Starts the browser with further switches of its own; whoever calls closes it. */
export function launchBrowser(switches?: readonly string[]): Promise<Browser>;
