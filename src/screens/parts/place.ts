/** Where in the app somebody is; the address says it, so that a place can be sent to somebody else. */
export type Place = { readonly page: "jobs" } | { readonly page: "job"; readonly job: string } | { readonly page: "unknown" };

/** The place that a path names. */
export function placeOf(path: string): Place {
  if (path === "/" || path === "") return { page: "jobs" };
  const job = /^\/jobs\/([A-Za-z0-9][A-Za-z0-9_-]{0,63})\/?$/.exec(path)?.[1];
  return job === undefined ? { page: "unknown" } : { page: "job", job };
}

export const jobPath = (job: string): string => `/jobs/${job}`;
