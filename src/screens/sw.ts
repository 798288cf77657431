import { ExpirationPlugin } from "workbox-expiration";
import { cleanupOutdatedCaches, createHandlerBoundToURL, type PrecacheEntry, precacheAndRoute } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";
import { CacheFirst, NetworkFirst } from "workbox-strategies";

declare const self: typeof globalThis & { readonly __WB_MANIFEST: readonly (PrecacheEntry | string)[]; skipWaiting(): Promise<void> };

// every file of the app with its digest: a cold start without signal is answered from here
precacheAndRoute([...self.__WB_MANIFEST]);
cleanupOutdatedCaches();

// one page for every address of the app; what the edge answers itself (sign-in links, the API) goes to the edge
registerRoute(new NavigationRoute(createHandlerBoundToURL("/index.html"), { denylist: [/^\/in\//, /^\/api\//, /^\/released\//] }));

// the package's own types do not meet under exactOptionalPropertyTypes
const pictures = new ExpirationPlugin({ maxEntries: 300, purgeOnQuotaError: true }) as unknown as Record<string, never>;
// a picture is named by the hash of its photo: it never changes
registerRoute(
  ({ url }) => /^\/api\/photos\/[0-9a-f]{64}\/screen$/.test(url.pathname),
  new CacheFirst({ cacheName: "pictures", plugins: [pictures] }),
);

// what reads a PDF and judges by older rules: large, and no crew's phone needs it; a name with a digest in it never changes
registerRoute(({ url }) => /^\/assets\/pdf\.[^/]+\.mjs$/.test(url.pathname), new CacheFirst({ cacheName: "checking" }));
// the file of a version of the rules is built once
registerRoute(({ url }) => /^\/rules\/\d+\.js$/.test(url.pathname), new NetworkFirst({ cacheName: "checking-rules" }));

// a newer app waits until somebody says so: a page in the middle of a reading is not changed under the hand
addEventListener("message", (event) => {
  if ((event as MessageEvent).data === "take over") void self.skipWaiting();
});
