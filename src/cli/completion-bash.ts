import { type Completed, type Completion, quotedText } from "./completed.ts";

/** The script for bash, for `source <(coilsieve completion bash)`. */
export function bashScript({ options, commands }: Completion): string {
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
