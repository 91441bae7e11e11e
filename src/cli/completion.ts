import { printOut } from "../disk/files.ts";
import { ProblemError } from "../problem.ts";
import { VERSION } from "../version.ts";

const scripts = { bash: bashScript, zsh: zshScript, fish: fishScript } as const;

/**
 * Prints the script that lets a shell complete what is typed.
 *
 * @param shell       as typed
 * @param completion  the program's own commands and options
 * @throws ProblemError `unknownName` for a shell without a script
 */
export async function runCompletion(shell: string, completion: Completion): Promise<void> {
  const script = new Map<string, (completion: Completion) => string>(Object.entries(scripts)).get(shell);
  const got = `no script for "${shell}"`;
  if (script === undefined) {
    throw new ProblemError([
      { code: "unknownName", key: "completion", got, want: `it takes ${Object.keys(scripts).join(", ")}` },
    ]);
  }
  // Last, for zsh wants a line of its own first.
  return printOut(`${script(completion)}# Made by coilsieve ${VERSION}.\n`);
}
/** What may follow an option or a command: a word of these, a brief, another file, or what no shell can know. */
export type Completed = { readonly words: readonly string[] } | "brief" | "file" | "unknown";

/** An option as it is typed. */
export interface CompletedOption {
  /** Such as `--html`. */
  readonly name: string;
  readonly description: string;
  /** Absent where it takes no value. */
  readonly value?: Completed;
}

/** A command with what may follow it. */
export interface CompletedCommand {
  readonly name: string;
  readonly description: string;
  readonly options: readonly CompletedOption[];
  /** Absent where it takes none. */
  readonly argument?: Completed;
}

/** The program as a shell completes it. */
export interface Completion {
  readonly options: readonly CompletedOption[];
  readonly commands: readonly CompletedCommand[];
}

/** Text in single quotes, as all three shells read it. */
function quotedText(text: string): string {
  return `'${text.replaceAll("'", "’")}'`;
}

/** The script for bash, for `source <(coilsieve completion bash)`. */
function bashScript({ options, commands }: Completion): string {
  const values = commands.flatMap((command) =>
    command.options.flatMap(({ name, value }) =>
      value === undefined ? [] : [`    ${quotedText(`${command.name} ${name}`)}) ${replyOf(value)}; return ;;`],
    ),
  );
  const typed = commands.map(
    ({ name, argument, options }) =>
      `    ${name}) if [[ $word == -* ]]; then ${wordsReply(options)}; else ${replyOf(argument ?? "unknown")}; fi ;;`,
  );
  return `_coilsieve_words() { local IFS=$' \\n'; COMPREPLY=($(compgen -W "$1" -- "$word")); }
_coilsieve_files() { compopt -o filenames 2>/dev/null; local IFS=$'\\n'; COMPREPLY=($(compgen -f -- "$word")); }
_coilsieve_briefs() {
  compopt -o filenames 2>/dev/null
  local IFS=$'\\n' ending
  COMPREPLY=($(compgen -d -- "$word"))
  for ending in yaml yml json; do COMPREPLY+=($(compgen -f -X "!*.$ending" -- "$word")); done
}
_coilsieve() {
  local word="\${COMP_WORDS[COMP_CWORD]}" command="" i
  COMPREPLY=()
  for ((i = 1; i < COMP_CWORD; i++)); do
    if [[ \${COMP_WORDS[i]} != -* ]]; then command="\${COMP_WORDS[i]}"; break; fi
  done
  case "$command \${COMP_WORDS[COMP_CWORD - 1]}" in
${values.join("\n")}
  esac
  case "$command" in
    '') ${wordsReply([...commands, ...options])} ;;
${typed.join("\n")}
  esac
}
complete -F _coilsieve coilsieve
`;
}

function replyOf(value: Completed): string {
  if (value === "brief") return "_coilsieve_briefs";
  if (value === "file") return "_coilsieve_files";
  return value === "unknown" ? ":" : wordsReply(value.words.map((name) => ({ name })));
}

function wordsReply(words: readonly { readonly name: string }[]): string {
  return `_coilsieve_words ${quotedText(words.map(({ name }) => name).join(" "))}`;
}

/** The script for zsh, for `source <(coilsieve completion zsh)`, or as a file `_coilsieve` in a folder of `fpath`. */
function zshScript({ options, commands }: Completion): string {
  const described = commands.map(({ name, description }) => `    ${quotedText(`${name}:${description.replaceAll(":", "\\:")}`)}`);
  const cases = commands.map(({ name, options, argument }) => {
    const rest = argument === undefined ? [] : [quotedText(`*:${actionOf(argument)}`)];
    return `    ${name}) _arguments ${[...options.map(optionOf), ...rest].join(" ")} ;;`;
  });
  return `#compdef coilsieve
_coilsieve() {
  local -a commands=(
${described.join("\n")}
  )
  if (( CURRENT == 2 )); then
    if [[ $words[2] == -* ]]; then _arguments ${options.map(optionOf).join(" ")}; else _describe command commands; fi
    return
  fi
  shift words
  (( CURRENT-- ))
  case $words[1] in
${cases.join("\n")}
  esac
}
if [[ $funcstack[1] == _coilsieve ]]; then _coilsieve "$@"; else compdef _coilsieve coilsieve; fi
`;
}

function optionOf({ name, description, value }: CompletedOption): string {
  const text = description.replace(/[[\]:]/g, (mark) => `\\${mark}`);
  return quotedText(`${name}[${text}]${value === undefined ? "" : `:${actionOf(value)}`}`);
}

/** What is asked for, and how zsh finds it. */
function actionOf(value: Completed): string {
  if (value === "brief") return 'brief:_files -g "*.(yaml|yml|json)"';
  if (value === "file") return "file:_files";
  return value === "unknown" ? "value: " : `word:(${value.words.join(" ")})`;
}

/** The script for fish, for `coilsieve completion fish | source`, or as a file `coilsieve.fish` in its folder of completions. */
function fishScript({ options, commands }: Completion): string {
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
