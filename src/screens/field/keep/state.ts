import type { Json } from "../../../ledger/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import type { SessionView } from "../../../wire/index.ts";
import type { Book } from "./book.ts";
import type { Photo } from "./enter.ts";
import type { Progress } from "./passed.ts";
import type { AboutPhone, JobHead, OwnEntry, OwnPhoto } from "./shapes.ts";

/** All that the pages of the phone are drawn from. A new object for every change. */
export interface KeepState {
  readonly session?: SessionView;
  readonly people: AboutPhone["session"]["people"];
  /** Who enters on this phone today. */
  readonly today?: AboutPhone["today"];
  readonly phone?: string;
  /** What the first screen is drawn from. */
  readonly heads: readonly JobHead[];
  /** The jobs themselves, once they are read: `whole`. */
  readonly books: readonly Book[];
  readonly whole: boolean;
  readonly entries: readonly OwnEntry[];
  readonly photos: readonly OwnPhoto[];
  readonly skew: number;
  readonly readAt?: number;
  /** Since when the edge has not answered, the phone's clock. */
  readonly awaySince?: number;
  /** The session has ended: everything is kept, and goes when somebody signs in again. */
  readonly signedOut: boolean;
  /** Another company's crew has signed in on this phone: what is not sent is kept for those who entered it. */
  readonly anothers: boolean;
  readonly sending?: Progress;
  /** When sending is tried again, the phone's clock. */
  readonly triesAgain?: number;
  /** The phone has no room for a picture, perhaps for some entries still. */
  readonly full: boolean;
  /** Somebody is asked who enters here, before an entry goes on. */
  readonly askingWho: boolean;
  readonly persisted: boolean;
}

/** What came of entering: kept, refused by its form, or no room. */
export type Entered =
  | { readonly is: "kept"; readonly own: OwnEntry }
  | { readonly is: "refused"; readonly refusal: Refusal }
  | { readonly is: "no room" };

/** Words of one entry; `photo` travels with it. `draft`: where they stood while they were typed, emptied in the same moment. */
export interface Words {
  readonly what: Json;
  readonly who?: Json;
  readonly where?: Json;
  readonly photo?: Photo;
  readonly draft?: string;
  /** Who enters it, where that is not the person of the day: somebody else reads again what that one has read. */
  readonly by?: string;
  /** Told in the moment in which the pages are: what they draw then is drawn once. */
  readonly kept?: (entry: string) => void;
}

export const nothing: KeepState = {
  people: [],
  heads: [],
  books: [],
  whole: false,
  entries: [],
  photos: [],
  skew: 0,
  signedOut: false,
  anothers: false,
  full: false,
  askingWho: false,
  persisted: false,
};
