import { edgeOf } from "./edge.ts";
import { routes } from "./routes/index.ts";

export default edgeOf(routes, () => Date.now());
