import type { Outcome } from "#core/outcome/index.ts";
import type { ReportModel } from "#core/quality/index.ts";
import type { CardsPageModel, DesignPageModel, RecordModel } from "#core/record/index.ts";
import { WarmBrowser } from "#functions/print/browser.ts";
import { browserEnvironment as forBrowser } from "#functions/print/environment.ts";
import { readFonts } from "#functions/print/fonts.ts";
import { print } from "#functions/print/print.ts";
import type { PrintAnswer, PrintAttachment } from "#functions/shared/index.ts";
import { browserEnvironment } from "#infra/browser/index.ts";
import type { SamplePhoto } from "../samples/record-photos.ts";
import { memoryStore } from "./memory-store.ts";

export const warmBrowser = async (change: Partial<ConstructorParameters<typeof WarmBrowser>[0]> = {}): Promise<WarmBrowser> => {
  const environment = await browserEnvironment();
  return new WarmBrowser({
    path: environment.BROWSER_PATH as string,
    environment: forBrowser({ ...process.env, ...environment }),
    pageLimit: 30_000,
    closeLimit: 3_000,
    report: () => {},
    ...change,
  });
};

export const renditionOf = (sha256: string): string => `kettle/renditions/${sha256}/print.jpg`;

export interface SamplePrinter {
  readonly browser: WarmBrowser;
  readonly store: ReturnType<typeof memoryStore>;
  printDesign(model: DesignPageModel): Promise<Outcome<PrintAnswer & { readonly pdf: Uint8Array }>>;
  printCards(model: CardsPageModel): Promise<Outcome<PrintAnswer & { readonly pdf: Uint8Array }>>;
  printReport(model: ReportModel): Promise<Outcome<PrintAnswer & { readonly pdf: Uint8Array }>>;
  print(model: RecordModel, attachments?: readonly PrintAttachment[]): Promise<Outcome<PrintAnswer & { readonly pdf: Uint8Array }>>;
}

/** Print with a real browser and the store in memory, which holds the photos' renditions. */
export async function samplePrinter(photos: readonly SamplePhoto[]): Promise<SamplePrinter> {
  const [browser, fonts] = await Promise.all([warmBrowser(), readFonts()]);
  const store = memoryStore();
  for (const { sha256, bytes } of photos) store.objects.set(renditionOf(sha256), { bytes, type: "image/jpeg" });
  const keys = Object.fromEntries(photos.map(({ sha256 }) => [sha256, [{ key: renditionOf(sha256) }]]));
  return {
    browser,
    store,
    async printDesign(model) {
      const key = "kettle/designs/job/1.pdf";
      const outcome = await print({ kind: "design-check", model, key }, { store, browser, fonts });
      if (!outcome.ok) return outcome;
      return { ok: true, value: { ...outcome.value, pdf: store.objects.get(key)?.bytes as Uint8Array } };
    },
    async printCards(model) {
      const key = "kettle/cards/job/1.pdf";
      const outcome = await print({ kind: "cards", model, key }, { store, browser, fonts });
      if (!outcome.ok) return outcome;
      return { ok: true, value: { ...outcome.value, pdf: store.objects.get(key)?.bytes as Uint8Array } };
    },
    async printReport(model) {
      const key = "kettle/reports/1.pdf";
      const outcome = await print({ kind: "report", model, key }, { store, browser, fonts });
      if (!outcome.ok) return outcome;
      return { ok: true, value: { ...outcome.value, pdf: store.objects.get(key)?.bytes as Uint8Array } };
    },
    async print(model, attachments = []) {
      const key = "kettle/records/job/1.pdf";
      const outcome = await print({ kind: "record", model, key, photos: keys, attachments }, { store, browser, fonts });
      if (!outcome.ok) return outcome;
      return { ok: true, value: { ...outcome.value, pdf: store.objects.get(key)?.bytes as Uint8Array } };
    },
  };
}
