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
