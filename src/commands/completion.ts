/** `pumpside completion`: what makes a shell complete verbs and options, written from the table of the command line. */
import type { Command } from "commander";
import { complain, DONE, say, WRONG_CALL } from "./speak.ts";

/** A command as a shell knows it: the words that name it, and what may follow. */
type Known = {
  readonly words: readonly string[];
  readonly says: string;
  readonly verbs: readonly Known[];
  readonly options: readonly { readonly flag: string; readonly says: string }[];
};

/** What shells there are, and the script for each. */
const SCRIPTS: Readonly<Record<string, (root: Known) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  powershell: powershellScript,
};

const SHELLS = Object.keys(SCRIPTS);

export async function completionVerb(shell: string, program: Command): Promise<number> {
  const script = SCRIPTS[shell];
  if (script === undefined)
    return complain(`"${shell}" is no shell we complete in: name one of ${SHELLS.join(", ")}.`, WRONG_CALL);
  say(script(known(program)));
  return DONE;
}

function known(command: Command, before: readonly string[] = []): Known {
  const help = command.createHelp();
  const own = [...help.visibleOptions(command), ...(command.parent?.options ?? [])];
  const options = own.map(({ long, description }) => ({ flag: long ?? "", says: description }));
  return {
    words: before,
    says: command.description(),
    verbs: command.commands.map((verb) => known(verb, [...before, verb.name()])),
    options: options.filter(({ flag }, place) => options.findIndex((one) => one.flag === flag) === place),
  };
}

const withAll = (command: Known): Known[] => [command, ...command.verbs.flatMap(withAll)];
const nameOf = ({ words }: Known): string => words.at(-1) ?? "";
const wordsAfter = ({ verbs, options }: Known): string =>
  [...verbs.map(nameOf), ...options.map(({ flag }) => flag)].join(" ");

/** Names the words so far that are no options; what belongs to none of the table's commands completes file names. */
function bashScript(root: Known): string {
  const cases = withAll(root).map(
    (command) => `    "${command.words.join(" ")}") words="${wordsAfter(command)}" ;;`,
  );
  return `# pumpside in bash: source this file from ~/.bashrc
_pumpside() {
  local verb="" word words
  local current=\${COMP_WORDS[COMP_CWORD]}
  for word in "\${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
    case "$verb $word" in
${withAll(root)
  .slice(1)
  .map(
    ({ words }) =>
      `      "${[words.slice(0, -1).join(" "), words.at(-1)].join(" ")}") verb="${words.join(" ")}" ;;`,
  )
  .join("\n")}
    esac
  done
  case "$verb" in
${cases.join("\n")}
  esac
  COMPREPLY=($(compgen -W "$words" -- "$current") $(compgen -f -- "$current"))
}
complete -o filenames -F _pumpside pumpside`;
}

/** Quoted for a shell between single marks. */
const single = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

function zshScript(root: Known): string {
  const spec = (name: string, says: string) => single(`${name}:${says.replaceAll(":", "\\:")}`);
  const cases = withAll(root).map(({ words, verbs, options }) => {
    const choices = [
      ...verbs.map((verb) => spec(nameOf(verb), verb.says)),
      ...options.map(({ flag, says }) => spec(flag, says)),
    ];
    return `    ${single(words.join(" "))}) choices=(${choices.join(" ")}) ;;`;
  });
  return `#compdef pumpside
# pumpside in zsh: put this file into a folder of $fpath
_pumpside() {
  local verb="" word
  local -a choices
  for word in \${words[2,CURRENT-1]}; do
    case "$verb $word" in
${withAll(root)
  .slice(1)
  .map(({ words }) => `      "${words.slice(0, -1).join(" ")} ${words.at(-1)}") verb="${words.join(" ")}" ;;`)
  .join("\n")}
    esac
  done
  case "$verb" in
${cases.join("\n")}
  esac
  _describe pumpside choices
  _files
}
_pumpside "$@"`;
}

function powershellScript(root: Known): string {
  const text = (words: string) => `'${words.replaceAll("'", "''")}'`;
  const tables = withAll(root).map(({ words, verbs, options }) => {
    const choices = [
      ...verbs.map((verb) => [nameOf(verb), verb.says] as const),
      ...options.map(({ flag, says }) => [flag, says] as const),
    ];
    return `  ${text(words.join(" "))} = @(${choices.map(([name, says]) => `@(${text(name)}, ${text(says)})`).join(", ")})`;
  });
  return `# pumpside in PowerShell: dot-source this file from $PROFILE
$pumpsideWords = @{
${tables.join("\n")}
}
Register-ArgumentCompleter -Native -CommandName pumpside, pumpside.cmd -ScriptBlock {
  param($current, $line, $cursor)
  $verb = ''
  foreach ($element in $line.CommandElements | Select-Object -Skip 1) {
    $longer = "$verb $element".Trim()
    if ($element.Extent.EndOffset -lt $cursor -and $pumpsideWords.ContainsKey($longer)) { $verb = $longer }
  }
  foreach ($choice in $pumpsideWords[$verb]) {
    if ($choice[0].StartsWith($current)) {
      [System.Management.Automation.CompletionResult]::new($choice[0], $choice[0], 'ParameterValue', $choice[1])
    }
  }
}`;
}
