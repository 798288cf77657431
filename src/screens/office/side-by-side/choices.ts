import type { Sayer } from "../../../record/index.ts";
import type { SeenBefore } from "../../../wire/index.ts";
import type { JobNow } from "../../parts/job-now.ts";
import type { PictureShown } from "../../parts/pictures.ts";
import type { ScreenWord } from "../../parts/words/index.ts";

/** A picture that can stand in a frame; one of another job has no entry here, and names those that it is of. */
export interface Choice {
  readonly key: string;
  readonly title: string;
  readonly address: string;
  readonly why: Extract<ScreenWord, `beside-why-${string}`>;
  readonly picture?: PictureShown;
  readonly jobs?: readonly string[];
}

export interface JobPictures {
  readonly now: Pick<JobNow, "state">;
  readonly sayer: Pick<Sayer, "moment">;
  readonly pictures: readonly PictureShown[];
}

const own = ({ sayer }: JobPictures, picture: PictureShown, why: Choice["why"]): Choice => ({
  key: picture.entry,
  title: `${picture.title}, ${sayer.moment(picture.at)}`,
  address: picture.address,
  why,
  picture,
});

/** The jobs that name a photo, as the pairs that it is one of tell. */
const jobsOf = (sha256: string, pairs: readonly SeenBefore[]): readonly string[] => [
  ...new Set(
    pairs
      .flatMap(({ photo, before }) => [photo, before])
      .filter((one) => one.sha256 === sha256)
      .flatMap(({ usedIn }) => usedIn.map(({ job }) => job)),
  ),
];

/**
 * What can stand beside a picture, the likeliest first: the same photo or one that shows the same, then pictures of the same thing, of
 * the same step, and all others of the job.
 */
export function besides(job: JobPictures, first: PictureShown, pairs: readonly SeenBefore[]): readonly Choice[] {
  const facts = new Map(job.now.state.facts.map((fact) => [fact.id, fact]));
  const about = (entry: string): string => {
    const { item, tag } = facts.get(entry)?.what ?? {};
    return `${String(item)} ${String(tag)}`;
  };
  const others = job.pictures.filter(({ entry, unseen }) => entry !== first.entry && unseen === undefined);
  const same = pairs
    .flatMap(({ photo, before }) => [photo.sha256, before.sha256])
    .filter((sha256) =>
      pairs.some(
        ({ photo, before }) => [photo.sha256, before.sha256].includes(first.photo) && [photo.sha256, before.sha256].includes(sha256),
      ),
    );
  const alike = new Set([first.photo, ...same]);
  const rank = (picture: PictureShown): Choice["why"] => {
    if (alike.has(picture.photo)) return "beside-why-alike";
    if (about(picture.entry) === about(first.entry)) return "beside-why-thing";
    return picture.step === first.step ? "beside-why-step" : "beside-why-job";
  };
  const here = new Set(job.pictures.map(({ photo }) => photo));
  const elsewhere = [...alike]
    .filter((sha256) => !here.has(sha256))
    .map(
      (sha256): Choice => ({
        key: sha256,
        title: sha256.slice(0, 16),
        address: `/api/photos/${sha256}/screen`,
        why: "beside-why-elsewhere",
        jobs: jobsOf(sha256, pairs),
      }),
    );
  const order: readonly Choice["why"][] = [
    "beside-why-alike",
    "beside-why-elsewhere",
    "beside-why-thing",
    "beside-why-step",
    "beside-why-job",
  ];
  return [...others.map((picture) => own(job, picture, rank(picture))), ...elsewhere].sort(
    (a, b) => order.indexOf(a.why) - order.indexOf(b.why),
  );
}
