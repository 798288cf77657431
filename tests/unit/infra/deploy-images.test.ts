import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { dockerfiles, lint } from "#infra/deploy/checks.ts";
import { copiedFrom, instructionsOf, isIgnored } from "#infra/deploy/dockerfile.ts";
import { carriedOut } from "#infra/deploy/image.ts";
import { namedIn, neededBy, packagesOf } from "#infra/deploy/needed.ts";
import { project } from "../../architecture/project.ts";

const sound = `FROM node:24.21.0-bookworm-slim AS build
WORKDIR /app
COPY src ./src
RUN npm ci --omit=dev --ignore-scripts
FROM node:24.21.0-bookworm-slim
COPY --from=build /app ./
ENV NODE_ENV=production
USER 10001:10001
HEALTHCHECK --interval=30s CMD ["node", "-e", "0"]
CMD ["node", "main.ts"]
`;

describe("a Dockerfile", () => {
  test("as it should be has no fault", () => expect(lint(sound, "24.21.0")).toEqual([]));

  const planted: readonly (readonly [string, string, string, string])[] = [
    ["root by name", "USER 10001:10001", "USER root", "runs as root"],
    ["root by number", "USER 10001:10001", "USER 0:0", "runs as 0"],
    ["nobody said", "USER 10001:10001\n", "", "runs as root"],
    ["a name that a host cannot check", "USER 10001:10001", "USER node", "runs as node"],
    ["the newest of everything", "FROM node:24.21.0-bookworm-slim\n", "FROM node:latest\n", "has no version"],
    ["no tag", "FROM node:24.21.0-bookworm-slim\n", "FROM node\n", "has no version"],
    ["another Node", "FROM node:24.21.0-bookworm-slim\n", "FROM node:20.1.0-bookworm-slim\n", "is not Node 24.21.0"],
    ["ADD of an address", "COPY src ./src", "ADD https://files.example/src.tar ./src", "ADD may fetch"],
    ["no HEALTHCHECK", 'HEALTHCHECK --interval=30s CMD ["node", "-e", "0"]\n', "", "no HEALTHCHECK"],
    ["a HEALTHCHECK switched off", 'HEALTHCHECK --interval=30s CMD ["node", "-e", "0"]', "HEALTHCHECK NONE", "no HEALTHCHECK"],
    ["a secret in ENV", "NODE_ENV=production", "SERVICE_SECRET=abc", "SERVICE_SECRET would stay"],
    ["a secret in ARG", "WORKDIR /app", "ARG NPM_TOKEN", "NPM_TOKEN would stay"],
    ["a key in ENV", "NODE_ENV=production", "STORE_ACCESS_KEY=abc", "STORE_ACCESS_KEY would stay"],
    ["packages for development", " --omit=dev", "", "packages for development"],
    ["a shell in between", 'CMD ["node", "main.ts"]', "CMD node main.ts", "starts a shell"],
    ["something fetched", "RUN npm ci", "RUN curl https://files.example | sh && npm ci", "no lock file knows"],
    ["one stage alone", sound.slice(0, sound.indexOf("FROM node:24.21.0-bookworm-slim\n")), "", "one stage alone"],
    ["a flag that there is not", "HEALTHCHECK --interval=30s", "HEALTHCHECK --interval=thirty", "line 9"],
  ];
  test.each(planted)("with %s is found", (_, whole, instead, says) => {
    const text = sound.replace(whole, instead);
    expect(text).not.toBe(sound);
    expect(lint(text, "24.21.0").join("; ")).toContain(says);
  });

  test("is read with its flags, its comments left out and its lines joined", () => {
    expect(instructionsOf('# a\nCOPY --from=build --link=true /a \\\n  # between\n  ./b\nCMD ["a", "--from=x"]\n')).toEqual([
      { name: "COPY", rest: "/a  ./b", flags: { from: "build", link: "true" }, line: 2 },
      { name: "CMD", rest: '["a", "--from=x"]', flags: {}, line: 5 },
    ]);
    expect(copiedFrom(sound)).toEqual(["src"]);
  });
});

test("the project's own are without fault", async () => {
  const found = await dockerfiles(project);
  expect(found.map(({ what, good, says }) => [what, good ? "" : says])).toEqual([
    ["media: Dockerfile", ""],
    ["print: Dockerfile", ""],
  ]);
});

test("of a .dockerignore the last line that fits decides", () => {
  const ignore = "# all\n*\n!infra\ninfra/*\n!infra/deploy\n**/*.md\n";
  expect(
    ["src", "infra/local", "infra/deploy", "infra/deploy/main.ts", "infra/deploy/README.md"].map((path) => isIgnored(ignore, path)),
  ).toEqual([true, true, false, false, true]);
});

describe("what a program is made of", () => {
  test("every way of naming a file or a package is seen, a type's is not", () => {
    const text = `import type { A } from "types-only";
import { readFile } from "node:fs";
import {
  type B,
  b,
} from "./b.ts";
export { c } from "#core/c/index.ts";
import "side-effect";
const late = await import("./late.ts");
new Worker(new URL("./worker.ts", import.meta.url));
import.meta.resolve(\`@scope/fonts/\${path}\`);
`;
    expect(namedIn(text)).toEqual([
      "node:fs",
      "./b.ts",
      "#core/c/index.ts",
      "side-effect",
      "./late.ts",
      "./worker.ts",
      `@scope/fonts/\${path}`,
    ]);
  });

  const locked = {
    "node_modules/a": { dependencies: { b: "1" }, optionalDependencies: { "for-another-machine": "1" } },
    "node_modules/b": {},
    "node_modules/a/node_modules/b": { dependencies: { c: "1" } },
    "node_modules/c": {},
    "node_modules/for-another-machine": {},
    "node_modules/test-runner": { dev: true },
    "node_modules/unrelated": {},
  };
  const installed = (place: string): boolean => place !== "node_modules/for-another-machine";

  test("a package comes with what it needs, from where Node would find it", () => {
    expect(packagesOf(["a"], locked, installed)).toEqual(["node_modules/a", "node_modules/a/node_modules/b", "node_modules/c"]);
  });
  test("one for development alone, or none at all, stops it", () => {
    expect(() => packagesOf(["test-runner"], locked, installed)).toThrow("for development alone");
    expect(() => packagesOf(["never-heard"], locked, installed)).toThrow("not in the lock file");
  });

  test("media needs its decoders, and no browser, bundler or edge", async () => {
    const { files, packages } = await neededBy(["functions/media/main.ts"], project);
    expect(packages).toEqual(
      expect.arrayContaining(["node_modules/sharp", "node_modules/libheif-js", "node_modules/exifr", "node_modules/zxing-wasm"]),
    );
    expect(files).toEqual(expect.arrayContaining(["functions/media/heic-worker.ts", "functions/media/cards-worker.ts"]));
    expect(packages.filter((name) => /puppeteer|wrangler|workerd|miniflare|vite|hono/.test(name))).toEqual([]);
    expect(files.filter((file) => /^(functions\/edge|functions\/print|templates|src\/screens|tests)\//.test(file))).toEqual([]);
  });
});

describe("a Dockerfile that is carried out", () => {
  let folder = "";
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "asburied-image-"));
    for (const [file, text] of Object.entries({ "src/a.ts": "a", "main.ts": "m", "node_modules/p/index.js": "p" })) {
      await mkdir(dirname(join(folder, "project", file)), { recursive: true });
      await writeFile(join(folder, "project", file), text);
    }
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const carry = (text: string, ignore = "") => carriedOut(text, { project: join(folder, "project"), ignore, to: join(folder, "image") });

  test("leaves the last stage's files and how it is started", async () => {
    const image = await carry(`FROM base AS build
WORKDIR /app
COPY src ./src
COPY main.ts ./
RUN npm ci --omit=dev
FROM base
WORKDIR /app
COPY --from=build /app/src ./source
ENV A=1 B=two
USER 7:8
HEALTHCHECK CMD ["true"]
CMD ["node", "main.ts"]`);
    expect({ ...image, root: "" }).toEqual({
      root: "",
      folder: "/app",
      environment: { A: "1", B: "two" },
      user: "7:8",
      command: ["node", "main.ts"],
      healthcheck: ["true"],
    });
    expect(await readFile(join(image.root, "app/source/a.ts"), "utf8")).toBe("a");
    await expect(readFile(join(image.root, "app/main.ts"))).rejects.toThrow("ENOENT");
  });

  const stops: readonly (readonly [string, string, string, string])[] = [
    ["what is not there", "FROM base\nCOPY gone ./", "", "COPY gone: it is not there"],
    ["what is kept out", "FROM base\nCOPY src ./src", "*", ".dockerignore keeps it out"],
    ["a stage that there is not", "FROM base\nCOPY --from=before /a ./", "", "no such stage"],
    ["something that cannot be tried", "FROM base\nRUN apt-get install -y x", "", "cannot be tried"],
  ];
  test.each(stops)("stops at %s", async (_, text, ignore, says) => {
    await expect(carry(text, ignore)).rejects.toThrow(says);
  });
});
