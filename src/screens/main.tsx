import { render } from "preact";
import { App } from "./app.tsx";
import { drawShown } from "./parts/shown.ts";

drawShown();
const root = document.getElementById("app");
if (root === null) throw new Error("The page has no place for the app.");
// a link for somebody who signs in nowhere leads to one page and to nothing else of the app
const token = /^\/others\/([A-Za-z0-9_-]{43})\/?$/.exec(location.pathname)?.[1];
if (token === undefined) render(<App />, root);
else
  void import("./others/page.tsx").then(({ OthersPage }) => {
    render(<OthersPage token={token} />, root);
  });
