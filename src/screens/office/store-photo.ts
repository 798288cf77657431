import type { WireProblem } from "../../wire/index.ts";

/** Why a photo was not stored. */
export type NotStored = { readonly is: "refused"; readonly problem: WireProblem } | { readonly is: "away" };

/** Stores the photo under its hash; what came of it where that is no success. */
export async function storePhoto(file: Blob, photo: string): Promise<NotStored | undefined> {
  try {
    const answer = await fetch(`/api/photos/${photo}`, { method: "PUT", headers: { "x-asburied": "1" }, body: file });
    return answer.ok ? undefined : { is: "refused", problem: (await answer.json()) as WireProblem };
  } catch {
    return { is: "away" };
  }
}
