import type { WireProblem } from "../../wire/index.ts";

const hexOf = (bytes: ArrayBuffer): string => Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, "0")).join("");
export const sha256Of = async (bytes: BufferSource): Promise<string> => hexOf(await crypto.subtle.digest("SHA-256", bytes));

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
