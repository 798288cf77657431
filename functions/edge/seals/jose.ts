/** A module of its own, so that the worker evaluates the library when a record is first sealed. */
export { CompactSign, calculateJwkThumbprint } from "jose";
