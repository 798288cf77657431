import * as z from "zod/mini";
import type { Answer, AnswerView } from "../quality/index.ts";
import { later } from "./later.ts";
import { count, json } from "./primitives.ts";

/** The company owner's questions by their ids, with the name and the decision of each in the language of the session. */
export const questionList = later(() =>
  z.object({
    questions: z.array(z.object({ id: z.string(), title: z.string(), decides: z.string() })),
  }),
);
export type QuestionList = z.infer<typeof questionList>;

/** One answer: as it was worked out, and in words with its pictures. `behind`: jobs that have grown and are not counted anew yet. */
export const questionAnswer = later(() => z.object({ jobs: count, behind: count, answer: json, view: json }));
export interface QuestionAnswer {
  readonly jobs: number;
  readonly behind: number;
  readonly answer: Omit<Answer, "pictures">;
  readonly view: AnswerView;
}
