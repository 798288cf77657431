import { canonical, type Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { isRegion, type Region } from "#core/photo/index.ts";
import type { BlurMade } from "#core/wire/index.ts";
import type { Session } from "../adapters/sessions.ts";
import { sha256Hex } from "../chance.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import type { Services } from "../services.ts";

export interface BlurAsked {
  readonly sha256: string;
  readonly regions: readonly Region[];
  readonly reason: string;
}

/**
 * Has parts of a photo blurred: media makes new renditions, they stand for the photo from now on wherever it is shown or
 * printed, and every job that names it has a fact that says so. The original is kept. Asked twice it is done once. Refuses
 * `photo-unknown`, `photo-unreadable`, `photo-not-read-yet`, `request-shape` and what media refuses.
 */
export async function blur(services: Services, author: Session, asked: BlurAsked, now: number): Promise<Outcome<BlurMade>> {
  const { company } = author;
  const { sha256, regions, reason } = asked;
  const photo = await services.photos.get(company, sha256);
  if (!photo) return refuse("photo-unknown", "photo", {});
  if (photo.state === "unreadable") return refuse("photo-unreadable", "photo", {});
  if (photo.state === "stored") return refuse("photo-not-read-yet", "photo", {});
  const outside = regions.findIndex((region) => !isRegion(region));
  if (outside >= 0) return refuse("request-shape", `regions/${outside}`, { why: "region" });
  const text = canonical(regions as unknown as Json);
  if (!text.ok) return text;
  const digest = await sha256Hex(`${sha256} ${text.value}`);
  const made = await services.machines.blurPhoto(company, sha256, { digest, regions });
  if (!made.ok) return made;
  const jobs = await services.photos.jobsOf(company, sha256);
  await services.database.batch([...services.photos.blur(company, sha256, { digest, regions: text.value, made: now })]);
  for (const job of jobs) {
    const told = await sayInJob(
      services,
      author,
      { company, job },
      {
        id: (await sha256Hex(`region-blurred ${job} ${digest}`)).slice(0, 32),
        kind: "region-blurred",
        contents: { what: { photo: sha256, rendition: digest, regions: regions as unknown as Json, reason } },
        at: now,
      },
    );
    if (!told.ok) return told;
  }
  return ok({ sha256, parts: digest, jobs: [...jobs] });
}
