import { ok, refuse } from "#core/outcome/index.ts";
import { tableLines } from "#core/quality/index.ts";
import { CSV_MARK, csvLine, readSettings } from "#core/record/index.ts";
import { answersTo } from "../questions/answer.ts";
import { askingOf, questionNamed, todayIn } from "../questions/asked.ts";
import { ownerOnly, route } from "./route.ts";

export const getQuestionTable = route({
  method: "GET",
  path: "/api/questions/:question/table",
  says: "A whole table of an answer as CSV; ?table= where it has several, and what the question itself is asked with",
  who: ownerOnly,
  gives: { 200: "bytes" },
  async run({ services, session, parameters, request, now }) {
    const question = questionNamed(parameters.question);
    if (!question.ok) return question;
    const query = new URL(request.url).searchParams;
    const { zone } = readSettings(await services.companies.settings(session.company));
    const asking = askingOf(query, todayIn(now, zone));
    if (!asking.ok) return asking;
    const { answers, speaking } = await answersTo(services, session, [question.value], asking.value, zone);
    const all = answers[0]?.answer.tables ?? [];
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
