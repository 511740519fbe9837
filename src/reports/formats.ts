/** The formats of what is handed on, the tables of the one that has several, and the orders of a list. */

export const FORMATS = ["text", "html", "csv", "fhir", "json"] as const;
export type Format = (typeof FORMATS)[number];

export const CSV_TABLES = ["entries", "readings", "figures"] as const;
export type CsvTableName = (typeof CSV_TABLES)[number];

/** How the cases of a list may be put in order. */
export const SORTS = ["date", "bypass", "arrest", "label"] as const;
export type Sort = (typeof SORTS)[number];

/** The formats of an audit, and what of many cases is exported. */
export const AUDIT_FORMATS = ["text", "csv", "html"] as const;
export type AuditFormat = (typeof AUDIT_FORMATS)[number];
export const EXPORTS = ["entries", "figures"] as const;
export type Exported = (typeof EXPORTS)[number];
