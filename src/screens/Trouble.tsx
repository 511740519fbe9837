/** One row that says loudly that entries are not on the disk, or that the second folder is behind. */
import { Text } from "ink";
import { isUnsaved, type Model } from "../console/model.ts";
import { cutTo } from "./fit.ts";

/** How many entries the second folder lacks while it can't be written to. */
const copyBehind = ({ copy, file }: Model): number =>
  copy === null || copy.trouble === null ? 0 : Math.max(0, file.entries.length - copy.seq);

/** Whether there is anything to say. */
export const isTroubled = (model: Model): boolean =>
  (model.trouble !== null && isUnsaved(model)) || copyBehind(model) > 0;

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

function CopyTrouble({ model, columns }: { model: Model; columns: number }) {
  const said = `second copy behind by ${copyBehind(model)}: ${model.copy?.trouble}; trying again (saved on this disk)`;
  return (
    <Text color="yellow" wrap="truncate">
      {` ${cutTo(said, columns - 2)}`}
    </Text>
  );
}
