import { createHash } from "node:crypto";

/** What store, media and print were asked since the last look. */
export interface Asked {
  store: number;
  /** Of them HEAD and GET. */
  storeReads: number;
  media: number;
  print: number;
}

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

/** As media would answer for a photo of a phone: every one looks different, so that likenesses are looked up as in use. */
function photoFacts(sha: string, bytes: number): object {
  const hex = (name: string, digits: number): string => sha256(`${name} ${sha}`).slice(0, digits);
  const rendition = (name: string, width: number) => ({
    name,
    width,
    height: (width * 3) / 4,
    bytes: width * 150,
    sha256: sha256(`${name} ${sha}`),
  });
  return {
    sha,
    bytes,
    type: "image/jpeg",
    width: 4000,
    height: 3000,
    orientation: 1,
    taken: { text: "2026-05-12T09:14:00", offset: "-05:00", offsetFrom: "tag", source: "original" },
    satelliteTime: null,
    position: { latitude: 410_021_000, longitude: -891_204_000, accuracy: 6_000 },
    notes: [],
    sharpness: 250_000,
    edges: 90_000,
    exposure: { dark: 12, bright: 9 },
    pixels: sha256(`pixels ${sha}`),
    likeness: { hashes: [hex("likeness", 16)], unsure: ["8421842184218421"], abstains: null, strength: 4_000, layout: 900 },
    renditions: [rendition("screen", 2048), rendition("print", 1600), rendition("column", 1000)],
  };
}

interface Printing {
  readonly kind: string;
  readonly key: string;
  readonly photos?: Readonly<Record<string, unknown>>;
}

/** Words of one printed page; a record of sixty pictures has some thirty. */
const PAGE = "Measured and pictured as it was before it was covered. ".repeat(40);
const PAGES = 30;

export interface StandIns {
  readonly asked: Asked;
  answer(url: URL, request: Request): Promise<Response>;
}

/** Store, media and print without their work: what the edge asks of them is counted, and answered at once. Only what the edge reads again is kept. */
export function standIns(): StandIns {
  const lengths = new Map<string, number>();
  const texts = new Map<string, Uint8Array<ArrayBuffer>>();
  const asked: Asked = { store: 0, storeReads: 0, media: 0, print: 0 };

  async function store(path: string, request: Request): Promise<Response> {
    asked.store += 1;
    if (request.method === "GET" || request.method === "HEAD") asked.storeReads += 1;
    if (request.method === "PUT") {
      let length = 0;
      const kept: Uint8Array[] = [];
      for await (const block of request.body ?? []) {
        length += block.length;
        if (!path.includes("/originals/")) kept.push(block);
      }
      lengths.set(path, length);
      if (kept.length > 0) texts.set(path, new Uint8Array(Buffer.concat(kept)));
      return new Response(null, { status: 200, headers: { etag: '"0"' } });
    }
    if (request.method === "DELETE") return new Response(null, { status: 204 });
    const length = lengths.get(path) ?? (path.includes("/renditions/") ? 2_000 : undefined);
    if (length === undefined) return new Response(null, { status: 404 });
    const headers = { "content-length": String(length), "content-type": "application/octet-stream" };
    return new Response(request.method === "HEAD" ? null : (texts.get(path) ?? new Uint8Array(length)), { status: 200, headers });
  }

  return {
    asked,
    async answer(url, request) {
      if (url.hostname === "store.invalid") return store(url.pathname, request);
      if (url.hostname === "media.invalid") {
        asked.media += 1;
        const { company, sha } = (await request.json()) as { company: string; sha: string };
        return Response.json(photoFacts(sha, lengths.get(`/bucket/${company}/originals/${sha}`) ?? 0));
      }
      asked.print += 1;
      const { kind, key, photos = {} } = (await request.json()) as Printing;
      const file = new Uint8Array(Buffer.from(`%PDF ${key}`));
      lengths.set(`/bucket/${key}`, file.length);
      texts.set(`/bucket/${key}`, file);
      const pictures = Object.fromEntries(Object.keys(photos).map((photo) => [photo, sha256(photo)]));
      const shown = { pages: Array.from({ length: PAGES }, (_, i) => `${i} ${PAGE}`), pictures, papers: {} };
      const about = { sha256: sha256(key), bytes: file.length, pages: PAGES, missing: [] };
      return Response.json(kind === "record" ? { ...about, shown } : about);
    },
  };
}
