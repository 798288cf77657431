/** The part of the package that the local store uses; it brings no types of its own. */
declare module "@20minutes/s3rver" {
  import type { IncomingMessage, ServerResponse } from "node:http";

  export interface FilesystemStore {
    getResourcePath(bucket: string, key: string | undefined, resource: string): string;
    putContent(path: string, content: NodeJS.ReadableStream | Buffer): Promise<[number, string]>;
    putMetadata(bucket: string, key: string, metadata: Record<string, unknown>, md5?: string): Promise<void>;
    deleteObject(bucket: string, key: string): Promise<void>;
  }
  export default class S3rver {
    constructor(options: {
      silent?: boolean;
      directory: string;
      vhostBuckets?: boolean;
      allowMismatchedSignatures?: boolean;
      configureBuckets?: { name: string }[];
    });
    readonly store: FilesystemStore;
    configureBuckets(): Promise<unknown>;
    callback(): (request: IncomingMessage, response: ServerResponse) => void;
  }
}

declare module "@20minutes/s3rver/lib/models/account.js" {
  interface Account {
    createKeyPair(accessKeyId: string, secretAccessKey: string): void;
    revokeAccessKey(accessKeyId: string): void;
  }
  const accounts: { readonly DUMMY_ACCOUNT: Account };
  export default accounts;
}
