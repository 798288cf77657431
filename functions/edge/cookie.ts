const NAMES = { session: "session", try: "try" } as const;
type Name = keyof typeof NAMES;

const isHttps = (request: Request): boolean => new URL(request.url).protocol === "https:";
/** Over https by a name that a browser takes only with `Secure`, without `Domain` and for the whole host (RFC 6265bis, `__Host-`). */
const nameOf = (name: Name, request: Request): string => (isHttps(request) ? `__Host-${NAMES[name]}` : NAMES[name]);

function cookie(name: Name, token: string, request: Request, lifeMs: number): string {
  const life = `Max-Age=${Math.max(0, Math.floor(lifeMs / 1000))}`;
  return `${nameOf(name, request)}=${token}; ${life}; HttpOnly; SameSite=Strict; Path=/${isHttps(request) ? "; Secure" : ""}`;
}

function cookieIn(name: Name, request: Request): string | undefined {
  const begins = `${nameOf(name, request)}=`;
  const cookies = (request.headers.get("cookie") ?? "").split(";").map((one) => one.trim());
  const token = cookies.find((one) => one.startsWith(begins))?.slice(begins.length);
  return token && /^[A-Za-z0-9_-]{43}$/.test(token) ? token : undefined;
}

export const sessionCookie = (token: string, request: Request, lifeMs: number): string => cookie("session", token, request, lifeMs);
export const noCookie = (request: Request): string => cookie("session", "", request, 0);
/** The session's token as the request carries it. */
export const tokenIn = (request: Request): string | undefined => cookieIn("session", request);

/** Of somebody who is about to sign in: ties the challenge to the browser that asked for it. */
export const tryCookie = (token: string, request: Request, lifeMs: number): string => cookie("try", token, request, lifeMs);
export const tryIn = (request: Request): string | undefined => cookieIn("try", request);
