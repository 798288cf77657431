import type { PersonRow } from "../adapters/companies.ts";
import type { Session } from "../adapters/sessions.ts";

/** Whose devices and ways in somebody may see and end: one's own, the office the crew's, the company owner everybody's. */
export const mayEnd = (session: Session, person: Pick<PersonRow, "id" | "role">): boolean =>
  person.id === session.person || session.role === "company owner" || (session.role === "office" && person.role === "crew");
