import { makeWarrantySayer } from "../../../record/index.ts";
import { serviceKinds } from "../../../warranty/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { SaidForm } from "./said-form.tsx";

/** What is entered about a job's warranty over the years. `parts`: those that the terms name. */
export function WarrantyEntered({ job, parts }: { readonly job: string; readonly parts: readonly string[] }) {
  const { say, session } = useSpeaking();
  const sayer = makeWarrantySayer(session.language);
  const named = parts.map((value) => ({ value, title: value }));
  const anyPart = { name: "part", word: "warranty-part" } as const;
  const part = named.length > 0 ? { ...anyPart, choices: named } : anyPart;
  return (
    <>
      <SaidForm
        job={job}
        kind="service-done"
        title="warranty-service"
        enter="after-enter"
        fields={[
          {
            name: "service",
            word: "warranty-service-which",
            choices: serviceKinds.map((value) => ({ value, title: sayer.serviceName(value) })),
            required: true,
          },
          { name: "date", word: "warranty-day", reads: "day", required: true },
          { name: "note", word: "warranty-note", reads: "long" },
        ]}
      />
      <SaidForm
        job={job}
        kind="cover-started"
        title="warranty-start"
        enter="after-enter"
        fields={[
          {
            name: "rule",
            word: "warranty-start-which",
            choices: (["invoice paid", "date of sale"] as const).map((value) => ({ value, title: say(`warranty-start-${value}`) })),
            required: true,
          },
          { ...part },
          { name: "day", word: "warranty-day", reads: "day", required: true },
          { name: "paper", word: "warranty-paper" },
        ]}
      />
      <SaidForm
        job={job}
        kind="part-registered"
        title="warranty-registered"
        enter="after-enter"
        fields={[
          { ...part, required: true },
          { name: "day", word: "warranty-day", reads: "day", required: true },
          { name: "number", word: "warranty-number" },
        ]}
      />
      <SaidForm
        job={job}
        kind="part-replaced"
        title="warranty-replaced"
        enter="after-enter"
        fields={[
          { ...part, required: true },
          {
            name: "why",
            word: "warranty-replaced-why",
            choices: (["under warranty", "sold"] as const).map((value) => ({ value, title: say(`warranty-replaced-${value}`) })),
            required: true,
          },
          { name: "day", word: "warranty-day", reads: "day", required: true },
          { name: "serial", word: "warranty-serial" },
        ]}
      />
      <SaidForm
        job={job}
        kind="part-kept"
        title="warranty-kept"
        enter="after-enter"
        fields={[
          { name: "part", word: "warranty-part", required: true },
          { name: "why", word: "warranty-kept-why", required: true },
        ]}
      />
      <SaidForm
        job={job}
        kind="new-owner"
        title="warranty-owner"
        enter="after-enter"
        fields={[
          { name: "name", word: "warranty-owner-name", who: true },
          { name: "contact", word: "warranty-owner-contact", who: true },
          { name: "day", word: "warranty-owner-day", reads: "day", required: true },
        ]}
      />
    </>
  );
}
