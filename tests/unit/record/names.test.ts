import { describe, expect, it } from "vitest";
import type { Live } from "#core/job/index.ts";
import { nameBehind } from "#core/record/names.ts";

const role = (of: string): string =>
  ({ crew: "crew", office: "office", "company owner": "company owner", someone: "someone" })[of] as string;
const people = { "person-1": { name: "Kim Alder", role: "office" } } as const;
const fact = (person: string, what: object): Live => ({ kind: "does-not-apply", what, entry: { author: { person } } }) as unknown as Live;
const said = (person: string, what: object): string => nameBehind(fact(person, what), { people, style: "role and initials", role });

describe("the name behind a fact", () => {
  it("goes with the role that is written in it, else with the person's", () => {
    expect(said("person-1", { role: "company owner" })).toBe("company owner, K. A.");
    expect(said("person-1", {})).toBe("office, K. A.");
    expect(said("person-2", { role: "crew" })).toBe("crew");
  });

  it("takes no word for a role that is none", () => {
    for (const none of ["\u202e", "toString", "customer", "", 7, null]) {
      expect(said("person-1", { role: none })).toBe("office, K. A.");
      expect(said("person-2", { role: none })).toBe("someone");
    }
  });
});
