import { pictureLines } from "#core/wire/index.ts";
import { picturesOf } from "../jobs/pictures.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

export const getJobPictures = route({
  method: "GET",
  path: "/api/jobs/:job/pictures",
  says: "What speaks for and against each picture of a job, each line a fact",
  who: officeUp,
  gives: { 200: pictureLines },
  async run(call) {
    const place = await jobOf(call);
    return place.ok ? json(await picturesOf(call.services, place.value, call.session)) : place;
  },
});
