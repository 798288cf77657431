import { options, type VNode } from "preact";
import { isPlainlyShown, shownText } from "../../text/index.ts";

/** Words that whoever reads a page by ear or by pointing hears. */
const SPOKEN = ["title", "aria-label", "alt", "placeholder"] as const;

const shown = (child: unknown): unknown => {
  if (typeof child === "string") return isPlainlyShown(child) ? child : shownText(child);
  return Array.isArray(child) && child.some((one) => typeof one === "string" && !isPlainlyShown(one)) ? child.map(shown) : child;
};

/**
 * From now on every text that stands in an element is drawn without what deceives: marks that turn the line, signs that show nothing.
 * One place for all pages; what stands in a field to be typed on, and what is kept and sent, stays as it was typed.
 */
export function drawShown(): void {
  const before = options.vnode;
  options.vnode = (vnode: VNode) => {
    if (typeof vnode.type === "string") {
      const props = vnode.props as unknown as Record<string, unknown>;
      if (props.children !== undefined && vnode.type !== "textarea") props.children = shown(props.children);
      for (const name of SPOKEN) if (typeof props[name] === "string") props[name] = shown(props[name]);
    }
    before?.(vnode);
  };
}
