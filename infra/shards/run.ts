/** How far the edge says that a move has come (src/wire/access.ts). */
export interface Stand {
  readonly stage: string;
  readonly rows?: number;
  readonly closed?: number;
  readonly switched?: number;
}

export interface MovePlan {
  /** Address of the edge. */
  readonly edge: string;
  readonly operatorKey: string;
  readonly company: string;
  /** The binding of the shard that it is to lie in. */
  readonly to: string;
  /** What it left behind is to go, instead of the move itself. */
  readonly remove: boolean;
  readonly log: (line: string) => void;
}

/** Why the edge does not move the company, in its own words. */
export class NotMoved extends Error {}

/** So long nobody may answer before the command gives up; the move then stands where it is. */
const PATIENCE_MS = 60_000;
const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** One step. Undefined where nobody answered, or could not just now. */
async function step({ edge, operatorKey, company, to, remove }: MovePlan): Promise<Stand | undefined> {
  const asked = {
    method: "POST",
    headers: { authorization: `Operator ${operatorKey}`, "content-type": "application/json" },
    body: JSON.stringify({ to, remove }),
    signal: AbortSignal.timeout(40_000),
  };
  const answer = await fetch(`${edge}/api/companies/${encodeURIComponent(company)}/move`, asked).catch(() => undefined);
  if (answer === undefined) return undefined;
  const body = (await answer.json().catch(() => ({}))) as Stand & { readonly detail?: string };
  if (answer.ok) return body;
  if (answer.status >= 500 || answer.status === 429) return undefined;
  throw new NotMoved(body.detail ?? `The edge answered ${answer.status}.`);
}

/**
 * Asks the edge for one step after another until the company lies in the other shard, or, with `remove`, until nothing of it is left
 * behind. The edge alone knows how far it has come: run again after any end it goes on from there.
 * @throws NotMoved with the edge's reason, or when the edge has not answered for a minute
 */
export async function move(plan: MovePlan): Promise<Stand> {
  let heard = Date.now();
  let said = "";
  for (;;) {
    const stand = await step(plan);
    if (stand === undefined) {
      if (Date.now() - heard > PATIENCE_MS)
        throw new NotMoved("The edge has not answered for a minute. Nothing is lost: run the same again.");
      await pause(500);
      continue;
    }
    heard = Date.now();
    const line = `${stand.stage}${stand.rows === undefined ? "" : `, ${stand.rows} rows`}`;
    if (line !== said) plan.log(line);
    said = line;
    if (stand.stage === "there" || (stand.stage === "moved" && !plan.remove)) return stand;
    if (stand.stage === "moved") await pause(500);
  }
}
