/** A number that a unit decides for itself, and on whose word it stands where nothing was published. */

export const COMMON_PRACTICE = "common practice, no source";
export const FROM_MEMORY = "from memory";

export type Decision = { value: number; source?: string | undefined };
