import type { ComponentType } from "preact";
import { lazy } from "preact/compat";
import type { Item } from "../../job/index.ts";
import { itemNamed } from "../../job/index.ts";
import { NotHere } from "./frame.tsx";
import type { JobPart, Taking } from "./job-part.ts";
import { useTold } from "./told.ts";

/** The page on which an item of each kind is entered. */
const takings: Partial<Readonly<Record<Item["kind"], ComponentType<Taking>>>> = {
  reading: lazy(() => import("./reading/reading.tsx").then(({ ReadingPage }) => ReadingPage)),
  picture: lazy(() => import("./picture/picture.tsx").then(({ PicturePage }) => PicturePage)),
  answer: lazy(() => import("./covering/answer.tsx").then(({ AnswerPage }) => AnswerPage)),
};

/** Enters one item; its address names it. */
export function Take({ job, rest: [id = "", tag] }: JobPart) {
  const told = useTold(job);
  const sheet = told?.now.state.sheet;
  const item = sheet && itemNamed(sheet, id);
  const Page = item && takings[item.kind];
  if (told === undefined || item === undefined || Page === undefined) return <NotHere />;
  return <Page job={job} item={item} told={told} {...(tag === undefined ? {} : { tag })} />;
}
