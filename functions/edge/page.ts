/** A page of the edge's own, for who has no app yet. Both texts are fixed words of this program, never a sender's. */
export function page(status: number, title: string, text: string): Response {
  const html = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><h1>${title}</h1><p>${text}</p></html>`;
  return new Response(html, { status, headers: { "content-type": "text/html; charset=utf-8", "cache-control": "no-store" } });
}
