/** Of which version an edited thing was made: the digest in `If-Match` (RFC 9110, an entity tag); undefined where nothing is said. */
export function savedFrom(request: Request): string | undefined {
  return /^"([0-9a-f]{64})"$/.exec(request.headers.get("if-match") ?? "")?.[1];
}
