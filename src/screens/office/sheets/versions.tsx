import { type ComponentType, Suspense } from "preact/compat";
import { useState } from "preact/hooks";
import type { People, VersionList } from "../../../wire/index.ts";
import { Link } from "../../parts/link.tsx";
import { momentHere, useSpeaking } from "../../parts/speaking.ts";
import { versionContent } from "../opening-sheet.ts";

/** What changed between two versions of a thing, read when somebody asks. */
type Between<T> = ComponentType<{ readonly before: T; readonly after: T }>;

function ChangedBetween<T>({
  before,
  after,
  between: View,
}: {
  readonly before: string;
  readonly after: string;
  readonly between: Between<T>;
}) {
  const { say } = useSpeaking();
  const [read, setRead] = useState<readonly [T, T] | "away">();
  const show = (): void =>
    void Promise.all([versionContent<T>(before), versionContent<T>(after)]).then(([was, is]) =>
      setRead(was === undefined || is === undefined ? "away" : [was, is]),
    );
  return (
    <details onToggle={(event) => event.currentTarget.open && read === undefined && show()}>
      <summary class="target">{say("versions-show")}</summary>
      {read === "away" && <p>{say("versions-away")}</p>}
      {read !== undefined && read !== "away" && (
        <Suspense fallback={null}>
          <View before={read[0]} after={read[1]} />
        </Suspense>
      )}
    </details>
  );
}

/** Every version of one thing, newest first, with what changed from the one before. */
export function Versions<T>({
  list,
  people,
  between,
  read,
}: {
  readonly list: VersionList;
  readonly people: People["people"];
  readonly between: Between<T>;
  /** Where one version can be read whole. */
  readonly read?: (digest: string) => string;
}) {
  const { say, session } = useSpeaking();
  const nameOf = (person: string): string => people.find((one) => one.person === person)?.name ?? say("someone");
  return (
    <ol class="versions">
      {list.versions.map(({ number, digest, at, person }, i) => {
        const earlier = list.versions[i + 1];
        return (
          <li key={digest}>
            <p>{say("versions-one", { number, time: momentHere(at, session.language), name: nameOf(person) })}</p>
            {read !== undefined && (
              <p>
                <Link to={read(digest)}>{say("versions-read")}</Link>
              </p>
            )}
            {earlier === undefined ? (
              <p>{say("versions-first")}</p>
            ) : (
              <ChangedBetween before={earlier.digest} after={digest} between={between} />
            )}
          </li>
        );
      })}
    </ol>
  );
}
