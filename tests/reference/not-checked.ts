/** Published figures that are known and that no test here compares with, and why: printed with the sources. */
export const notChecked: readonly { readonly figure: string; readonly why: string }[] = [
  {
    figure: "Turns of a taper thread in plastic: from 1/4 to 3 turns past hand tight on five pages",
    why: "tightening is an answer of the crew, not a figure of the core",
  },
  {
    figure: "Pressure ratings of Schedule 40 pipe (ASTM D1785, quoted: 330 psi at 1-1/2 in, 280 at 2 in)",
    why: "a buried line runs at a few psi; the core has no such figure",
  },
  {
    figure: "Crane TP-410 factors K of valves and bends (K = n f_T)",
    why: "the core counts fittings of plastic pipe as published equivalent lengths; the tests of examples 7-15 and 7-19 bring Crane's own factors with them",
  },
  { figure: "Villemonte's factor for a drowned weir (EPA SWMM manual)", why: "a spillway here falls free" },
  {
    figure: "Kindsvater-Carter kb curve (USBR fig. 7-4) and the discharge tables of its appendix",
    why: "digits not seen; the core's kb is from memory and says so",
  },
  { figure: "Head per psi, 2.31 ft", why: "the core works in heads; no pressure is turned into one" },
  { figure: "A numeric example of pool evaporation", why: "none was readable; the formula is checked against its own printed form" },
  {
    figure: "Three-distance example of an open surveying text (N 2530.024, E 1109.762 ft)",
    why: "its coordinates and distances are pictures that were not readable",
  },
  { figure: "A plane fitted to four corners", why: "no published example found; worked out by hand instead" },
  {
    figure: "US NEC articles 680 and 682, table 300.5 rows for driveways",
    why: "texts not seen; the program prints no figure of them",
  },
  { figure: "Text of ASTM D2855 and its own table", why: "not seen; three published tables stand beside each other instead" },
];
