import { message } from "../../job/index.ts";
import type { CompanySettings } from "../../record/index.ts";
import type { AnswerView, QualitySpeaking } from "../view/index.ts";
import type { ReportModel } from "./report-model.ts";

export interface ReportInput {
  readonly speaking: QualitySpeaking;
  readonly settings: Pick<CompanySettings, "name" | "lines" | "paper">;
  /** 'YYYY-MM', and the last day that was counted. */
  readonly month: string;
  readonly until: string;
  /** The day on which the ledgers were read: later than `until` where a month is past. */
  readonly read: string;
  readonly jobs: number;
  readonly answers: readonly AnswerView[];
  /** Milliseconds: when it was asked for. */
  readonly at: number;
}

/** The owner's report of one month as it is printed. */
export function reportModel({ speaking, settings, month, until, read, jobs, answers, at }: ReportInput): ReportModel {
  const { word, say, name, language } = speaking;
  const monthName = name({ of: "month", id: month });
  return {
    format: 1,
    language,
    paper: settings.paper,
    words: {
      page: word("report-page"),
      of: word("report-of"),
      decides: word("report-decides"),
      standsOut: word("report-stands-out"),
      counted: word("report-counted"),
      cut: word("report-cut"),
    },
    company: { name: settings.name, lines: settings.lines },
    title: {
      document: say(message("report-document", { month: monthName, company: settings.name })),
      page: word("report-title"),
      month: monthName,
      at,
    },
    notes: [
      say(
        message(read > until ? "report-rests-past" : "report-rests", {
          jobs,
          until: name({ of: "day", id: until }),
          read: name({ of: "day", id: read }),
        }),
      ),
      word("report-chance"),
      word("report-persons"),
      word("report-not-safe"),
    ],
    first: answers.flatMap(({ title, signals }) => signals.slice(0, 3).map((text) => ({ question: title, text }))),
    nothingFirst: word("report-nothing-first"),
    answers,
  };
}
