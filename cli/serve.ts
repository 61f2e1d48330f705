import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { Command } from "commander";
import { inputError } from "./failure.ts";
import { type Flags, wholeNumber } from "./flags.ts";
import { note } from "./speak.ts";

/** This machine alone: nothing on the network reaches it. */
const LOOPBACK = "127.0.0.1";
const USUAL_PORT = 8737;

const types: Readonly<Record<string, string>> = {
  ".css": "text/css",
  ".html": "text/html",
  ".js": "text/javascript",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
  ".yaml": "text/plain",
};

/** `coldstow serve`: the app from the package, for a browser on this machine. It runs until Ctrl-C. */
export function serveCommand(): Command {
  return new Command("serve")
    .summary("Open the app in a browser on this machine.")
    .description("Open the app: serve it to a browser on this machine, until Ctrl-C.")
    .option("--port <n>", "port on this machine; 0 takes a free one", wholeNumber(0, 65_535), USUAL_PORT)
    .option("--quiet", "print the address, and nothing else")
    .action(async (flags: Flags & { port: number }) => {
      const server = await started(pageFolder(), flags.port);
      const { port } = server.address() as AddressInfo;
      process.stdout.write(`http://localhost:${port}/\n`);
      note(
        flags,
        "Open that address in a browser. After one visit it also opens without this command. Ctrl-C ends it.",
      );
    });
}

function pageFolder(): string {
  const folder = fileURLToPath(new URL("../page/", import.meta.url));
  if (!existsSync(join(folder, "index.html")))
    throw inputError("the app", "dist/page", "built with npm run build", "nothing there");
  return folder;
}

function started(folder: string, port: number): Promise<Server> {
  const server = createServer((request, response) => {
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.writeHead(405, { allow: "GET, HEAD" }).end();
      return;
    }
    send(response, folder, request.url ?? "/", request.method === "HEAD");
  });
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = error.code === "EADDRINUSE";
      reject(taken ? inputError("serve", "--port", "a port that is free", String(port)) : error);
    });
    server.listen(port, LOOPBACK, () => resolve(server));
  });
}

function send(response: ServerResponse, folder: string, url: string, isHead: boolean): void {
  const file = fileFor(folder, url);
  if (file === null) {
    response.writeHead(404, { "content-type": "text/plain" }).end("There is no such file here.\n");
    return;
  }
  // Names of built files carry a hash of what is in them; the others must be asked for again.
  const isFixed = file.includes(`${sep}assets${sep}`);
  response.writeHead(200, {
    "content-type": types[extname(file)] ?? "application/octet-stream",
    "cache-control": isFixed ? "public, max-age=31536000, immutable" : "no-cache",
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
  });
  if (isHead) response.end();
  else createReadStream(file).pipe(response);
}

/** The file that an address names, inside the folder; null: there is none. */
function fileFor(folder: string, url: string): string | null {
  try {
    const path = decodeURIComponent(new URL(url, "http://localhost").pathname);
    const file = normalize(join(folder, path.endsWith("/") ? `${path}index.html` : path));
    const inside = file.startsWith(normalize(folder));
    return inside && !path.includes("\0") && statSync(file).isFile() ? file : null;
  } catch {
    return null;
  }
}
