export { browserArguments, browserEnvironment, type LaunchOptions, launchOptions } from "./launch.ts";
export { type Browser, browser } from "./unpack.ts";
