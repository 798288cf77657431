/** What speaks for and against a picture, in English. `{…}` are figures; see `say-pictures.ts` for what each prints. */
export const pictureFactsEn = {
  "photo.received-otherwise": "Received otherwise: {how}.",
  "photo.blurred-in-part": "A part of it is blurred in what is shown and printed; the original is kept.",
  "photo.card-step": "A card in the picture names this job and this step.",
  "photo.card-job": "A card in the picture names this job, for any step.",
  "photo.card-other-step": "The card in the picture names another step of this job: {step}. Does the picture belong there?",
  "photo.card-other-job": "The card in the picture names another job of the company. Does the picture belong there?",
  "photo.card-several": "Different cards stand in the picture: {count}. Which of them is meant?",
  "photo.card-tells-nothing": "A card in the picture is none that this company printed for a job, or was altered: it tells nothing.",
  "photo.app-moment": "The app took it in at {takenInstant} ± {takenDoubtDuration}.",
  "photo.no-app-moment": "The app noted no moment of its own; it was entered at {madeInstant}.",
  "photo.clock-off": "The phone's clock was {offDuration} off the office's; times are put right by that.",
  "photo.clock-not-compared": "The phone's clock has not been compared with the office's yet.",
  "photo.not-read-yet": "Its file has not been read yet.",
  "photo.camera-agrees": "The camera's clock, {wallClock}, agrees with the app's moment.",
  "photo.camera-earlier":
    "The camera's clock, {wallClock}, is {apartDuration} or more before the app's moment: an older picture, or a clock that is off.",
  "photo.camera-later":
    "The camera's clock, {wallClock}, is after it was entered at {enteredInstant}: that clock is off, and its time does not count.",
  "photo.zone-by-tag": "The camera's clock read {wallClock} at {offset} from UTC, by its own note.",
  "photo.zone-by-satellite": "The camera's clock read {wallClock} at {offset} from UTC, by the satellites' time.",
  "photo.zone-unknown": "The camera's clock read {wallClock}; in which zone it does not say. By the site's clock that is {firstInstant}.",
  "photo.zone-unknown-twice":
    "The camera's clock read {wallClock}; in which zone it does not say. By the site's clock that hour came twice: {firstInstant} and {secondInstant}.",
  "photo.satellite-differs": "The satellites' time in the file, {satelliteInstant}, is not that of the camera's clock, {wallClock}.",
  "photo.time-missing": "The camera noted no time, which is common.",
  "photo.time-zeros": "The camera's time is all zeros.",
  "photo.time-impossible": "The camera's time is no date that exists.",
  "photo.metadata-missing": "The file has no notes of its camera, which is common.",
  "photo.metadata-broken": "The camera's notes in the file cannot be read.",
  "photo.metadata-cut-off": "The file ends inside its camera's notes.",
  "photo.metadata-not-read": "The camera's notes could not be reached in this kind of file.",
  "photo.among-its-step": "Its time lies among the other entries of its step: {count}, from {firstInstant} to {lastInstant}.",
  "photo.apart-from-its-step":
    "Its time lies {apartDuration} away from the other entries of its step: {count}, from {firstInstant} to {lastInstant}.",
  "photo.before-covering":
    "Taken {takenInstant} ± {takenDoubtDuration}, before it was covered at {coveredInstant} ± {coveredDoubtDuration}.",
  "photo.after-covering":
    "By its times taken {takenInstant} ± {takenDoubtDuration}, after it was covered at {coveredInstant} ± {coveredDoubtDuration}. A clock may be off, or the covering was said too early.",
  "photo.covering-undecided": "It was covered at {coveredInstant} ± {coveredDoubtDuration}: whether the picture is older cannot be told.",
  "photo.covering-inferred":
    "Nobody said when it was covered, only that it was no later than {coveredInstant}: whether the picture is older cannot be told.",
  "photo.covering-received": "Received otherwise: it tells nothing about before or after it was covered.",
  "photo.app-place-at-site":
    "The phone was {awayDistance} ± {doubtDistance} from the middle of the site, which reaches {reachDistance}: at the site.",
  "photo.app-place-off-site":
    "The phone was {awayDistance} ± {doubtDistance} from the middle of the site, which reaches {reachDistance}: away from it.",
  "photo.app-place-undecided":
    "The phone was {awayDistance} ± {doubtDistance} from the middle of the site, which reaches {reachDistance}: too close to call.",
  "photo.app-place-old": "The phone's place was {ageDuration} old when the picture was taken.",
  "photo.camera-place-at-site":
    "The camera noted a place {awayDistance} ± {doubtDistance} from the middle of the site, which reaches {reachDistance}: at the site.",
  "photo.camera-place-off-site":
    "The camera noted a place {awayDistance} ± {doubtDistance} from the middle of the site, which reaches {reachDistance}: away from it.",
  "photo.camera-place-undecided":
    "The camera noted a place {awayDistance} ± {doubtDistance} from the middle of the site, which reaches {reachDistance}: too close to call.",
  "photo.places-agree": "The phone's place and the camera's lie {awayDistance} ± {doubtDistance} apart: they agree.",
  "photo.places-differ": "The phone's place and the camera's lie {awayDistance} ± {doubtDistance} apart: they do not agree.",
  "photo.site-not-located": "The site's own place has not been entered, so the picture's is compared with nothing.",
  "photo.no-app-place": "The phone gave no place.",
  "photo.place-taken-out": "Its place has been taken out of this edition.",
  "photo.position-missing": "The camera noted no place, which is common.",
  "photo.position-withheld": "The phone withheld the camera's place.",
  "photo.position-zero": "The camera's place is all zeros: no place.",
  "photo.position-broken": "The camera's place cannot be read.",
  "photo.position-unsigned": "The camera's place lacks north or south, east or west: no place.",
  "photo.same-photo": "The same photo is put to other pictures of this job: {count}.",
  "photo.cannot-be-read": "Its file cannot be read.",
  "photo.too-poor-on-phone": "The phone found it too poor to be read.",
  "photo.nobody-looked": "Nobody has looked at it yet.",
  "photo.looked-shows": "Looked at by {name}, {lookedInstant}: it shows it.",
  "photo.looked-cannot-tell": "Looked at by {name}, {lookedInstant}, who could not tell.",
  "photo.looked-does-not": "Looked at by {name}, {lookedInstant}: it does not show it.",
  "speaks.for": "speaks for it",
  "speaks.against": "speaks against it",
  "speaks.neither": "tells neither way",
} as const;

export type PictureSentence = keyof typeof pictureFactsEn;
