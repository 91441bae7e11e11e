import { type Completed, type CompletedOption, type Completion, quotedText } from "./completed.ts";

/** The script for fish, for `coilsieve completion fish | source`, or as a file `coilsieve.fish` in its folder of completions. */
export function fishScript({ options, commands }: Completion): string {
  const first = "-n __fish_use_subcommand";
  const lines = commands.flatMap(({ name, description, options, argument }) => {
    const after = `-n ${quotedText(`__fish_seen_subcommand_from ${name}`)}`;
    return [
      `complete -c coilsieve ${first} -a ${name} -d ${quotedText(description)}`,
      ...options.map((option) => optionLine(after, option)),
      ...(argument === undefined ? [] : [`complete -c coilsieve ${after} ${argumentOf(argument)}`]),
    ];
  });
  return `complete -c coilsieve -f\n${[...options.map((option) => optionLine(first, option)), ...lines].join("\n")}\n`;
}

function optionLine(when: string, { name, description, value }: CompletedOption): string {
  const takes = value === undefined ? "" : ` -r ${argumentOf(value)}`;
  return `complete -c coilsieve ${when} -l ${name.slice(2)}${takes} -d ${quotedText(description)}`;
}

/** What may stand there; fish itself looks a brief out from among other files by name. */
function argumentOf(value: Completed): string {
  if (value === "brief" || value === "file") return "-F";
  return value === "unknown" ? "-f" : `-f -a ${quotedText(value.words.join(" "))}`;
}
