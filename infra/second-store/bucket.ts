import { setTimeout as sleep } from "node:timers/promises";

/**
 * Makes the bucket through Swift's own interface (account, token, container), which is not the one that is tried; again and again
 * until the store answers.
 * @throws what the store answered last, when `patience` milliseconds are over.
 */
export async function makeBucket(endpoint: string, secret: string, bucket: string, patience: number): Promise<void> {
  const until = Date.now() + patience;
  for (;;) {
    const answered = await made(endpoint, secret, bucket).catch((error: Error) => error.message);
    if (answered === undefined) return;
    if (Date.now() > until) throw new Error(`the second store did not make its bucket: ${answered}`);
    await sleep(500);
  }
}

/** Undefined when it stands. */
async function made(endpoint: string, secret: string, bucket: string): Promise<string | undefined> {
  const door = await fetch(`${endpoint}/auth/v1.0`, { headers: { "x-auth-user": "local:store", "x-auth-key": secret } });
  const token = door.headers.get("x-auth-token");
  const account = door.headers.get("x-storage-url");
  if (token === null || account === null) return `${door.status} ${await door.text()}`;
  const container = await fetch(`${account}/${bucket}`, { method: "PUT", headers: { "x-auth-token": token } });
  return container.ok ? undefined : `${container.status} ${await container.text()}`;
}
