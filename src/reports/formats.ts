/** The formats a report comes in, and the tables of the one that has several. */

export const FORMATS = ["text", "html", "csv", "fhir", "json"] as const;
export type Format = (typeof FORMATS)[number];

export const CSV_TABLES = ["entries", "readings", "figures"] as const;
export type CsvTableName = (typeof CSV_TABLES)[number];
