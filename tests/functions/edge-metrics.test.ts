import { expect, inject, it } from "vitest";
import { Client, newCompany } from "../helpers/edge.ts";

it("the operator's numbers count what was answered, end as OpenMetrics asks, and name nobody", async () => {
  const edge = inject("edge");
  const company = await newCompany(edge, inject("operatorKey"));
  const asked = async () => {
    const answer = await new Client(edge).ask("GET", "/api/metrics", {
      headers: { authorization: `Operator ${inject("operatorKey")}` },
    });
    expect(answer.status).toBe(200);
    expect(answer.headers.get("content-type")).toContain("application/openmetrics-text");
    return new TextDecoder().decode(answer.bytes);
  };
  const counted = (text: string): number =>
    Number(/^edge_answers_total\{route="GET \/api\/jobs",status="2xx"\} (\d+)$/m.exec(text)?.[1] ?? 0);
  const before = await asked();
  for (let k = 0; k < 3; k += 1) expect((await company.office.get("/api/jobs")).status).toBe(200);
  const after = await asked();
  expect(counted(after) - counted(before)).toBe(3);
  expect(after.endsWith("\n# EOF\n")).toBe(true);
  expect(after).toMatch(/^part_up\{part="database"\} 1$/m);
  expect(after).not.toContain(company.company);
  expect(after).not.toMatch(/Stillwater|Robin|Alder|Birch/);
});
