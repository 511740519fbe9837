// What starts the console in a portable folder, and what tells a person how.

/** @typedef {import("./runtime.js").Platform} Platform */

const shell = `#!/bin/sh
# Starts pumpside with the runtime beside it. Cases are kept in the data folder here where it can be written,
# unless PUMPSIDE_DIR or --dir names another.
self=$(readlink -f -- "$0" 2>/dev/null) || self=$0
here=$(CDPATH= cd -- "$(dirname -- "$self")" && pwd) || exit 1
if [ -z "$PUMPSIDE_DIR" ] && mkdir -p "$here/data" 2>/dev/null && [ -w "$here/data" ]; then
  PUMPSIDE_DIR=$here/data
  export PUMPSIDE_DIR
fi
# What the machine sets for other programs on Node is not meant for this one.
unset NODE_OPTIONS NODE_PATH NODE_EXTRA_CA_CERTS
exec "$here/runtime/node" "$here/pumpside.mjs" "$@"
`;

const windows = `@echo off
rem Starts pumpside with the runtime beside it. Cases are kept in the data folder here where it can be written,
rem unless PUMPSIDE_DIR or --dir names another.
setlocal
if not defined PUMPSIDE_DIR (
  if not exist "%~dp0data\\" mkdir "%~dp0data" 2>nul
  copy /y nul "%~dp0data\\.writable" >nul 2>nul && (
    del "%~dp0data\\.writable" >nul 2>nul
    set "PUMPSIDE_DIR=%~dp0data"
  )
)
rem An old console tells by its code page which signs it can show; 65001 is UTF-8.
for /f "tokens=2 delims=:." %%c in ('chcp') do set /a PUMPSIDE_CODE_PAGE=%%c 2>nul
set NODE_OPTIONS=
set NODE_PATH=
set NODE_EXTRA_CA_CERTS=
"%~dp0runtime\\node.exe" "%~dp0pumpside.mjs" %*
exit /b %errorlevel%
`;

const crlf = (/** @type {string} */ text) => text.replaceAll("\n", "\r\n");

/**
 * The launcher of a platform: its file and its text.
 * @type {Readonly<Record<Platform, { file: string, text: string }>>}
 */
export const launchers = {
  "linux-x64": { file: "pumpside", text: shell },
  "win-x64": { file: "pumpside.cmd", text: crlf(windows) },
};

/**
 * The page that lies on top of a portable folder.
 * @param {Platform} platform
 * @param {string} version
 */
export function portableReadme(platform, version) {
  const { file } = launchers[platform];
  const start = platform === "win-x64" ? file : `./${file}`;
  const text = `pumpside ${version} for ${platform}

The console for the record of a bypass run. Nothing is installed, nothing is sent anywhere, and no network is needed.

  ${start}                        the console
  ${start} demo                   an invented case, played in the console
  ${start} review sample-cases    the sample cases, read back
  ${start} --help                 every verb

Cases are kept in the folder "data" here when it can be written, else where PUMPSIDE_DIR or --dir says, else in the
user's own data folder. Nothing is written elsewhere, unless you leave while that folder takes nothing: then the whole
case is kept in your own data folder or the temporary one, and you are told where.
On an old terminal that shows boxes or question marks, add --ascii.

  pumpside.*        the program, and what its runtime made of it ahead
  MANUAL.txt        every verb and option, and the strokes
  completion/       what makes a shell complete the verbs
  sample-cases/     invented cases with figures worked out by hand
  runtime/          Node, which runs the program, and its licence
  licences.txt      the licences of everything inside pumpside.mjs
  bom.cdx.json      what it is made of, as a CycloneDX bill of materials
  SHA256SUMS        checksums of all files here

pumpside is a record and a calculator. It is not an alarm, it is not a monitor, and it controls nothing. Check every
dose, volume and figure yourself. It is not a medical device and has not been validated for clinical use.
`;
  return platform === "win-x64" ? crlf(text) : text;
}
