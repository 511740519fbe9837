// What is typed in the whole case, stroke by stroke, and what its balances come to by hand.

// The times are typed late, so that the case lasts as long as one does.
export const BEFORE_BYPASS = [
  ...["v1300f @-120", "v100m @-119", "m1 @-112", "ml on @-110", "m2 @-106", "mi @-104"],
  ...[
    "a118 @-101 ; baseline",
    "mb @-100",
    "h32000 @-98",
    "a505 @-94",
    "mn @-92",
    "mt @-91",
    "mj @-90",
    "ms @-89",
  ],
];
export const ON_BYPASS = [
  ...[
    "b @-88",
    "h5000 p @-87",
    "ffull @-87",
    "ml @-86",
    "t32 @-86",
    "mv @-85",
    "l1200 @-82",
    "u=150 @-80",
    "x @-78",
  ],
  ...["da @-77", "d300+ @-76", "d450 @-74", "d350 l @-72", "d250 r @-70", "z200", "v500c @-68", "a468 @-62"],
  ...["h5000 @-61", "w6 @-60", "a530 @-57", "dl @-53", "d200 @-51", "da"],
];
export const AFTER_THE_KILL = [
  ...["d150", "u80", "z! read from the wrong bag", "muc", "f4.2", "n surgeon asks for a mean pressure of 65"],
  ...[
    "i phenylephrine 100 ug",
    "u120",
    "o700u",
    "mu",
    "v280r #447108 /TJ",
    "ffull",
    "t36.8",
    "x",
    "mz",
    "my",
  ],
  ...[
    "a487",
    "mp",
    "mv",
    "ml",
    "f3/4",
    "f1/2",
    "f0",
    "b",
    "v220s",
    "l1100",
    "r100",
    "r150",
    "p30 ; trial dose",
  ],
  ...["p290", "a124", "mo", "me", "o400c", "u=560", "l120"],
];
/** Typed in part before the kill, to its end after it. */
export const TORN = "v250a ; begun before the kill";

/*
 * The balances by hand, in mL:
 *   in        1300 prime + 100 mannitol + 500 crystalloid + 250 albumin + 280 red cells + 220 salvaged   2650
 *   doses     450 + 350 + 200 (put right from 250) + 200 + 150                                            1350
 *             of 4:1 blood one fifth is crystalloid: 1350 / 5                                              270
 *   fluid in  2650 + 270                                                                                  2920
 *   urine     the bag read 560 at the end (150, then 120; 80 was struck out)                               560
 *   out       560 urine + 700 ultrafiltrate + 400 to salvage                                              1660
 *   net       2920 − 1660                                                                                +1260
 *   returned  100 + 150                                                                                    250
 *   left      the last level                                                                               120
 *   patient   1260 − 120                                                                                 +1140
 */
export const BY_HAND = {
  arrestGiven: 1350,
  arrestCrystalloid: 270,
  fluidIn: 2920,
  urine: 560,
  ultrafiltrate: 700,
  otherOut: 400,
  out: 1660,
  net: 1260,
  returned: 250,
  leftInPump: 120,
  netToPatient: 1140,
  heparinTotal: 42_000,
  heparinFirst: 32_000,
  heparinPerKg: 525,
  protamineGiven: 320,
  lastAct: 124,
};
export const ON_THE_SCREEN = [
  " in 2920  out 1660  net +1260  returned 250  left 120  to patient +1140",
  " heparin 42 000 IU ",
  "  protamine 320 mg ",
  " arrest 1350 mL in 5, cryst 270",
];
