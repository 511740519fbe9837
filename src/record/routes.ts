/** The ways that arrest solution takes to the heart, by the names that the record knows them by. */

export const ROUTES = ["root", "left-ostium", "right-ostium", "coronary-sinus", "graft"] as const;
export type Route = (typeof ROUTES)[number];
