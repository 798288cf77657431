import { questionAnswer } from "#core/wire/index.ts";
import { answerTo } from "../questions/answer.ts";
import { askingOf, questionAsks, questionNamed, todayIn } from "../questions/asked.ts";
import { begun } from "../questions/begun.ts";
import { json, ownerOnly, route } from "./route.ts";

export const answerQuestion = route({
  method: "GET",
  path: "/api/questions/:question",
  says: "The answer to one question",
  who: ownerOnly,
  asks: questionAsks,
  gives: { 200: questionAnswer },
  async run({ services, session, parameters, request, now }) {
    const question = questionNamed(parameters.question);
    if (!question.ok) return question;
    const start = await begun(services, session.company, question.value);
    const asking = askingOf(new URL(request.url).searchParams, todayIn(now, start.settings.zone));
    if (!asking.ok) return asking;
    const { answer, view, jobs, behind, readLater } = await answerTo(services, session, question.value, asking.value, start);
    // its pictures are drawn from the view: their points are not sent twice
    const { pictures: _, ...rest } = answer;
    return json({ jobs, behind, answer: rest, view: { ...view, counted: [...view.counted, ...readLater] } });
  },
});
