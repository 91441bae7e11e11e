import { escapeMarkup } from "./markup.ts";

/** A paper that is a page of its own. */
export interface PaperPage {
  /** As a person wrote it, and what the paper is. */
  readonly title: string;
  readonly style: string;
  /** Markup. */
  readonly body: string;
}

/** The whole page of a paper: it needs no network and carries no script; only its own style applies, held by its hash. */
export async function paperPage({ title, style, body }: PaperPage): Promise<string> {
  const policy = `default-src 'none'; style-src ${await sourceHash(style)}; base-uri 'none'; form-action 'none'`;
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeMarkup(title)}</title><style>${style}</style></head>`,
    `<body><main>${body}</main></body></html>\n`,
  ].join("");
}
/**
 * What a content security policy names a script or style element by, so that it and nothing else may run or apply.
 *
 * @param text  the element's whole content
 * @returns such as `'sha256-…'`, with its quotes
 */
export async function sourceHash(text: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return `'sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}'`;
}
