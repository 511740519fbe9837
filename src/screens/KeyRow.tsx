/** Keys with what they do, side by side in one row. */
import { Text } from "ink";

export type KeyName = readonly [key: string, what: string];

/** The columns that one takes. */
export const keyWidth = ([key, what]: KeyName): number => key.length + what.length + 3;

export function KeyRow({ keys }: { keys: readonly KeyName[] }) {
  return (
    <Text wrap="truncate">
      {keys.map(([key, what]) => (
        <Text key={key}>
          {" "}
          <Text bold>{key}</Text>
          <Text dimColor>{` ${what} `}</Text>
        </Text>
      ))}
    </Text>
  );
}
