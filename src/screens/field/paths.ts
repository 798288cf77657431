import type { About, WayOut } from "../../job/index.ts";
import { jobPath, phonePath } from "../parts/place.ts";

const tail = (tag: string | undefined): readonly string[] => (tag === undefined ? [] : [tag]);

/** A step, for one tag where its items repeat. */
export const stepPath = (job: string, step: string, tag?: string): string => jobPath(job, "step", step, ...tail(tag));
/** Where an item is entered: a reading, a picture or an answer. */
export const takePath = (job: string, item: string, tag?: string): string => jobPath(job, "take", item, ...tail(tag));
/** The points of a check, taken one after the other in one set-up. */
export const setUpPath = (job: string, check: string, tag?: string): string => jobPath(job, "set-up", check, ...tail(tag));
/** The clearance of one covering and the act of covering. */
export const coverPath = (job: string, covering: string): string => jobPath(job, "cover", covering);
/** The names of one kind of thing on this job: joints, glue sessions, buried points. A step: the one to go on with afterwards. */
export const namesPath = (job: string, set: string, step?: string): string => jobPath(job, "names", set, ...tail(step));
/** Pictures that were taken together and wait to be put to what they show; `photo`: the one in hand. */
export const burstPath = (job: string, photo?: string): string => jobPath(job, "burst", ...tail(photo));
/** What somebody else reads again before this covering, without sight of the first readings. */
export const againPath = (job: string, covering: string): string => jobPath(job, "again", covering);
export const setOutPath = (job: string): string => jobPath(job, "set-out");
export const waterPath = (job: string): string => jobPath(job, "water");
export const tonightPath = (job: string): string => jobPath(job, "tonight");
export const wherePath = (job: string): string => jobPath(job, "where");
/** What is not sent yet, and who enters on this phone today. */
export const unsentPath = phonePath("unsent");
export const personPath = phonePath("person");

/** What somebody decides or says instead of taking it: does not apply, could not be taken, a go-ahead by telephone. */
export const wayPath = (job: string, way: WayOut, { item, check, tag }: About, covering?: string): string =>
  jobPath(
    job,
    "way",
    way.replaceAll(" ", "-"),
    item === undefined ? `check:${check ?? ""}` : `item:${item}`,
    tag ?? "-",
    ...tail(covering),
  );

/** Stands in an address where a covering would. */
export const noCovering = "-";

/** Every way out of one line of a clearance; of something that holds none, the ways to say why it is not taken. */
export const waysPath = (job: string, covering: string, { item, check, tag }: About): string =>
  jobPath(job, "ways", covering, item === undefined ? `check:${check ?? ""}` : `item:${item}`, tag ?? "-");

/** Where an entry goes that was made in the wrong place. */
export const movePath = (job: string, entry: string): string => jobPath(job, "move", entry);

/** A picture of the tape beside a reading. */
export const tapePicturePath = (job: string, item: string, tag?: string): string => jobPath(job, "tape-picture", item, ...tail(tag));
/** A length measured in a picture with a card, beside a reading. */
export const measurePath = (job: string, item: string, tag?: string): string => jobPath(job, "measure", item, ...tail(tag));
/** How this phone's lens bends lines. */
export const lensPath = phonePath("lens");
