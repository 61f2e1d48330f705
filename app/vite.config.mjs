import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

/**
 * Nothing leaves the device: a page from this file may talk to its own origin alone, and to that only for its own files.
 * `wasm-unsafe-eval` lets the solver's WebAssembly run; it does not let text become script.
 */
const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "frame-src blob:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** @type {import("vite").Plugin} */
const withPolicy = {
  name: "content-security-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: policy },
      injectTo: "head-prepend",
    },
  ],
};

export default defineConfig({
  root: here("."),
  base: "./",
  plugins: [
    svelte({ compilerOptions: { runes: true } }),
    withPolicy,
    VitePWA({
      registerType: "prompt",
      injectRegister: false,
      manifest: {
        name: "Coldstow",
        short_name: "Coldstow",
        description: "How long ice and food keep in coolers",
        start_url: "./",
        scope: "./",
        display: "standalone",
        background_color: "#ffffff",
        theme_color: "#ffffff",
        icons: [{ src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
      },
      workbox: {
        globPatterns: ["**/*.{html,js,css,woff2,svg,wasm,yaml,json}"],
        // The solver alone is larger than the usual bound.
        maximumFileSizeToCacheInBytes: 6_000_000,
        navigateFallback: "index.html",
      },
    }),
  ],
  worker: { format: "es" },
  build: { outDir: here("../dist/page"), emptyOutDir: true, target: "es2022", assetsInlineLimit: 0 },
});
