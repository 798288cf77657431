import { ok, refuse } from "#core/outcome/index.ts";
import { tableLines } from "#core/quality/index.ts";
import { CSV_MARK, csvLine } from "#core/record/index.ts";
import { answerTo } from "../questions/answer.ts";
import { askingOf, questionAsks, questionNamed, todayIn } from "../questions/asked.ts";
import { begun } from "../questions/begun.ts";
import { ownerOnly, route } from "./route.ts";

export const getQuestionTable = route({
  method: "GET",
  path: "/api/questions/:question/table",
  says: "A whole table of an answer as CSV",
  who: ownerOnly,
  asks: { ...questionAsks, table: "Of several tables the one that is wanted" },
  gives: { 200: "csv" },
  async run({ services, session, parameters, request, now }) {
    const question = questionNamed(parameters.question);
    if (!question.ok) return question;
    const query = new URL(request.url).searchParams;
    const start = await begun(services, session.company, question.value);
    const asking = askingOf(query, todayIn(now, start.settings.zone));
    if (!asking.ok) return asking;
    const { answer, speaking } = await answerTo(services, session, question.value, asking.value, start);
    const all = answer.tables;
    const wanted = query.get("table");
    const table = wanted === null ? all[0] : all.find(({ id }) => id === wanted);
    if (table === undefined) return refuse("question-unknown", "table", {});
    const headers = {
      "content-type": "text/csv; charset=utf-8; header=present",
      "content-disposition": `attachment; filename="${table.id}.csv"`,
    };
    return ok(new Response(CSV_MARK + tableLines(table, speaking).map(csvLine).join(""), { headers }));
  },
});
