/** A wording of a tolerance sheet: data, by language. */
export interface Words {
  readonly en: string;
  readonly es?: string;
}
