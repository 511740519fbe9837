/** The parts of FHIR R4 that the document is made of, as far as they are used. */

export type Coding = { readonly system: string; readonly code: string };
export type Concept = { readonly coding?: readonly Coding[]; readonly text: string };
export type Quantity = {
  readonly value: number;
  readonly unit: string;
  readonly system?: string;
  readonly code?: string;
};
export type Period = { readonly start: string; readonly end?: string | undefined };
export type Reference = { readonly reference: string } | { readonly display: string };

export type Resource = {
  readonly resourceType: string;
  readonly id: string;
  readonly [field: string]: unknown;
};

/** A resource, and the ids of the entries it was made from. */
export type Made = { readonly resource: Resource; readonly from: readonly string[] };

export type Bundle = {
  readonly resourceType: "Bundle";
  readonly type: "document";
  readonly identifier: { readonly system: string; readonly value: string };
  readonly timestamp: string;
  readonly entry: readonly { readonly fullUrl: string; readonly resource: Resource }[];
};
