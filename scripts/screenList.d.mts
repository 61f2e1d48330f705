import type { Page } from "playwright-core";

/** A screen of the app; `leave` where it covers others and has to be put away again. */
export interface Screen {
  name: string;
  reach: (page: Page) => Promise<unknown>;
  leave?: (page: Page) => Promise<unknown>;
}

export const screens: readonly Screen[];
export const looks: readonly ["day", "sun", "night"];

/** A morning of the river template, while the trip goes on. */
export const duringTrip_ms: number;

/** Chooses a look as its button does, without the way to it. */
export function putOn(page: Page, look: string): Promise<void>;

/** The app with a template begun, and planned unless `isPlanned` says otherwise. */
export function begin(page: Page, address: string, template?: string, isPlanned?: boolean): Promise<void>;
