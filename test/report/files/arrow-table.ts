import { createRequire } from "node:module";
import { type Table, tableFromIPC } from "apache-arrow";

/** Parquet read by the Rust implementation of Apache Arrow, which shares no code with what writes ours. */
interface ArrowReader {
  readonly readParquet: (bytes: Uint8Array) => { readonly intoIPCStream: () => Uint8Array };
}

// Its ES module fetches its own code over the network; the one for Node does not.
const { readParquet } = createRequire(import.meta.url)("parquet-wasm") as ArrowReader;

/**
 * A Parquet file as a table.
 *
 * @param bytes  the whole file
 */
export function arrowTable(bytes: Uint8Array): Table {
  return tableFromIPC(readParquet(bytes).intoIPCStream());
}

/** Its rows as plain objects. */
export function rowsOf(table: Table): Record<string, unknown>[] {
  return table.toArray().map((row) => row.toJSON());
}
