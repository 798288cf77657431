import { appendFileSync } from "node:fs";

/** Adds one line to the file named by `ASBURIED_PROCESS_LOG`, so that a test run can count the processes that really ran. */
export const noteProcess = (name: string, pid: number): void => {
  const file = process.env.ASBURIED_PROCESS_LOG;
  if (file) appendFileSync(file, `${JSON.stringify({ name, pid })}\n`);
};
