const whole = (words: string): readonly RegExp[] => words.split(", ").map((word) => new RegExp(`(?<![\\p{L}])${word}(?![\\p{L}])`, "iu"));

/** Words that together are somebody else's menu, and 'error'. `issue` as a noun only: a record is issued. */
export const keptOffEnglish = whole(
  "check ?lists?, inspections?, audits?, observations?, actions?, (?:an?|the|this|that|any|no|some|open|known) issue, issues, scores?, templates?, forms?, assets?, daily logs?, timelines?, feeds?, galler(?:y|ies), dashboards?, boards?, workflows?, flags?, pins?, punch, snags?, pass, fail(?:s|ed|ure)?, n\\.a\\., errors?",
);

/** What the same menu is called in Spanish. */
export const keptOffSpanish = whole(
  "listas? de (?:verificación|control|chequeo|cotejo), inspecci(?:ón|ones), auditorías?, observaci(?:ón|ones), acci(?:ón|ones), incidencias?, puntajes?, puntuaci(?:ón|ones), calificaci(?:ón|ones), plantillas?, formularios?, activos?, bitácoras?, cronologías?, líneas? de tiempo, galerías?, tableros?, paneles, panel, flujos? de trabajo, banderas?, reprobad[oa]s?, fall(?:ó|a|as|o|os), err(?:or|ores)",
);

/** Blame, the speech of machines, and what the program never claims. */
export const kinderWords = whole(
  "invalid, illegal, wrong, incorrect, mistakes?, forgot, you must, please, oops, sorry, safe, to code, unauthorized, forbidden, inválid[oa]s?, incorrect[oa]s?, ilegal(?:es)?, equivocad[oa]s?, se equivocó, olvidó, culpa, debe usted, por favor, segur[oa]s?, prohibid[oa]s?",
);
