import { lazy, Suspense } from "preact/compat";
import { Link } from "../parts/link.tsx";
import { ACCESS_PATH } from "../parts/place.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { PhoneFrame } from "./frame.tsx";
import { useKeep } from "./keep/index.ts";
import { People } from "./who.tsx";

const StudyLinks = lazy(() => import("./study/index.tsx").then(({ studyLinks }) => studyLinks()));
const LensLink = lazy(() => import("./measure/index.tsx").then(({ lensLink }) => lensLink()));

/** Who enters on this phone today: once a day, and whenever the phone goes to another hand. */
export function PersonPage() {
  const { say, go, signOut } = useSpeaking();
  const { state } = useKeep();
  const waiting = [...state.entries, ...state.photos].some(({ standing }) => standing === "not sent");
  return (
    <PhoneFrame title={say("phone-who")} back={{ to: "/", title: say("open-in-the-ground") }}>
      <People onChosen={() => go("/")} />
      <Suspense fallback={null}>
        <StudyLinks />
        <LensLink />
      </Suspense>
      <p>
        <Link to={ACCESS_PATH}>{say("phone-devices")}</Link>
      </p>
      <section class="sign-out">
        {waiting && <p>{say("unsent-sign-out-waits")}</p>}
        <button type="button" class="target" onClick={signOut}>
          {say("sign-out")}
        </button>
      </section>
    </PhoneFrame>
  );
}
