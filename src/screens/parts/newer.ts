/** The newer app that lies ready, if there is one; `take` starts it. */
export interface Newer {
  readonly take: () => void;
}

const policy =
  "trustedTypes" in globalThis
    ? (
        globalThis as unknown as {
          trustedTypes: {
            createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
          };
        }
      ).trustedTypes.createPolicy("asburied", {
        createScriptURL(url) {
          if (url !== "/sw.js") throw new Error(`no script is started from ${url}`);
          return url;
        },
      })
    : undefined;

/**
 * Starts the worker that answers without signal, and tells when a newer app lies ready.
 * A browser without such workers shows the app all the same, with signal only.
 */
export async function startServiceWorker(tell: (newer: Newer) => void): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  const registration = await navigator.serviceWorker.register(policy?.createScriptURL("/sw.js") ?? "/sw.js").catch(() => undefined);
  if (registration === undefined) return;
  const look = (): void => {
    const { waiting } = registration;
    if (waiting === null || navigator.serviceWorker.controller === null) return;
    tell({
      take: () => {
        navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
        waiting.postMessage("take over");
      },
    });
  };
  const watch = (): void => registration.installing?.addEventListener("statechange", look);
  look();
  // one that was found while this page was opening is told of by no event any more
  watch();
  registration.addEventListener("updatefound", watch);
}
