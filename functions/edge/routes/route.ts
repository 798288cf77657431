import type { Role } from "#core/job/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import type { Operation, Shape, ShapeOutput } from "#core/wire/index.ts";
import type { Place } from "../adapters/ledgers.ts";
import type { Session } from "../adapters/sessions.ts";
import { COMPANY_LEDGER } from "../company/change.ts";
import type { Services } from "../services.ts";

/** Who may call a route: everybody, the one who holds the operator's key, or sessions of these roles. */
export type Who = readonly ["nobody"] | readonly ["operator"] | readonly Role[];

export const everyone: Who = ["nobody"];
export const operator: Who = ["operator"];
export const anyRole: Who = ["crew", "office", "company owner"];
export const officeUp: Who = ["office", "company owner"];
export const ownerOnly: Who = ["company owner"];

export interface Call<Input = unknown> {
  readonly services: Services;
  /** Of the caller; reading it on a route that nobody need sign in for is a bug and throws. */
  readonly session: Session;
  readonly parameters: Readonly<Record<string, string>>;
  /** What was sent, as its shape reads it. */
  readonly input: Input;
  readonly request: Request;
  /** The edge's clock when the request came, milliseconds: the time of receipt. */
  readonly now: number;
  /** Goes on after the answer is sent. */
  readonly afterwards: (work: Promise<unknown>) => void;
}

export interface Route extends Operation {
  readonly who: Who;
  /** The session comes with the people of its company, in one question. */
  readonly withPeople?: boolean;
  /** Bytes of the largest body that is read. */
  readonly largest?: number;
  readonly run: (call: Call<never>) => Promise<Outcome<Response>>;
  /**
   * Tried first where this isolate knows the session, which may be over by now: it writes only with `sessions.unlessOver` in the same
   * batch, and answers only what it wrote. Undefined: nothing was done.
   */
  readonly asKnown?: (call: Call<never>) => Promise<Outcome<Response> | undefined>;
}

interface Described<S extends Shape> extends Omit<Operation, "takes"> {
  readonly who: Who;
  readonly withPeople?: boolean;
  readonly takes?: S | "bytes";
  readonly largest?: number;
  readonly run: (call: Call<ShapeOutput<S>>) => Promise<Outcome<Response>>;
  readonly asKnown?: (call: Call<ShapeOutput<S>>) => Promise<Outcome<Response> | undefined>;
}

export const route = <S extends Shape>(described: Described<S>): Route => described;

export const json = (value: unknown, status = 200): Outcome<Response> => ok(Response.json(value, { status }));
export const done = (): Outcome<Response> => ok(new Response(null, { status: 204 }));

const ID = /^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/;

/**
 * Where the job that the address names lies, if there is one: for what asks the ledger itself. The company's own ledger lies among
 * them under an id that no job may have.
 */
export function placeOf({ session, parameters }: Call): Outcome<Place> {
  const { job = "" } = parameters;
  return ID.test(job) && !job.startsWith(COMPANY_LEDGER) ? ok({ company: session.company, job }) : refuse("job-unknown", "job", {});
}

/**
 * The job that the address names, of the caller's company. One of another company is as unknown as one that never was:
 * nothing that is answered may tell them apart, so the place does not repeat the id.
 */
export async function jobOf(call: Call): Promise<Outcome<Place>> {
  const place = placeOf(call);
  return !place.ok || (await call.services.jobs.hasJob(place.value)) ? place : refuse("job-unknown", "job", {});
}
