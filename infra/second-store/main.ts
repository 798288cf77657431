import "../node-version.mjs";
import { randomBytes } from "node:crypto";
import { runTool } from "../build/index.ts";
import { makeBucket } from "./bucket.ts";
import { startSwift } from "./swift.ts";

/**
 * `npm run second-store`: the contract of the object store against a second, independent S3 implementation, OpenStack Swift from
 * Debian's packages. It needs a Debian with the packages, or root and debootstrap, which makes one in a folder; nothing of the
 * machine itself is changed. Says as its last line whether it ran; exit 0 when it could not run, 1 with `--required`.
 */
const required = process.argv.includes("--required");
const secret = randomBytes(16).toString("hex");
const swift = await startSwift({ secret, say: (line) => console.log(line) });
if (!swift.ok) {
  console.log(`second store: did not run. ${swift.why}`);
  process.exit(required ? 1 : 0);
}
const settings = {
  name: `Swift ${swift.version} with s3api`,
  endpoint: swift.endpoint,
  region: "auto",
  bucket: "asburied",
  accessKeyId: "local:store",
  secretAccessKey: secret,
};
/** Nine rings are built before it answers: some seconds on a quiet machine. */
const PATIENCE_MS = 120_000;
try {
  const waited = await makeBucket(settings.endpoint, secret, settings.bucket, PATIENCE_MS).catch((error: Error) => error);
  if (waited instanceof Error) {
    console.log(`second store: did not run. ${waited.message}; its log is ${swift.log}`);
    process.exitCode = 1;
  } else await tryIt();
} finally {
  await swift.stop();
}

async function tryIt(): Promise<void> {
  const ran = await runTool("node_modules/vitest/vitest.mjs", ["run", "--project", "contract", "tests/contract/store.test.ts"], true, {
    ASBURIED_SECOND_STORE: JSON.stringify(settings),
  });
  console.log(`second store: ran against ${settings.name}; ${ran.code === 0 ? "it keeps the contract" : "it does not keep the contract"}`);
  process.exitCode = ran.code === 0 ? 0 : 1;
}
