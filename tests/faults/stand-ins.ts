import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const worker = `export default {
  async fetch(request, env) {
    const { pathname, searchParams } = new URL(request.url);
    if (pathname === "/add") {
      const text = searchParams.get("text");
      await env.DB.prepare("INSERT INTO note (text, via) VALUES (?, 'request')").bind(text).run();
      await env.MEDIA_QUEUE.send({ text });
      return new Response("kept");
    }
    if (pathname === "/notes") return Response.json((await env.DB.prepare("SELECT text, via FROM note ORDER BY id").all()).results);
    if (pathname === "/media") return fetch(env.MEDIA_URL);
    return new Response("here");
  },
  async scheduled(event, env) {
    await env.DB.prepare("INSERT INTO note (text, via) VALUES ('sweep', 'scheduled')").run();
  },
  async queue(batch, env) {
    for (const message of batch.messages) {
      await env.DB.prepare("INSERT INTO note (text, via) VALUES (?, ?)").bind(message.body.text, batch.queue).run();
      if (message.body.text === "cannot be read" && batch.queue === "media") message.retry();
      else message.ack();
    }
  },
};
`;

const server = `import { createServer } from "node:http";
const port = Number(process.env.MEDIA_PORT ?? process.env.PRINT_PORT ?? process.env.STORE_PORT);
createServer((request, response) => response.end(String(process.pid))).listen(port, "127.0.0.1", () => console.log(JSON.stringify({ ready: true, port })));
`;

const broken = `console.error("the shelf is full");
process.exit(7);
`;

const stackIndex = fileURLToPath(new URL("../../infra/local/index.ts", import.meta.url));

/** A process of its own that runs a stack: prints its address and its processes, then holds on. */
const holder = `import { startStack } from ${JSON.stringify(stackIndex)};
const stack = await startStack(JSON.parse(process.argv[2]));
process.on("SIGUSR2", () => {
  stack.kill("edge", "SIGKILL");
  setTimeout(async () => { await stack.ready("edge"); console.log(JSON.stringify({ edge: stack.edge, processes: stack.processes })); }, 20);
});
setInterval(() => {}, 1000);
console.log(JSON.stringify({ edge: stack.edge, processes: stack.processes }));
`;

/** Small stand-ins for the four parts, so that the stack itself can be tried alone. */
export const writeStandIns = async (folder: string) => {
  await mkdir(join(folder, "migrations"), { recursive: true });
  const files = {
    worker: join(folder, "worker.mjs"),
    server: join(folder, "server.ts"),
    broken: join(folder, "broken.ts"),
    holder: join(folder, "holder.ts"),
  };
  await writeFile(files.worker, worker);
  await writeFile(files.server, server);
  await writeFile(files.broken, broken);
  await writeFile(files.holder, holder);
  await writeFile(
    join(folder, "migrations/0001-note.sql"),
    "CREATE TABLE note (id INTEGER PRIMARY KEY, text TEXT NOT NULL, via TEXT NOT NULL) STRICT;\n",
  );
  const instead = {
    worker: files.worker,
    migrations: join(folder, "migrations"),
    app: join(folder, "no-app"),
    store: files.server,
    media: files.server,
    print: files.server,
  };
  return { ...files, instead };
};
