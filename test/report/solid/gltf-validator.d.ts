declare module "gltf-validator" {
  /** The report of the Khronos validator on one file. */
  export function validateBytes(
    bytes: Uint8Array,
  ): Promise<{ readonly issues: { readonly numErrors: number; readonly numWarnings: number } }>;
}
