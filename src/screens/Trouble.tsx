/** One row that is empty while all is well, and says loudly when entries are not on the disk, or not in the second folder. */
import { Text } from "ink";
import { isUnsaved, type Model } from "../console/model.ts";
import { cutTo } from "./fit.ts";

export function Trouble({ model, columns }: { model: Model; columns: number }) {
  if (model.trouble === null || !isUnsaved(model)) return <CopyTrouble model={model} columns={columns} />;
  const held = model.file.entries.length - model.saved;
  const said = `NOT SAVED, do not leave: ${held} held in memory; ${model.trouble}; trying again`;
  return (
    <Text color="red" bold inverse wrap="truncate">
      {` ${cutTo(said, columns - 2)} `}
    </Text>
  );
}

function CopyTrouble({ model: { copy, file }, columns }: { model: Model; columns: number }) {
  const behind = copy === null ? 0 : file.entries.length - copy.seq;
  if (copy === null || copy.trouble === null || behind <= 0) return <Text> </Text>;
  const said = `second copy behind by ${behind}: ${copy.trouble}; trying again (saved on this disk)`;
  return (
    <Text color="yellow" wrap="truncate">
      {` ${cutTo(said, columns - 2)}`}
    </Text>
  );
}
