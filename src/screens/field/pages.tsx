import type { ComponentChildren, ComponentType } from "preact";
import { lazy } from "preact/compat";
import { useEffect } from "preact/hooks";
import type { Place } from "../parts/place.ts";
import { OpenGround } from "./ground.tsx";
import type { JobPart } from "./job-part.ts";
import { useKeep } from "./keep/index.ts";

// all but the first screen come when they are opened; the worker has put them by
const FieldJob = lazy(() => import("./index.tsx").then((page) => page.FieldJob));

/** The pages inside a job, by the name in their address. */
const jobParts: Readonly<Record<string, ComponentType<JobPart>>> = {
  take: lazy(() => import("./take.tsx").then(({ Take }) => Take)),
  step: lazy(() => import("./reading/step.tsx").then(({ StepPage }) => StepPage)),
  "set-up": lazy(() => import("./reading/set-up.tsx").then(({ SetUpPage }) => SetUpPage)),
  burst: lazy(() => import("./picture/burst.tsx").then(({ BurstPage }) => BurstPage)),
  "tape-picture": lazy(() => import("./picture/picture.tsx").then(({ TapePicturePage }) => TapePicturePage)),
  measure: lazy(() => import("./measure/index.tsx").then(({ measurePage }) => measurePage())),
  cover: lazy(() => import("./covering/cover.tsx").then(({ CoverPage }) => CoverPage)),
  ways: lazy(() => import("./covering/ways.tsx").then(({ WaysPage }) => WaysPage)),
  way: lazy(() => import("./covering/way.tsx").then(({ WayPage }) => WayPage)),
  move: lazy(() => import("./covering/move.tsx").then(({ MovePage }) => MovePage)),
  names: lazy(() => import("./covering/names.tsx").then(({ NamesPage }) => NamesPage)),
  "set-out": lazy(() => import("./numbers/set-out.tsx").then(({ SetOutPage }) => SetOutPage)),
  water: lazy(() => import("./numbers/water.tsx").then(({ WaterPage }) => WaterPage)),
  tonight: lazy(() => import("./numbers/tonight.tsx").then(({ TonightPage }) => TonightPage)),
  again: lazy(() => import("./study/index.tsx").then(({ againPage }) => againPage())),
  where: lazy(() => import("./numbers/where.tsx").then(({ WherePage }) => WherePage)),
};

/** The pages of the phone itself. */
const phoneParts: Readonly<Record<string, ComponentType>> = {
  person: lazy(() => import("./person.tsx").then(({ PersonPage }) => PersonPage)),
  study: lazy(() => import("./study/index.tsx").then(({ studyPage }) => studyPage())),
  instruments: lazy(() => import("./study/index.tsx").then(({ instrumentPage }) => instrumentPage())),
  lens: lazy(() => import("./measure/index.tsx").then(({ lensPage }) => lensPage())),
  unsent: lazy(() => import("./unsent.tsx").then(({ UnsentPage }) => UnsentPage)),
};

const named = <T,>(all: Readonly<Record<string, T>>, name: string): T | undefined => (Object.hasOwn(all, name) ? all[name] : undefined);

/** A page that reads the jobs themselves: drawn once they are read. */
function OfJobs({ children }: { readonly children: ComponentChildren }) {
  const { keep, state } = useKeep();
  useEffect(() => void keep.whole().catch(() => {}), [keep]);
  return state.whole ? children : null;
}

/** The crew's page at a place; undefined where there is none. */
export function fieldPage(place: Place) {
  if (place.page === "jobs") return <OpenGround />;
  const page = jobsPage(place);
  return page && <OfJobs>{page}</OfJobs>;
}

function jobsPage(place: Place) {
  if (place.page === "phone") {
    const Page = named(phoneParts, place.part);
    return Page === undefined ? undefined : <Page />;
  }
  if (place.page !== "job") return undefined;
  const { job, part, rest } = place;
  if (part === undefined) return <FieldJob key={job} job={job} />;
  const Part = named(jobParts, part);
  return Part === undefined ? undefined : <Part key={`${job} ${part} ${rest.join("/")}`} job={job} rest={rest} />;
}
