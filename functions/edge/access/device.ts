/** What a session runs on, as coarsely as its browser says it: enough to tell one's own devices apart, and no fingerprint. */
export type Device = "phone" | "tablet" | "computer" | "other";

export function deviceOf(request: Request): Device {
  const says = request.headers.get("user-agent") ?? "";
  if (/iPad|Tablet/i.test(says) || (/Android/i.test(says) && !/Mobile/i.test(says))) return "tablet";
  if (/Mobi|iPhone|Android/i.test(says)) return "phone";
  return /Windows|Macintosh|Linux|CrOS/i.test(says) ? "computer" : "other";
}
