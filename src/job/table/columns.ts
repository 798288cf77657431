import type { FigureAsked, Item, ToleranceSheet } from "../sheet.ts";

/** What a line of a table of jobs can say of a job, whatever its tolerance sheet is, with the heads that stand for it. */
export const tableFields = {
  number: { en: ["number", "own number", "job number", "job no", "job"], es: ["número", "número propio", "número de trabajo", "trabajo"] },
  title: { en: ["title", "job title", "job name", "name"], es: ["título", "nombre", "nombre del trabajo"] },
  order: { en: ["order", "order number", "order no", "po", "po number", "purchase order"], es: ["pedido", "número de pedido"] },
  invoice: { en: ["invoice", "invoice number", "invoice no"], es: ["factura", "número de factura"] },
  address: { en: ["address", "site address", "site"], es: ["dirección", "dirección del sitio", "sitio"] },
  latitude: { en: ["latitude", "lat"], es: ["latitud"] },
  longitude: { en: ["longitude", "lon", "long", "lng"], es: ["longitud"] },
  heightMark: { en: ["height mark"], es: ["marca de altura"] },
  tieMarks: { en: ["tie marks"], es: ["marcas de distancias"] },
  "customer-name": { en: ["customer", "customer name"], es: ["cliente", "nombre del cliente"] },
  "customer-phone": { en: ["customer phone", "customer telephone", "phone", "telephone"], es: ["teléfono", "teléfono del cliente"] },
  "customer-contact": { en: ["customer mail", "customer email", "mail", "email", "e mail"], es: ["correo", "correo del cliente"] },
  "onSite-name": { en: ["contact on site", "contact", "site contact"], es: ["contacto en el sitio", "contacto"] },
  "onSite-phone": { en: ["contact phone", "phone on site"], es: ["teléfono del contacto", "teléfono en el sitio"] },
  "onSite-contact": { en: ["contact mail", "contact email"], es: ["correo del contacto"] },
  "receiver-name": { en: ["receiver", "receiver of the record"], es: ["quien recibe el registro", "quien recibe"] },
  "receiver-phone": { en: ["receiver phone"], es: ["teléfono de quien recibe"] },
  "receiver-contact": { en: ["receiver mail", "receiver email"], es: ["correo de quien recibe"] },
  language: { en: ["language"], es: ["idioma"] },
  crew: { en: ["crew"], es: ["cuadrilla"] },
  sheet: { en: ["tolerance sheet"], es: ["hoja de tolerancias"] },
} as const;
export type TableField = keyof typeof tableFields;

/** One column of a table: a field of its own, a figure of the design, or a reading that the sheet asks of the office. */
export type Column =
  | { readonly is: "field"; readonly field: TableField }
  | { readonly is: "figure"; readonly figure: FigureAsked }
  | { readonly is: "reading"; readonly item: Item }
  | { readonly is: "unread"; readonly head: string };

/** A head as it is compared: without accents, capitals and signs. */
export const plainHead = (head: string): string =>
  head
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

let byHead: ReadonlyMap<string, TableField> | undefined;
function fieldsByHead(): ReadonlyMap<string, TableField> {
  byHead ??= new Map(
    Object.entries(tableFields).flatMap(([field, { en, es }]) =>
      [field, ...en, ...es].map((head) => [plainHead(head), field as TableField] as const),
    ),
  );
  return byHead;
}

const isNamed = (head: string, { id, title }: { readonly id: string; readonly title: { readonly en: string; readonly es?: string } }) =>
  [id, title.en, title.es ?? ""].some((name) => plainHead(name) === head);

/** The readings that a sheet asks of the office, before or after the site. */
export function officeReadingsOf(sheet: ToleranceSheet): readonly Item[] {
  const steps = new Set(sheet.steps.filter(({ office }) => office).map(({ id }) => id));
  return sheet.items.filter(({ kind, step, tags }) => kind === "reading" && tags === undefined && steps.has(step));
}

/** What the heads of a table stand for, in their order; figures and readings by their name or title in the tolerance sheet. */
export function columnsOf(heads: readonly string[], sheet: ToleranceSheet | undefined): readonly Column[] {
  const readings = sheet === undefined ? [] : officeReadingsOf(sheet);
  return heads.map((typed): Column => {
    const head = plainHead(typed);
    const field = fieldsByHead().get(head);
    if (field !== undefined) return { is: "field", field };
    const item = readings.find((one) => isNamed(head, one));
    if (item !== undefined) return { is: "reading", item };
    const figure = sheet?.figures.find((one) => one.kind !== "text" && one.from === "design" && isNamed(head, one));
    return figure === undefined ? { is: "unread", head: typed.trim() } : { is: "figure", figure };
  });
}

/** The name of a column's place in what is said about a line. */
export function placeOfColumn(column: Column): string {
  if (column.is === "field") return column.field;
  if (column.is === "figure") return column.figure.id;
  return column.is === "reading" ? column.item.id : column.head;
}
