#!/usr/bin/env node
import { Argument, Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { keyAt } from "./brief/keys.ts";
import type { RankWord } from "./brief/sections/sweep.ts";
import type { Completed, CompletedOption, Completion } from "./cli/completion.ts";
import { printError, printOut } from "./disk/files.ts";
import type { MeritName } from "./model.ts";
import { nearestNames, ProblemError } from "./problem.ts";
import { VERSION } from "./version.ts";

/** Exit statuses: done; nothing fits; bad input, or a file that cannot be read or written. */
const done = 0;
const badInput = 2;

/** More designs than anyone reads, and as many as fit into memory and into one text; --ndjson and --parquet hand on any number. */
const MOST_KEPT = 100_000;

/** More than machines have cores, and each takes memory. */
const MOST_THREADS = 256;

/** Faults of which commander says what is wrong but not what would be right. */
const UNEXPLAINED: ReadonlySet<string> = new Set([
  "commander.missingArgument",
  "commander.optionMissingArgument",
  "commander.excessArguments",
  "commander.unknownOption",
]);

/** What commander has to say: it would not wait until that is written, nor hear that it cannot be. */
interface Said {
  out: string;
  error: string;
}

/** The program in commander's words; what a command does is loaded when it is called, so that help and version answer at once. */
function program(exitWith: (code: number) => void, said: Said): Command {
  const coilsieve = new Command("coilsieve")
    .description(
      "Walks every standard wire, material, end style and turn count for a helical compression spring, and ranks what fits.",
    )
    .version(VERSION)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => {
        said.out += text;
      },
      writeErr: (text) => {
        said.error += text;
      },
    })
    .addHelpText("after", examples("coilsieve start latch.yaml", "coilsieve sweep latch.yaml"));

  coilsieve
    .command("sweep")
    .description("rank what fits a brief; prints a table")
    .argument("<brief...>", "briefs, YAML or JSON")
    .option(
      "--html <file>",
      "write a report page, which carries the brief with its comments, paths and prices; out/ writes one for each brief",
    )
    .option("--csv <file>", "write the ranked designs as CSV; - prints that alone")
    .option("--json <file>", "write the whole result as JSON in SI; - prints that alone")
    .option("--svg <file>", "write the chart of what fits, SVG")
    .option("--png <file>", "write the chart of what fits, PNG")
    .option("--ndjson <file>", "write every spring that fits, one line of JSON in SI for each; - prints that alone")
    .option("--parquet <file>", "write every spring that fits as a Parquet table in SI")
    .option("--top <n>", "how many designs to keep (default: 20)", wholeNumber)
    .addOption(new Option("--each <kind>", "keep the best of each").choices(["wire", "material", "ends"]))
    .option("--rank <key,key>", "rank by these instead of the brief's", rankWords)
    .option("--front <key,key>", "the two figures of the front (default: outsideDiameter,freeLength)", twoMeritNames)
    .option("--pin <rank>", "print that design as a brief for check, and no table", wholeNumber)
    .option("--sheet <file>", "write the best design's data sheet for a spring maker, HTML")
    .option("--drawing <file>", "write the best design's drawing, SVG")
    .option("--step <file>", "write the best design as a solid for CAD, STEP, free; out/ writes one for each length")
    .option("--dxf <file>", "write its drawing for CAD, DXF, free and at each load point")
    .option("--glb <file>", "write it as a mesh for viewers, binary glTF; out/ writes one for each length")
    .option("--at <length>", "show it at that length in --drawing, --step and --glb: free, solid or the name of a load point")
    .option("--worked [file]", "show the working of the best design; to a .xlsx, .html or .txt file, else below the table")
    .option("--nearest", "show the nearest miss of each limit also when something fits")
    .option("--workers <n>", "threads that share a long walk (default: one for each core)", threadCount)
    .option("--no-color", "print plain text")
    .addHelpText(
      "after",
      `\nFigures: ${merits.join(", ")};\nto rank by, yield may stand before them, where the brief asks service.scatter.\n${examples(
        "coilsieve sweep latch.yaml --html latch.html",
        "coilsieve sweep latch.yaml --each material --rank relativeCost,mass",
        "coilsieve sweep latch.yaml flap.yaml --json out/ --csv out/",
      )}`,
    )
    .action(async (briefs: string[], options) => {
      const { runSweep } = await import("./cli/sweep.ts");
      exitWith(await runSweep(briefs, options));
    });

  coilsieve
    .command("check")
    .description("judge the one design that a brief gives under design; exits with 1 where it fails")
    .argument("<brief>", "a brief with a design, YAML or JSON")
    .option("--json <file>", "write the whole result as JSON in SI; - prints that alone")
    .option("--sheet <file>", "write the design's data sheet for a spring maker, HTML, where it passes")
    .option("--drawing <file>", "write its drawing, SVG, where it passes")
    .option("--step <file>", "write it as a solid for CAD, STEP, free, where it passes; out/ writes one for each length")
    .option("--dxf <file>", "write its drawing for CAD, DXF, free and at each load point, where it passes")
    .option("--glb <file>", "write it as a mesh for viewers, binary glTF, where it passes; out/ writes one for each length")
    .option("--at <length>", "show it at that length in --drawing, --step and --glb: free, solid or the name of a load point")
    .option("--worked [file]", "show the working; to a .xlsx, .html or .txt file, else below the verdict")
    .option("--no-color", "print plain text")
    .addHelpText("after", examples("coilsieve check quoted.yaml", "coilsieve sweep latch.yaml --pin 1 > rank-1.yaml"))
    .action(async (brief: string, options) => {
      const { runCheck } = await import("./cli/check.ts");
      exitWith(await runCheck(brief, options));
    });

  coilsieve
    .command("relax")
    .description("price each limit: what the best design gains once it is relaxed; what must give when nothing fits")
    .argument("<brief>", "a brief, YAML or JSON")
    .option("--json <file>", "write the whole result as JSON in SI; - prints that alone")
    .option("--no-color", "print plain text")
    .addHelpText("after", examples("coilsieve relax latch.yaml", "coilsieve relax latch.yaml --json prices.json"))
    .action(async (brief: string, options) => {
      const { runRelax } = await import("./cli/relax.ts");
      exitWith(await runRelax(brief, options));
    });

  coilsieve
    .command("catalog")
    .description("list wires, materials and end styles with their sources")
    .addArgument(wordArgument("[kind]", ["wires", "materials", "ends"], "all in short when left out"))
    .addHelpText("after", examples("coilsieve catalog", "coilsieve catalog materials"))
    .action(async (kind: string | undefined) => {
      const { runCatalog } = await import("./cli/catalog.ts");
      await runCatalog(kind);
    });

  coilsieve
    .command("start")
    .description("write a commented brief to begin from")
    .argument("[file]", "a new file; printed when left out")
    .option("--schema", "also write brief.schema.json beside it and name it in the first line, for editors that check YAML")
    .addHelpText("after", examples("coilsieve start latch.yaml", "coilsieve start latch.yaml --schema"))
    .action(async (file: string | undefined, options) => {
      const { runStart } = await import("./cli/start.ts");
      await runStart(file, options);
    });

  coilsieve
    .command("schema")
    .description("print the JSON Schema of a kind of file, for editors and programs that write such files")
    .addArgument(wordArgument("<kind>", ["brief", "material", "wires", "ends"], "of which kind of file"))
    .addHelpText("after", examples("coilsieve schema brief > brief.schema.json", "coilsieve schema material"))
    .action(async (kind: string) => {
      const { runSchema } = await import("./cli/schema.ts");
      await runSchema(kind);
    });

  coilsieve
    .command("completion")
    .description("print the script that lets a shell complete commands, options and files")
    .addArgument(wordArgument("<shell>", ["bash", "zsh", "fish"], "for which shell"))
    .addHelpText("after", examples("source <(coilsieve completion bash)", "coilsieve completion fish | source"))
    .action(async (shell: string) => {
      const { runCompletion } = await import("./cli/completion.ts");
      await runCompletion(shell, completionOf(coilsieve));
    });
  return coilsieve;
}

/** An argument that takes one of a few words; the command itself says what is wrong with another. */
function wordArgument(name: string, words: readonly string[], description?: string): Argument {
  const argument = new Argument(name, description);
  argument.argChoices = [...words];
  return argument;
}

/** Commands and options as a shell completes them, from commander's own. */
function completionOf(coilsieve: Command): Completion {
  const help = coilsieve.createHelp();
  const optionsOf = (command: Command) =>
    help.visibleOptions(command).map(
      ({ long, description, required, optional, argChoices, flags }): CompletedOption => ({
        name: long as string,
        description,
        ...(required || optional ? { value: completed(flags, argChoices) } : {}),
      }),
    );
  const commands = help.visibleCommands(coilsieve).map((command) => {
    const [argument] = command.registeredArguments;
    const value = argument && { argument: completed(argument.name(), argument.argChoices) };
    return { name: command.name(), description: command.description(), options: optionsOf(command), ...value };
  });
  return { options: optionsOf(coilsieve), commands };
}

/** What stands for a value, by the name that it has in the help. */
function completed(name: string, words: readonly string[] | undefined): Completed {
  if (words !== undefined) return { words };
  if (name.includes("key,key")) return { words: name.includes("--rank") ? ranking : merits };
  if (name.includes("brief")) return "brief";
  return name.includes("file") ? "file" : "unknown";
}

const ranking = (keyAt("rank").words ?? []) as readonly RankWord[];
const merits = ranking.filter((word) => word !== "yield");

function examples(...commands: string[]): string {
  return `\nExamples:\n${commands.map((command) => `  ${command}`).join("\n")}`;
}

function wholeNumber(text: string): number {
  return wholeUpTo(MOST_KEPT, text);
}

function threadCount(text: string): number {
  return wholeUpTo(MOST_THREADS, text);
}

function wholeUpTo(most: number, text: string): number {
  if (/^[1-9]\d*$/.test(text) && Number(text) <= most) return Number(text);
  throw new InvalidArgumentError(`Write a whole number from 1 to ${most}.`);
}

function rankWords(text: string): readonly RankWord[] {
  return namesOf(text, ranking);
}

/** Names of figures, each one of those that are known. */
function namesOf<Name extends string>(text: string, known: readonly Name[]): readonly Name[] {
  const names = text.split(",").map((name) => name.trim());
  for (const name of names) {
    if (known.some((one) => one === name)) continue;
    const [nearest] = nearestNames(name, known);
    throw new InvalidArgumentError(nearest ? `Did you mean ${nearest}?` : `It takes ${known.join(", ")}.`);
  }
  if (new Set(names).size < names.length) throw new InvalidArgumentError("Name each figure once.");
  return names as Name[];
}

function twoMeritNames(text: string): readonly [MeritName, MeritName] {
  const [across, up, ...more] = namesOf(text, merits);
  if (across === undefined || up === undefined || more.length > 0) throw new InvalidArgumentError("A front takes two figures.");
  return [across, up];
}

/** Runs what was typed; resolves to the exit status. */
async function main(): Promise<number> {
  let exitCode = done;
  const said: Said = { out: "", error: "" };
  const coilsieve = program((code) => {
    exitCode = code;
  }, said);
  try {
    try {
      await coilsieve.parseAsync();
    } catch (error) {
      if (!(error instanceof CommanderError)) throw error;
      exitCode = error.exitCode === 0 ? done : badInput;
      const unexplained = said.error !== "" && UNEXPLAINED.has(error.code);
      await printError(
        unexplained ? `${said.error}(coilsieve --help lists the commands; --help after one shows what it takes)\n` : said.error,
      );
      await printOut(said.out);
    }
    return exitCode;
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    await printError(`${error instanceof ProblemError ? fault : `a fault of coilsieve itself, not of its input: ${fault}`}\n`);
    return badInput;
  }
}

process.exitCode = await main();
