import type { Json } from "#core/ledger/index.ts";
import { ZONE } from "./script.ts";

/** A company, people and parts that nobody has: invented here. */
export const company = { id: "demo", name: "Ottermere Gardens (demonstration)", zone: ZONE, units: "inch", language: "en" } as const;

export const people = {
  owner: { name: "Delphine Hartwick", role: "company owner" },
  office: { name: "Ravi Santangelo", role: "office" },
  first: { name: "Lupe Arriaga-Stone", role: "crew" },
  second: { name: "Ned Brannigan", role: "crew" },
} as const;

export const settings: Json = {
  name: company.name,
  zone: company.zone,
  units: company.units,
  language: company.language,
  officeTelephone: "555-0142",
  lines: ["4 Example Lane, Nowhere County", "Telephone 555-0142"],
  paper: "letter",
  colours: { lines: "#1f4d3a", words: "#0b6572" },
  namesInFull: false,
  warranty: {
    text: [
      "Terms of a company that does not exist, for this demonstration only.",
      "What was kept from an earlier installation is outside these terms.",
    ],
    terms: [
      { part: "Workmanship", months: 24, starts: "handover" },
      { part: "Pump", months: 36, starts: "first running", conditions: "The serial number is in the record or on the receipt." },
      { part: "Liner", months: 120, starts: "handover", conditions: "Its edge is not cut or buried again by others." },
    ],
    services: [
      { kind: "return visit", daysAfter: 30 },
      { kind: "winter", month: 10, day: 31 },
      { kind: "spring", month: 4, day: 15 },
    ],
    acceptedByUseAfterDays: 30,
  },
};

export const kitCards: readonly {
  readonly id: string;
  readonly part: string;
  readonly facts: Json;
  readonly notes?: string;
  readonly source: string;
}[] = [
  {
    id: "round-tank",
    part: "Round tank 52",
    facts: {
      basinDiameter: { typed: "52", unit: "in" },
      basinDepth: { typed: "28", unit: "in" },
      basinWeight: { typed: "46", unit: "lb" },
      lidLoad: "unknown",
      lidOffCentre: { typed: "10", unit: "in" },
    },
    notes: "Lid opens on one side only.",
    source: "invented for the demo",
  },
  {
    id: "wall-fitting",
    part: "Wall fitting for 2 in pipe",
    facts: {
      fittingHole: { typed: "3", unit: "in" },
      nutDirection: "to the right",
      tightening: "a third of a turn past hand tight",
      socketDepth: { typed: "1 3/8", unit: "in" },
    },
    notes: "Its two gaskets differ: the flat one goes on the wet side.",
    source: "invented for the demo",
  },
  {
    id: "tank-pump",
    part: "Pump 140 W",
    facts: {
      cordLength: { typed: "20", unit: "ft" },
      intakeHeight: { typed: "2 3/4", unit: "in" },
      pumpPower: { typed: "140", unit: "W" },
      pumpCurve: "0 gpm 16 ft; 20 gpm 13 ft; 45 gpm 5.84 ft; 58 gpm 0 ft",
    },
    source: "invented for the demo",
  },
  {
    id: "bank-pipe",
    part: "Flexible pipe 2 in",
    facts: { pipeKind: "flexible PVC, smooth bore" },
    source: "invented for the demo",
  },
];
