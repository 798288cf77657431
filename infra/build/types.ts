import "../node-version.mjs";
import { checkTypes, typeProjects } from "./type-projects.ts";

for (const name of typeProjects) {
  const { code, output, seconds } = await checkTypes(name);
  if (output.trim()) console.log(output.trim());
  console.log(`types ${name}: ${code === 0 ? "right" : "wrong"} (${seconds.toFixed(1)} s)`);
  if (code !== 0) process.exitCode = 1;
}
