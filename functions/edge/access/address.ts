/**
 * Whence a request comes, as the platform says it (it overwrites what a client puts there): an IPv4 address, or the first 64 bits
 * of an IPv6 one, because a household or a phone is given all the rest to choose from.
 */
export function addressOf(request: Request): string {
  const given = (request.headers.get("cf-connecting-ip") ?? "").trim().toLowerCase();
  if (!given.includes(":")) return /^[0-9.]{7,15}$/.test(given) ? given : "unknown";
  const [before = "", after] = given.split("::");
  const groups = (text: string): string[] => (text === "" ? [] : text.split(":"));
  const left = groups(before);
  const gap = after === undefined ? 0 : Math.max(0, 8 - left.length - groups(after).length);
  const all = [...left, ...Array<string>(gap).fill("0"), ...groups(after ?? "")];
  return all
    .slice(0, 4)
    .map((group) => group.replace(/^0+(?=.)/, ""))
    .join(":");
}
