import { pictureFacts } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makePictureSayer } from "#core/record/index.ts";
import type { PictureLines } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Services } from "../services.ts";
import { currentJob } from "./read.ts";

/** Every picture of a job that counts, with what speaks for and against it. */
export async function picturesOf(services: Services, place: Place, { language, units }: Session): Promise<PictureLines> {
  const [{ state }, people] = await Promise.all([currentJob(services, place), services.companies.people(place.company)]);
  const sayer = makePictureSayer({
    language,
    units,
    zone: state.opened?.zone ?? "UTC",
    ...(state.sheet ? { sheet: state.sheet } : {}),
    behind: (entry) => {
      const person = state.facts.find(({ id }) => id === entry)?.entry.author.person;
      return { name: people.find(({ id }) => id === person)?.name ?? "", reason: "" };
    },
  });
  const pictures = ["picture-taken", "received-otherwise"].flatMap((kind) => state.byKind.get(kind) ?? []);
  return {
    pictures: pictures
      .sort((a, b) => a.position - b.position)
      .map((picture) => ({
        entry: picture.id,
        photo: String(picture.what.photo),
        lines: pictureFacts(state, picture).map((line) => ({
          speaks: line.speaks,
          key: line.says.key,
          figures: line.says.figures as Json,
          sentence: sayer.line(line),
        })),
      })),
  };
}
