import { DeleteObjectCommand, GetObjectCommand, HeadObjectCommand, PutObjectCommand, S3Client } from "@aws-sdk/client-s3";

/** Where a store is reached, and as whom. */
export interface StorePlace {
  readonly endpoint: string;
  readonly region: string;
  readonly bucket: string;
  readonly accessKeyId: string;
  readonly secretAccessKey: string;
}

/** The library's client with the four commands that the port has. A module of its own, so that the worker evaluates it when it is first needed. */
export const s3Of = (place: StorePlace) => ({
  client: new S3Client({
    region: place.region,
    endpoint: place.endpoint,
    forcePathStyle: true,
    credentials: { accessKeyId: place.accessKeyId, secretAccessKey: place.secretAccessKey },
    maxAttempts: 1,
    requestChecksumCalculation: "WHEN_REQUIRED",
    responseChecksumValidation: "WHEN_REQUIRED",
    // Everything it would print is in the refusal.
    logger: { debug: quiet, info: quiet, warn: quiet, error: quiet },
  }),
  DeleteObjectCommand,
  GetObjectCommand,
  HeadObjectCommand,
  PutObjectCommand,
});

export type S3 = ReturnType<typeof s3Of>;

const quiet = (): void => undefined;
