import type { ownerEn } from "./owner-en.ts";

/** Words of `owner-en.ts` in Spanish. */
export const ownerEs: Readonly<Record<keyof typeof ownerEn, string>> = {
  "owner-questions": "Lo que dicen las obras",
  "owner-decides": "Qué decide",
  "owner-stands-out": "Sobresale",
  "owner-counted": "Contado",
  "owner-behind": "{count} obras han crecido y aún no están contadas de nuevo; mire otra vez en un momento.",
  "owner-csv": "Esta tabla en CSV",
  "owner-cut": "{count} filas más están en el CSV.",
  "owner-back": "Todas las preguntas",
  "owner-days": "Solo obras instaladas entre",
  "owner-from": "Desde (año-mes-día)",
  "owner-to": "Hasta (año-mes-día)",
  "owner-persons": "Comparar y nombrar personas",
  "owner-persons-why": "Una cifra sobre un paso o una pieza no es un juicio sobre una persona.",
  "owner-lot": "Cuántos hay",
  "owner-looked": "Cuántos se midieron otra vez",
  "owner-off": "Cuántos de ellos estaban mal",
  "owner-ask": "Preguntar de nuevo",
  "owner-report": "Informe de un mes, para imprimir",
  "owner-month": "Mes (año-mes)",
  "owner-report-open": "Abrir el informe en PDF",
  "owner-note": "nota",
};
