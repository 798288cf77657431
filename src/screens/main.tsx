import { render } from "preact";
import { App } from "./app.tsx";

const root = document.getElementById("app");
if (root === null) throw new Error("The page has no place for the app.");
render(<App />, root);
