const policy = [
  "default-src 'self'",
  "img-src 'self' blob: data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join("; ");

const always: Readonly<Record<string, string>> = {
  "content-security-policy": policy,
  "x-content-type-options": "nosniff",
  // A sign-in link stands in the address.
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy": "camera=(self), geolocation=(self), microphone=()",
};

/** The response with the security headers that it does not set itself, and never kept by a cache unless it says so. */
export function guarded(response: Response, request: Request, requestId: string): Response {
  const headers = new Headers(response.headers);
  for (const [name, value] of Object.entries(always)) if (!headers.has(name)) headers.set(name, value);
  if (!headers.has("cache-control")) headers.set("cache-control", "no-store");
  if (new URL(request.url).protocol === "https:") headers.set("strict-transport-security", "max-age=31536000");
  headers.set("x-request-id", requestId);
  return new Response(response.body, { status: response.status, statusText: response.statusText, headers });
}
