/** `npm run score`: compares the model with every measured test and prints the errors as tables. */
import { install, node, tool } from "./steps.mjs";

process.exitCode =
  install() ||
  node(
    [tool("vitest/vitest.mjs"), "run", "test/truth", "--reporter=default", "--disable-console-intercept"],
    {
      env: { COLDSTOW_SCORE: "print" },
    },
  );
