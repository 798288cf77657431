import type { Sayer } from "../../record/index.ts";
import type { RecordList } from "../../wire/index.ts";
import { ask } from "./edge.ts";
import { type News, useNews } from "./news.ts";
import { useSpeaking } from "./speaking.ts";

export const useRecords = (job: string): News<RecordList> & { readonly again: () => void } =>
  useNews(`records ${job}`, () => ask<RecordList>(`/api/jobs/${job}/records`));

/** The records that were issued, the newest first. */
export function Records({ news, sayer }: { readonly news: News<RecordList>; readonly sayer: Sayer }) {
  const { say } = useSpeaking();
  const records = news.value?.records;
  if (records === undefined) return <p>{say(news.awaySince === undefined ? "reading-first" : "away-first")}</p>;
  if (records.length === 0) return <p>{say("records-none")}</p>;
  return (
    <ul class="records">
      {[...records]
        .sort((a, b) => b.issued - a.issued)
        .map((record) => (
          <li key={record.record}>
            <p>
              <b>{say("record-version", { version: record.version, edition: say(`edition-${record.edition}`) })}</b>{" "}
              {say("record-of", { time: sayer.moment(record.issued), pages: record.pages })}
            </p>
            <a class="target" href={record.pdf} target="_blank" rel="noreferrer">
              {say("record-open")}
            </a>
          </li>
        ))}
    </ul>
  );
}
