export { type Admission, type Admitting, type Answer, type Appended, append, appendAsHeld, laneOf, plan, untilFirst } from "./append.ts";
export { arrived, contentOf, type Expected, idOf, type Sender } from "./arrival.ts";
export { EDGE, fromEdge, fromPhone, type Incoming, PROGRAM } from "./item.ts";
