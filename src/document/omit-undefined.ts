/** The same object without the keys whose value is undefined; leaves its input unchanged. */
export function omitUndefined<T extends object>(object: { readonly [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;
}
