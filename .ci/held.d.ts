// What bundle.js writes below launch.js: functions that do nothing, in whose comments the program stands.

declare function theFirst(): void;
declare function theRest(): void;
