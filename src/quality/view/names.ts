import type { ToleranceSheet, Words } from "../../job/index.ts";
import { dayText, type Language, typedDay } from "../../record/index.ts";
import type { Label } from "../question.ts";

/** Names that labels stand for: people and jobs by their ids, tolerance sheets by theirs. */
export interface NamesKnown {
  readonly people: Readonly<Record<string, string>>;
  readonly jobs: Readonly<Record<string, string>>;
  readonly sheets: Readonly<Record<string, ToleranceSheet>>;
  /** The company's own instruments, by their names. */
  readonly instruments: Readonly<Record<string, Words>>;
}

interface Titled {
  readonly id: string;
  readonly title: Words;
}

const lists = {
  step: ["steps"],
  covering: ["coverings"],
  check: ["checks", "items", "tagSets"],
  item: ["items", "checks", "tagSets"],
  instrument: ["instruments"],
  placing: ["placings"],
} as const satisfies Partial<Record<Label["of"], readonly (keyof ToleranceSheet)[]>>;

/** The name of whatever a label is about, in one language; its id where nobody has given it a name. */
export function namer(known: NamesKnown, language: Language, word: (key: string) => string): (label: Label) => string {
  const say = (words: Words | undefined): string | undefined => words && (words[language] ?? words.en);
  const inSheet = (of: keyof typeof lists, { id, sheet }: Label): string | undefined => {
    const from = sheet === undefined ? Object.values(known.sheets) : [known.sheets[sheet]];
    for (const one of from) {
      for (const list of lists[of]) {
        const found = (one?.[list] as readonly Titled[] | undefined)?.find((thing) => thing.id === id);
        if (found !== undefined) return say(found.title);
      }
    }
    return undefined;
  };
  const month = new Intl.DateTimeFormat(language, { year: "numeric", month: "long", timeZone: "UTC" });
  return (label) => {
    const { of, id } = label;
    switch (of) {
      case "step":
      case "covering":
      case "check":
      case "item":
      case "placing":
        return inSheet(of, label) ?? id;
      case "instrument":
        return say(known.instruments[id]) ?? inSheet(of, label) ?? id;
      case "person":
        return known.people[id] ?? word("someone");
      case "crew":
        return id
          .split(/[ ,+]+/)
          .map((person) => known.people[person] ?? person)
          .join(", ");
      case "job":
        return known.jobs[id] ?? id;
      case "month": {
        const at = Date.parse(`${id.slice(0, 7)}-01T00:00:00Z`);
        return Number.isNaN(at) ? id : month.format(at);
      }
      case "day": {
        const day = typedDay(id);
        return day === undefined ? id : dayText(day, language);
      }
      case "word":
        return word(id);
      default:
        return id;
    }
  };
}
