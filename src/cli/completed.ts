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
export function quotedText(text: string): string {
  return `'${text.replaceAll("'", "’")}'`;
}
