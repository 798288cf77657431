const NAME = "session";
/** A season: a crew's phone signs in in spring. 200 days. */
const LIFE_S = 200 * 24 * 3600;

const attributes = (request: Request): string =>
  `HttpOnly; SameSite=Strict; Path=/${new URL(request.url).protocol === "https:" ? "; Secure" : ""}`;

export const sessionCookie = (token: string, request: Request): string => `${NAME}=${token}; Max-Age=${LIFE_S}; ${attributes(request)}`;
export const noCookie = (request: Request): string => `${NAME}=; Max-Age=0; ${attributes(request)}`;

/** The session's token as the request carries it. */
export function tokenIn(request: Request): string | undefined {
  const cookies = (request.headers.get("cookie") ?? "").split(";");
  const own = cookies.map((cookie) => cookie.trim()).find((cookie) => cookie.startsWith(`${NAME}=`));
  const token = own?.slice(NAME.length + 1);
  return token && /^[A-Za-z0-9_-]{43}$/.test(token) ? token : undefined;
}
