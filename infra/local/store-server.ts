import { mkdir } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import S3rver from "@20minutes/s3rver";
import accounts from "@20minutes/s3rver/lib/models/account.js";
import { removeParts, writeWhole } from "./store-files.ts";

export interface LocalStoreSettings {
  /** Folder of all objects; made when it is not there. */
  readonly directory: string;
  /** 0 takes any free port. */
  readonly port: number;
  readonly accessKeyId: string;
  readonly secretAccessKey: string;
  readonly bucket: string;
}

export interface LocalStore {
  readonly port: number;
  readonly endpoint: string;
  close(): Promise<void>;
}

/**
 * An S3-protocol server on disk, for the local stack. Only the given key pair opens it: the package's own well-known
 * pair is withdrawn, and a request without a signature, which the package would serve, is refused.
 */
export async function startStore(settings: LocalStoreSettings): Promise<LocalStore> {
  await mkdir(settings.directory, { recursive: true });
  await removeParts(settings.directory);
  accounts.DUMMY_ACCOUNT.revokeAccessKey("S3RVER");
  accounts.DUMMY_ACCOUNT.createKeyPair(settings.accessKeyId, settings.secretAccessKey);
  const s3 = new S3rver({
    silent: true,
    directory: settings.directory,
    vhostBuckets: false,
    configureBuckets: [{ name: settings.bucket }],
  });
  writeWhole(s3.store);
  await s3.configureBuckets();
  const serve = s3.callback();
  const server = createServer((request, response) => {
    if (isSigned(request)) return serve(request, response);
    request.resume().on("end", () => {
      response.writeHead(403, { "content-type": "application/xml" });
      response.end("<Error><Code>AccessDenied</Code><Message>Access Denied</Message></Error>");
    });
  });
  // Longer than workerd keeps a connection, else it sends on one that has just been closed.
  server.keepAliveTimeout = 75_000;
  server.headersTimeout = 80_000;
  await listening(server, settings.port);
  const { port } = server.address() as AddressInfo;
  return { port, endpoint: `http://127.0.0.1:${port}`, close: () => closed(server) };
}

const isSigned = ({ headers, url }: IncomingMessage): boolean =>
  headers.authorization !== undefined || new URL(url ?? "/", "http://store").searchParams.has("X-Amz-Signature");

const listening = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => resolve());
  });

/** Lets running requests end for two seconds, then ends them. */
const closed = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    const limit = setTimeout(() => server.closeAllConnections(), 2_000);
    server.close(() => {
      clearTimeout(limit);
      resolve();
    });
    server.closeIdleConnections();
  });
