import { qualitySpeaking, questions } from "#core/quality/index.ts";
import { questionList } from "#core/wire/index.ts";
import { json, ownerOnly, route } from "./route.ts";

export const listQuestions = route({
  method: "GET",
  path: "/api/questions",
  says: "The company owner's questions, each with the decision that it serves",
  who: ownerOnly,
  gives: { 200: questionList },
  async run({ session }) {
    const { word } = qualitySpeaking(session, { people: {}, jobs: {}, sheets: {}, instruments: {} });
    return json({ questions: questions.map(({ id }) => ({ id, title: word(`title.${id}`), decides: word(`${id}.decides`) })) });
  },
});
