import { edgeOf } from "./edge.ts";
import { demoSignIn, makeDemoLinks } from "./local/demo-links.ts";
import { routes } from "./routes/index.ts";
import { signIn } from "./routes/sign-in.ts";

const withDemo = [...routes.map((route) => (route === signIn ? demoSignIn : route)), makeDemoLinks];

export default edgeOf(withDemo, () => Date.now());
