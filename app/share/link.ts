import { FileRefused } from "./refused.ts";

/** What follows the place in an address that hands a parcel over. A fragment stays in the browser: no server gets it. */
export const SENT = "#/sent/";
/** Longer ones do not travel: what carries messages cuts them. */
const MOST_CHARACTERS = 500_000;

export function linkTo(bytes: Uint8Array, page: string): string {
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  const letters = btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
  return `${page.replace(/#.*$/s, "")}${SENT}${letters}`;
}

/** The parcel in a link, or in what follows `#/sent/` of one. */
export function bytesOfLink(link: string): Uint8Array<ArrayBuffer> {
  const at = link.indexOf(SENT);
  const letters = (at < 0 ? link : link.slice(at + SENT.length)).trim();
  if (letters.length > MOST_CHARACTERS)
    throw new FileRefused("The link is longer than that of any trip. Nothing was changed.");
  // One letter alone holds no byte: lengths of 4 n + 1 are never made.
  if (!/^[A-Za-z0-9_-]+$/.test(letters) || letters.length % 4 === 1)
    throw new FileRefused("The link is damaged or was cut short. Nothing was changed.");
  const binary = atob(letters.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (one) => one.charCodeAt(0));
}

/** Whether other devices cannot reach the page at its address: it is served to this machine alone. */
export const isHereOnly = (host: string): boolean =>
  host === "localhost" || /^127\./.test(host) || host === "[::1]";
