import { type Completed, type CompletedOption, type Completion, quotedText } from "./completed.ts";

/** The script for zsh, for `source <(coilsieve completion zsh)`, or as a file `_coilsieve` in a folder of `fpath`. */
export function zshScript({ options, commands }: Completion): string {
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
