/**
 * Chooses the form that a number asks for: '{jobs} {jobs|job|jobs}' says 'job' of one and 'jobs' of any other number, by the rules of
 * the language (`Intl.PluralRules`); what the two languages call 'many' and 'other' is one form here. A form may hold figures of its
 * own. A place whose figure is no number takes the second form.
 */
export function numbered(sentence: string, figures: Readonly<Record<string, string | number>>, language: "en" | "es"): string {
  const rules = new Intl.PluralRules(language);
  return sentence.replace(/\{(\w+)\|((?:[^|{}]|\{\w+\})*)\|((?:[^|{}]|\{\w+\})*)\}/g, (_, name: string, one: string, other: string) => {
    const figure = figures[name];
    return typeof figure === "number" && rules.select(figure) === "one" ? one : other;
  });
}
