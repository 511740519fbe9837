/** One row that is empty while all is well, and says loudly when entries are not on the disk. */
import { Text } from "ink";
import { isUnsaved, type Model } from "../console/model.ts";
import { cutTo } from "./fit.ts";

export function Trouble({ model, columns }: { model: Model; columns: number }) {
  if (model.trouble === null || !isUnsaved(model)) return <Text> </Text>;
  const held = model.file.entries.length - model.saved;
  const said = `NOT SAVED, do not leave: ${held} held in memory; ${model.trouble}; trying again`;
  return (
    <Text color="red" bold inverse wrap="truncate">
      {` ${cutTo(said, columns - 2)} `}
    </Text>
  );
}
