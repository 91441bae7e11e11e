import type { Brief, Confidence, Material } from "../model.ts";
import { practices } from "../practice/practice.ts";

/**
 * What the figures of a brief rest on that nobody here has read in print: strengths of its materials, and parts of its practice that it
 * asks for.
 *
 * @param brief      a resolved brief
 * @param materials  those in question: of one spring its own
 * @returns such as `strength of astm-a401`, then each source with its parts; does not throw
 */
export function fromMemory(brief: Brief, materials: readonly Material[] = brief.sweep.materials): readonly string[] {
  const strengths = materials.filter((material) => isStrengthFromMemory(material, brief)).map(({ name }) => name);
  const parts = new Map<string, string[]>();
  for (const { source, what, appliesTo } of practices[brief.practice].fromMemory) {
    if (appliesTo?.(brief) ?? true) parts.set(source, [...(parts.get(source) ?? []), what]);
  }
  return [
    ...(strengths.length > 0 ? [`strength of ${strengths.join(", ")}`] : []),
    ...[...parts].map(([source, whats]) => `${source}: ${whats.join(", ")}`),
  ];
}

/** The same as one sentence, which heads an output; each practice rests on some. */
export function memoryWords(brief: Brief, materials?: readonly Material[]): string {
  return `From memory, no copy of the source read: ${fromMemory(brief, materials).join("; ")}.`;
}

function isStrengthFromMemory({ strength: { minimum, fit, constant } }: Material, { service }: Brief): boolean {
  const read: readonly { readonly confidence?: Confidence }[] =
    service.strength === "minimum" && minimum ? [minimum] : (fit ?? (constant ? [constant] : []));
  return read.some(({ confidence }) => confidence === "memory");
}
