import { ByteWriter, ParquetWriter, type SchemaElement } from "hyparquet-writer";
import type { Brief, Design, Dimension } from "../../model.ts";
import { currencyOf } from "../text/labels.ts";
import { upperFirst } from "../text/layout.ts";
import { type ColumnNames, type FigureColumn, figureColumns } from "./figure-columns.ts";

type RowGroup = ParquetWriter["row_groups"][number];
type ColumnChunk = RowGroup["columns"][number];

/** Rows that are held at once and written as one row group: a few megabytes, and few enough groups for their index. */
const ROWS_OF_GROUP = 20_000;

/** The unit of each dimension as the columns have it: SI. Cost that is money is in its currency instead. */
const SI_UNITS: Readonly<Record<Dimension, string>> = {
  length: "m",
  force: "N",
  rate: "N/m",
  stress: "Pa",
  mass: "kg",
  density: "kg/m³",
  frequency: "Hz",
  temperature: "K",
  time: "s",
  angle: "rad",
  share: "1",
  number: "1",
  price: "1/kg",
};

/** Designs on their way into a Parquet file. */
export interface ParquetRows {
  readonly add: (design: Design) => void;
  /** Writes what is left, and what every Parquet file ends with. */
  readonly finish: () => void;
}

/**
 * Designs as a Parquet file in SI, row group by row group: every figure but the rank, texts with a dictionary, null for a figure that
 * does not exist. The file's metadata has the brief's title and practice, and a JSON map `units` from column to unit; each column chunk
 * has its own as `unit`.
 *
 * @param brief   the requirement that the designs answer
 * @param sample  one of the designs, whose points and limits all of them have; undefined where there is none
 * @param write   takes the bytes as they come; they are good only until it returns
 */
export function parquetRows(brief: Brief, sample: Design | undefined, write: (bytes: Uint8Array) => void): ParquetRows {
  const columns = withDistinctNames(figureColumns(sample === undefined ? [] : [sample], NAMES));
  const unitOf = ({ name, dimension }: FigureColumn) =>
    dimension === null ? null : (name === "relativeCost" && currencyOf(brief)) || SI_UNITS[dimension];
  const units = columns.map((column) => [column.name, unitOf(column)] as const).filter(([, unit]) => unit !== null);
  const writer = new ByteWriter();
  const handOn = () => {
    write(writer.getBytes());
    writer.index = 0;
  };
  const file = new ParquetWriter({
    writer: Object.assign(writer, { flush: handOn, finish: handOn }),
    schema: [{ name: "designs", num_children: columns.length }, ...columns.map(schemaOf)],
    createdBy: "coilsieve",
    kvMetadata: [
      { key: "title", value: brief.title },
      { key: "practice", value: brief.practice },
      { key: "units", value: JSON.stringify(Object.fromEntries(units)) },
    ],
  });
  const cells: (string | number | null)[][] = columns.map(() => []);
  const held = () => cells[0]?.length ?? 0;
  const flush = () => {
    const columnData = columns.map((column, i) => ({
      name: column.name,
      data: cells[i] as (string | number | null)[],
      ...(column.dimension === null ? { encoding: "RLE_DICTIONARY" as const } : {}),
    }));
    file.write({ columnData, rowGroupSize: held() });
    for (const [i, { meta_data }] of (file.row_groups.at(-1)?.columns ?? []).entries()) {
      const unit = unitOf(columns[i] as FigureColumn);
      if (meta_data && unit !== null) meta_data.key_value_metadata = [{ key: "unit", value: unit }];
    }
    for (const column of cells) column.length = 0;
  };
  return {
    add: (design) => {
      for (const [i, column] of columns.entries()) cells[i]?.push(cellOf(column, design));
      if (held() >= ROWS_OF_GROUP) flush();
    },
    finish: () => {
      if (held() > 0) flush();
      // Without any group the library writes a list of groups that strict readers refuse.
      if (file.row_groups.length === 0) file.row_groups.push(emptyGroup(columns, BigInt(writer.offset)));
      file.finish();
    },
  };
}

/** Like the figures at solid: `forceAtLatched`, `marginOfIndex`, names that no query has to quote. */
const NAMES: ColumnNames = {
  point: (name, _, figure) => `${figure}At${oneWord(name)}`,
  margin: (limit) => `marginOf${oneWord(limit)}`,
};

/** Letters and digits of a text, each word with a capital. */
function oneWord(text: string): string {
  return (text.match(/[\p{L}\p{M}\p{N}]+/gu) ?? []).map(upperFirst).join("");
}

/** A later column of a name that is taken gets a number; programs that query such files often ignore capitals. */
function withDistinctNames(columns: readonly FigureColumn[]): FigureColumn[] {
  const taken = new Set<string>();
  return columns.map((column) => {
    let { name } = column;
    for (let number = 2; taken.has(name.toLowerCase()); number++) name = `${column.name}${number}`;
    taken.add(name.toLowerCase());
    return { ...column, name };
  });
}

/** A row group of no rows, which takes no bytes before the end of the file. */
function emptyGroup(columns: readonly FigureColumn[], offset: bigint): RowGroup {
  const none = { num_values: 0n, total_uncompressed_size: 0n, total_compressed_size: 0n, data_page_offset: offset };
  const chunks = columns.map(({ name, dimension }): ColumnChunk => {
    const type = dimension === null ? "BYTE_ARRAY" : "DOUBLE";
    return { file_offset: offset, meta_data: { type, encodings: ["PLAIN"], path_in_schema: [name], codec: "SNAPPY", ...none } };
  });
  return { columns: chunks, total_byte_size: 0n, num_rows: 0n };
}

function schemaOf({ name, dimension }: FigureColumn): SchemaElement {
  return dimension === null
    ? { name, type: "BYTE_ARRAY", converted_type: "UTF8", repetition_type: "REQUIRED" }
    : { name, type: "DOUBLE", repetition_type: "OPTIONAL" };
}

/** As JSON has it: null for what is not finite. */
function cellOf({ value }: FigureColumn, design: Design): string | number | null {
  const cell = value(design);
  return typeof cell === "number" && !Number.isFinite(cell) ? null : cell;
}
