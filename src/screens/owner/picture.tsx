import { useEffect, useRef, useState } from "preact/hooks";
import { type PictureView, type Plotting, plotted, SIGN_BOX, signDrawn } from "../../quality/index.ts";
import { useSpeaking } from "../parts/speaking.ts";

/** CSS pixels: wider than this a picture says no more. */
const WIDEST = 760;

/** The library comes with the first picture, on the owner's pages alone. */
const loading = (): Promise<Plotting<SVGSVGElement>> =>
  import("@observablehq/plot").then((library) => library as unknown as Plotting<SVGSVGElement>);

/** A picture in black ink with its key. What it says stands in the table beside it too. */
export function Pictured({ view }: { readonly view: PictureView }) {
  const { session } = useSpeaking();
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const of = place.current;
    if (of === null) return;
    const watch = new ResizeObserver(() => setWidth(Math.min(WIDEST, Math.floor(of.clientWidth))));
    watch.observe(of);
    return () => watch.disconnect();
  }, []);
  useEffect(() => {
    let left = false;
    if (width > 0)
      void loading().then((plotting) => {
        if (left) return;
        const svg = plotted(plotting, view, { width, language: session.language });
        // the page's policy takes no styles that stand in the page; what it would say stands in the style sheet
        svg.querySelector("style")?.remove();
        // one picture with one name: its parts have none
        for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
        svg.setAttribute("role", "img");
        svg.setAttribute("aria-label", view.title);
        place.current?.replaceChildren(svg);
      });
    return () => {
      left = true;
    };
  }, [view, width, session.language]);
  return (
    <figure class="plotted">
      <figcaption>{view.title}</figcaption>
      <div ref={place} class="plotted-place" />
      {view.key.length > 0 && (
        <ul class="plotted-key">
          {view.key.map((one) => {
            const { path, filled, dash } = signDrawn(one.sign, one.filled);
            return (
              <li key={one.sign}>
                <svg
                  aria-hidden="true"
                  width={SIGN_BOX.width}
                  height={SIGN_BOX.height}
                  viewBox={`0 0 ${SIGN_BOX.width} ${SIGN_BOX.height}`}
                >
                  <path d={path} class={filled ? "filled" : ""} stroke-dasharray={dash} />
                </svg>{" "}
                {one.says}
              </li>
            );
          })}
        </ul>
      )}
    </figure>
  );
}
