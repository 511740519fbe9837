// A general analytical engine, to judge what is handed to one.

import { DuckDBInstance } from "@duckdb/node-api";

/** The rows of a query, each as its values in the order of the columns; counts as numbers. */
export async function asked(query: string): Promise<unknown[][]> {
  const instance = await DuckDBInstance.create(":memory:");
  const connection = await instance.connect();
  try {
    const reader = await connection.runAndReadAll(query);
    return reader.getRowsJson().map((row) => row.map((value) => (isCount(value) ? Number(value) : value)));
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

// Counts have 64 bits and come as text.
const isCount = (value: unknown): boolean => typeof value === "string" && /^-?\d+$/.test(value);
