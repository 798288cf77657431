import { afterEach, beforeEach } from "vitest";
import { beginRecording, endRecording } from "./checked.ts";

beforeEach(beginRecording);
afterEach(({ task }) => {
  task.meta.recorded = endRecording();
});
