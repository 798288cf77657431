import type { Sayer } from "../../record/index.ts";
import { Link } from "./link.tsx";
import type { PictureShown } from "./pictures.ts";
import { jobPath } from "./place.ts";
import { Sign } from "./sign.tsx";
import { useSpeaking } from "./speaking.ts";

interface PictureProps {
  readonly picture: PictureShown;
  readonly sayer: Sayer;
  readonly originals: boolean;
  readonly job: string;
}

/** One picture with its caption; in place of a photo that cannot be shown, why. */
export function PictureView({ picture, sayer, originals, job }: PictureProps) {
  const { say } = useSpeaking();
  const { entry, title, caption, photo, address, unseen, at, looked, earlier } = picture;
  return (
    <figure class="picture">
      {unseen === undefined ? (
        <img class="mount" src={address} alt={caption === "" ? title : `${title}. ${caption}`} loading="lazy" decoding="async" />
      ) : (
        <div class="mount missing">
          <Sign shape="missing" />
          <p>{say(unseen)}</p>
        </div>
      )}
      <figcaption>
        <p class="name">{title}</p>
        {caption !== "" && <p>{caption}</p>}
        <p>
          {say("picture-made", { time: sayer.moment(at) })}
          {earlier && `; ${say("before-rework")}`}
        </p>
        <p>{say(looked === undefined ? "picture-nobody-looked" : `picture-${looked}`)}</p>
        {originals && unseen !== "picture-not-here" && (
          <a class="target" href={`/api/photos/${photo}/original`} target="_blank" rel="noreferrer">
            {say("picture-original")}
          </a>
        )}
        {originals && unseen === undefined && <Link to={jobPath(job, "beside", entry)}>{say("beside-open")}</Link>}
        {originals && unseen === undefined && <Link to={jobPath(job, "blurring", photo)}>{say("blurring-open")}</Link>}
      </figcaption>
    </figure>
  );
}
