#!/usr/bin/env node
import { readFileSync } from "node:fs";
import { Command, CommanderError } from "commander";
import { Cancelled, ModelError } from "../core/index.ts";
import { campCommand } from "./camp.ts";
import { checkCommand } from "./check.ts";
import { closeOutCommand } from "./closeOut.ts";
import { compareCommand } from "./compare.ts";
import { experimentCommand } from "./experiment.ts";
import { InputError, systemWords } from "./failure.ts";
import { forecastCommand } from "./forecast.ts";
import { habitsCommand } from "./habits.ts";
import { iceTestCommand } from "./iceTest.ts";
import { menuCommand } from "./menu.ts";
import { newTripCommand } from "./newTrip.ts";
import { planCommand } from "./plan.ts";
import { serveCommand } from "./serve.ts";
import { stressCommand } from "./stress.ts";

const exitCodes = `
Exit status: 0 fine, 1 food at risk or something does not fit, 2 the input is wrong, 3 our bug,
130 called off with Ctrl-C.
It reckons and does not measure: a thermometer, your eyes and local rules come first.`;

function version(): string {
  // The built file lies two folders below package.json, the source one.
  for (const place of ["../../package.json", "../package.json"]) {
    try {
      return (JSON.parse(readFileSync(new URL(place, import.meta.url), "utf8")) as { version: string })
        .version;
    } catch {}
  }
  return "unknown";
}

function program(finish: (code: number) => void): Command {
  const coldstow = new Command("coldstow")
    .description("What happens to ice and food in coolers on a trip away from power.")
    .version(version(), "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    // Every command has options; without saying so in each line the list stays on a screen.
    .configureHelp({
      subcommandTerm: (command) => `${command.name()} ${command.usage().replace(/\[options\] ?/, "")}`.trim(),
    })
    .addHelpText("after", exitCodes)
    .exitOverride();
  const commands = [
    forecastCommand,
    planCommand,
    campCommand,
    habitsCommand,
    stressCommand,
    compareCommand,
    closeOutCommand,
    experimentCommand,
    iceTestCommand,
    checkCommand,
    menuCommand,
    newTripCommand,
    serveCommand,
  ];
  for (const command of commands.map((make) => make(finish)))
    coldstow.addCommand(command.helpOption("-h, --help", "print this help").copyInheritedSettings(coldstow));
  return coldstow;
}

/** Runs one command line and says with which status to leave. */
async function run(argv: readonly string[]): Promise<number> {
  let status = 0;
  const asJson = argv.includes("--json");
  try {
    await program((code) => {
      status = code;
    }).parseAsync([...argv]);
    return status;
  } catch (error) {
    return failed(error, asJson);
  }
}

function failed(error: unknown, asJson: boolean): number {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return 0;
    if (asJson)
      printProblems([
        {
          line: null,
          path: "",
          must: "a command line as --help shows it",
          got: error.message.replace(/^error: /, ""),
          near: null,
        },
      ]);
    return 2;
  }
  if (error instanceof InputError) {
    if (asJson) printProblems(error.problems);
    else process.stderr.write(error.message);
    return 2;
  }
  if (error instanceof Cancelled) {
    process.stderr.write("Called off; nothing was written.\n");
    return 130;
  }
  const residual =
    error instanceof ModelError ? "The reckoning does not close." : "Something broke that should not.";
  process.stderr.write(`Our bug, not yours. ${residual} ${String(error)}\n`);
  if (process.env.COLDSTOW_DEBUG) process.stderr.write(`${(error as Error)?.stack}\n`);
  else process.stderr.write("Please report it with the trip file; COLDSTOW_DEBUG=1 shows where it broke.\n");
  return 3;
}

function printProblems(problems: InputError["problems"]): void {
  process.stdout.write(`${JSON.stringify({ problems })}\n`);
}

// Whoever reads our output may stop early, as `head` does: that is no fault of anybody. A full disk can be mended.
for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit();
    if (stream === process.stdout)
      process.stderr.write(`The answer could not be written: ${systemWords(error)}.\n`);
    process.exit(2);
  });

process.exitCode = await run(process.argv);
