import { readSettings } from "#core/record/index.ts";
import { questionAnswer } from "#core/wire/index.ts";
import { answersTo } from "../questions/answer.ts";
import { askingOf, questionNamed, todayIn } from "../questions/asked.ts";
import { json, ownerOnly, route } from "./route.ts";

export const answerQuestion = route({
  method: "GET",
  path: "/api/questions/:question",
  says: "The answer to one question; ?from= and ?to= days, ?persons=yes, ?lot= ?looked= ?off= of a sample, ?check= ?lower= ?upper= of another limit",
  who: ownerOnly,
  gives: { 200: questionAnswer },
  async run({ services, session, parameters, request, now }) {
    const question = questionNamed(parameters.question);
    if (!question.ok) return question;
    const { zone } = readSettings(await services.companies.settings(session.company));
    const asking = askingOf(new URL(request.url).searchParams, todayIn(now, zone));
    if (!asking.ok) return asking;
    const { answers, jobs, behind, readLater } = await answersTo(services, session, [question.value], asking.value, zone);
    return json(
      answers.map(({ answer, view }) => ({ jobs, behind, answer, view: { ...view, counted: [...view.counted, ...readLater] } }))[0],
    );
  },
});
