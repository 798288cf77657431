/** A module of its own, so that the worker evaluates the library when an archive is first asked for. */
export { Zip, ZipPassThrough } from "fflate";
