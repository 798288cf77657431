/** Hundredths of the company's currency as a number of two decimals: the currency is the company's own and is not said. */
export const moneyText = (hundredths: number, language: string): string =>
  new Intl.NumberFormat(language === "es" ? "es-US" : "en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(
    hundredths / 100,
  );

/** Minutes as '2:30'. */
export const timeText = (minutes: number): string => `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
