import { globSync } from "node:fs";
import { cp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { build } from "vite";
import { injectManifest } from "workbox-build";
import { project } from "./project.ts";
import { sourcesDigest } from "./sources.ts";

/** All that the app is made of. */
const sources = ["src/**/*.*", "infra/rules/*.js", "infra/build/app.ts"];

/** The worker that answers without signal: bundled as one script, the app's files and their digests written into it. */
async function serviceWorkerBuild(folder: string): Promise<void> {
  await build({
    configFile: false,
    root: join(project, "src/screens"),
    publicDir: false,
    logLevel: "warn",
    define: { "process.env.NODE_ENV": '"production"' },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: "es2022",
      reportCompressedSize: false,
      rollupOptions: { input: join(project, "src/screens/sw.ts"), output: { format: "iife", entryFileNames: "sw.js" } },
    },
  });
  const { warnings } = await injectManifest({
    swSrc: join(folder, "sw.js"),
    swDest: join(folder, "sw.js"),
    globDirectory: folder,
    // what checks a record is kept by the devices that open that page, not by every phone
    globIgnores: ["assets/pdf.*"],
    globPatterns: ["index.html", "app.webmanifest", "*.{svg,png}", "assets/**/*"],
    dontCacheBustURLsMatching: /^assets\//,
  });
  if (warnings.length > 0) throw new Error(warnings.join("\n"));
}

const own = join(project, "src/");
const begins = /screens\/(main\.tsx|field\/(picture\/judge|cards\/find)-worker\.ts)$/;

/** Of the project's own modules only those that start something act by being loaded: the others go to the pages that use them. */
const actsWhenLoaded = (id: string): boolean => !id.startsWith(own) || id.endsWith(".css") || begins.test(id);

async function viteBuild(folder: string): Promise<void> {
  const before = process.env.NODE_ENV;
  // under a test runner the build would otherwise be one for tests
  process.env.NODE_ENV = "production";
  try {
    await build({
      configFile: false,
      root: join(project, "src/screens"),
      publicDir: join(project, "src/screens/public"),
      logLevel: "warn",
      oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
      build: {
        outDir: folder,
        emptyOutDir: true,
        target: "es2022",
        assetsInlineLimit: 0,
        // nothing is fetched ahead: from the second start on the worker has everything, and a browser uses no link to what a worker answers
        modulePreload: { polyfill: false, resolveDependencies: () => [] },
        reportCompressedSize: false,
        rollupOptions: { treeshake: { moduleSideEffects: actsWhenLoaded } },
      },
    });
    // as they were built, to the byte: a record names their digests
    await cp(join(project, "infra/rules"), join(folder, "rules"), { recursive: true });
    await serviceWorkerBuild(folder);
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}

/**
 * Builds the web app into `out/app`, unless it lies there already, made of the same sources: files with their hash in the
 * name, and `_headers` with the content security policy. Nothing is put inline, since the policy allows none of it.
 * @returns the folder
 */
export async function buildApp(folder: string = join(project, "out/app")): Promise<string> {
  const under = underWay.get(folder) ?? builtInto(folder).finally(() => underWay.delete(folder));
  underWay.set(folder, under);
  return under;
}

/** Several stacks of one process may be starting: they wait for one build. */
const underWay = new Map<string, Promise<string>>();

async function builtInto(folder: string): Promise<string> {
  const stamp = `${folder}.sources`;
  const digest = await sourcesDigest(sources);
  if (globSync(join(folder, "index.html")).length > 0 && (await readFile(stamp, "utf8").catch(() => "")) === digest) return folder;
  // built beside and moved in one go: a stack may be serving what was built before, several may be starting
  const part = `${folder}.${process.pid}.part`;
  const old = `${folder}.${process.pid}.old`;
  await viteBuild(part).catch(async (error) => {
    await rm(part, { recursive: true, force: true });
    throw error;
  });
  await rename(folder, old).catch(() => {});
  await rename(part, folder).catch(() => rm(part, { recursive: true, force: true }));
  await rm(old, { recursive: true, force: true });
  await writeFile(stamp, digest);
  return folder;
}
