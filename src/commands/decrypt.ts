/** `pumpside decrypt`: the cases of a folder lie on the disk as they are again, to be read by whoever can read it. */
import { decryptFolder } from "../store/folder-encryption.ts";
import { keyholeAt } from "../store/keyhole.ts";
import { folderOf, type Place } from "./place.ts";
import { rewriting } from "./rewriting.ts";
import { DONE, say } from "./speak.ts";
import { safeAt } from "./unlock.ts";

export async function decryptVerb(options: Place): Promise<number> {
  const folder = folderOf(options);
  if ((await keyholeAt(folder)).is === "none") {
    say("This folder is not encrypted.");
    return DONE;
  }
  const safe = await safeAt(folder, options);
  if (!safe.ok) return safe.code;
  const done = await rewriting("decrypting cases", (watching) => decryptFolder(folder, safe.value, watching));
  if (done === DONE) say("No case of this folder is encrypted any more.");
  return done;
}
