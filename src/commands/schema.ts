/** `pumpside schema`: the case file described for other tools, as JSON Schema. */
import { caseJsonSchema } from "../record/case-schema.ts";
import { DONE, say } from "./speak.ts";

export async function schemaVerb(): Promise<number> {
  say(JSON.stringify(caseJsonSchema(), null, 2));
  return DONE;
}
