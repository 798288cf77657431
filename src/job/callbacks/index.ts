export { type Callback, type CallbackClosed, callbacksOf } from "./callbacks.ts";
export { type CheckFirst, checkFirst, type FirstLooks, type Room } from "./check-first.ts";
