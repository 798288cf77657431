import { answerView, qualitySpeaking, type ReportModel, reportModel } from "#core/quality/index.ts";
import { sampleAnswers } from "../samples/answers.ts";

/** The printed report of the sample answers. */
export function sampleReport(language: "en" | "es", paper: "letter" | "a4"): ReportModel {
  const speaking = qualitySpeaking({ language, units: "inch" }, { people: {}, jobs: {}, sheets: {}, instruments: {} });
  return reportModel({
    speaking,
    settings: { name: "Stillwater Yard Works", lines: ["4 Mill Lane"], paper },
    month: "2026-11",
    until: "2026-11-28",
    read: "2026-11-28",
    jobs: 60,
    answers: sampleAnswers.map((answer) => answerView(answer, speaking)),
    at: Date.UTC(2026, 10, 28, 12),
  });
}
