/** Sentences of the owner's questions in English: the decision that each serves, what it says, what stands out, what is too few. `{…}` are figures. */
export const answersEn = {
  "first-time-right.decides":
    "Which step to teach this month: the one that is done over most often; another step would take its place if its share right fell below this one's by more than the intervals allow.",
  "tape-study.decides":
    "Whether the stated doubt of a reading stands, and whether to look at how somebody holds the rod; a study with another spread would change the limits that can be decided.",
  "instruments.decides":
    "Which instrument to take out of use and which jobs to look at again; a bad check since its last good one changes that.",
  "readings-that-carry-nothing.decides":
    "Which step to ask for differently, because what is entered there tells nothing; readings that scatter as their doubt must would change that.",
  "second-look.decides":
    "Whether the crews' readings can go on counting by themselves; differences larger than the stated doubt would change that.",
  "cost.decides":
    "Where the next hour goes, into care before or into repair after; the largest of the three costs decides, and another largest would change that.",
  "worth-of-holds.decides": "Which held item to drop from the tolerance sheet; one finding of it would keep it.",
  "came-back.decides":
    "How long a cover to give and which maker to change; a part that gives out as seldom as the others would change that.",
  "look-at-first.decides":
    "Which jobs to see first on the return visit; another job lies first as soon as something of it lies nearer to its limit.",
  "foremen.decides": "Whom to send along with whom; a share right that chance alone could bring would change that.",
  "taught.decides":
    "Whether to teach a step in the same way again; an interval of the difference that holds nothing but gain or loss decides.",
  "over-time.decides": "When to have an instrument set again; deviations that lie about their mean without drift would change that.",
  "changed-limit.decides": "Whether to change a limit; what it would have caught, and what came back under it, decides.",
  "sampling.decides": "How many to measure again; the number that could still be off decides.",

  "counted.jobs": "Jobs: {jobs}.",
  "counted.read-on":
    "Counted to {until} from the ledgers as they stood on {read}: a verdict that an entry between these days changed stands here as it is now.",
  "counted.readings-pictures": "Readings: {readings}; pictures: {pictures}.",
  "too-few.jobs": "Too few to tell: {jobs} {jobs|job|jobs}; from {wanted} on something is said.",
  "too-few.study": "No tape study yet: the doubt of a reading is the program's own figure.",
  "too-few.checks": "No check of an instrument has been entered.",
  "too-few.pairs": "Too few to tell: measured again: {pairs}; from {wanted} on something is said.",
  "too-few.foremen": "Too few to tell: {foremen} {foremen|foreman|foremen} with enough coverings; from {wanted} on they are compared.",
  "too-few.taught":
    "Too few to tell: of what was taught (times: {taught}) nothing has {wanted} {wanted|job|jobs} before it and {wanted} after.",
  "too-few.points": "Too few to tell: no instrument has {wanted} {wanted|job|jobs} with deviations from their design.",

  "first-time-right.all": "Right the first time: {right} of {n} {n|step of a job|steps of jobs} ({share} %).",
  "first-time-right.which": "A step stands out: the first lines of the table.",
  "first-time-right.none": "{steps|The one step|None of the {steps} steps} is done over more often than chance alone lets one seem to.",
  "first-time-right.worse": "{about}: right the first time in {share} % of {n}, all others in {others} %.",
  "first-time-right.counted": "Asked: {asked}; too close to call and counted apart: {tooClose}; asked and nothing entered: {notEntered}.",

  "tape-study.newest":
    "By the newest study a reading lies within ± {halfWidth:length} (half-width of a rectangle) with people and repeats together.",
  "tape-study.undecided": "Limits that can no longer be decided with it: {limits}.",
  "tape-study.decided": "Every limit can still be decided with it.",
  "tape-study.differently": "{about} holds the rod differently: {offset:length} off the mean of all, more than repeats explain.",
  "tape-study.counted": "Studies: {studies}; complete: {complete}.",

  "instruments.some": "Of {checks} {checks|check|checks} {bad} showed an instrument off by more than is allowed.",
  "instruments.none": "Of {checks} {checks|check|checks} none showed an instrument off by more than is allowed.",
  "instruments.off":
    "{about} was found off: {readings} {readings|reading|readings} on {jobs} {jobs|job|jobs} since its check before {readings|is|are} in doubt.",

  "carry.some": "What stands out: {signals}. It is worth a look and proves nothing: work can be set until the tape reads the nominal.",
  "carry.none": "Nothing stands out: readings scatter at least as their doubt must make them.",
  "carry.nominal":
    "{about}: {hits} of {n} {n|reading|readings} {hits|stands|stand} exactly on the nominal ({share} %); their doubt lets at most {most} %.",
  "carry.equal": "{about}: in {equal} of {n} {n|rim|rims} all places read the same; their doubt lets about {most}.",
  "carry.same-set": "{about}: sets of readings that stand the same on several jobs: {sets} (on jobs: {jobs}).",
  "carry.picture": "{about}: pictures that stand in more than one job: {pictures} (in jobs: {jobs}).",
  "carry.seconds": "{about}: {hits} of {n} {n|reading|readings} followed another place within seconds ({share} %).",
  "carry.after": "{about}: {hits} of {n} {n|reading|readings} {hits|was|were} entered after the covering ({share} %).",

  "second-look.all": "Measured again by someone else, blind: {pairs}; further apart than their doubt: {off}.",
  "second-look.differs":
    "{about}: {off} of {n} second {n|look|looks} {off|lies|lie} further apart than their doubt; together they scatter more than is stated.",

  "cost.line":
    "Prevention: times somebody was taught: {taught}. Checking: {phone} {phone|minute|minutes} of phone a job. Done over: {rework} {rework|minute|minutes} of rework and {callback} {callback|minute|minutes} of callbacks a job.",
  "cost.money": "Parts of {callbacks} {callbacks|callback|callbacks} less what was recovered: {parts}, in the company's currency.",

  "worth.all":
    "{holds} held {holds|item|items} said not yet {notYet} {notYet|time|times}, found something {found} {found|time|times}, and had coverings wait {hours} {hours|hour|hours}.",
  "worth.thin": "Held items that never find anything: {holds}.",
  "worth.keep": "No held item has been asked often enough to say that it never finds anything.",
  "worth.never": "{about}: asked on {asked} {asked|job|jobs} and never found anything; the others find something in {others} % of theirs.",

  "came-back.year": "Called back within 12 months: {share} % ({low} to {high} %), of jobs as far as they have been watched.",
  "came-back.parts": "A part gives out more than the others: the first lines of its table.",
  "came-back.no-part": "{parts|The one part gives|None of the {parts} parts gives} out more often than chance alone lets one seem to.",
  "came-back.part": "{about}: {failed} of {n} gave out, more and sooner than the others.",
  "came-back.winter": "{about}: {inWinter} of {failed} gave out in winter, which is {share} % of the time it was watched.",
  "came-back.counted": "Installed: {jobs}; called back: {events}; watched for a whole year: {whole}.",

  "look-at-first.some":
    "{jobs} {jobs|job has|jobs have} something near a limit or beyond it; the {listed|nearest is|{listed} nearest are} listed.",
  "look-at-first.none": "No installed job has anything near a limit.",

  "foremen.off": "Persons are compared only where the owner asks for it, on the page of this question.",
  "foremen.some": "Of {foremen} {foremen|foreman|foremen} some have more done over than chance alone lets them seem to.",
  "foremen.none":
    "{foremen|One foreman alone is compared with nobody|{foremen} foremen cannot be told apart by what they have done so far}.",
  "foremen.worse": "{about}: all coverings right the first time in {share} % of {n} {n|job|jobs}, the others in {others} %.",
  "foremen.counted": "Foremen: {foremen}; coverings: {coverings}.",

  "taught.all": "Taught: {taught}; with enough jobs before and after: {judged}.",
  "taught.changed": "Teaching changed something: what stands out says by how much.",
  "taught.same": "Before and after cannot be told apart yet: chance alone could bring the difference.",
  "taught.mark": "taught",
  "taught.differ": "{about}: right the first time in {before} % before and in {after} % after.",

  "over-time.breaks":
    "Points that break a rule (beyond 3 sigma; {run} in a row on one side): {breaks}. By chance alone {expected} would be expected.",
  "over-time.drifts": "{about} drifts: {slope:length} a year.",
  "over-time.checked": "checked",
  "over-time.capability": "Capability of what was measured with a studied instrument stands in its table, with intervals.",
  "over-time.no-study": "Capability is said after a tape study: before it nobody knows how much of the spread is the tape's.",

  "changed-limit.ask": "Choose a check and type what its limit would be.",
  "changed-limit.would":
    "Of {n} first {n|value|values} {now} lay beyond the limit of now; the other limit would have caught {asked} ({share} %), {more} of them new.",
  "changed-limit.back": "Confirmed callbacks among these jobs: {confirmed}; what came back stands in the second table.",
  "changed-limit.back-too-few":
    "What came back is not said: {confirmed} confirmed {confirmed|callback|callbacks}, from {wanted} on it would be. What lies outside is reworked before it can come back.",

  "sampling.could": "You measured {looked} of {lot} again and found {off} off; up to {most} could be off in all ({sure} %).",
  "sampling.none": "None of {lot} has been measured again: all of them could be off.",
  "sampling.not-a-sample": "These numbers are no sample: whole numbers, off at most those looked at, looked at at most all.",
} as const;

export type AnswerSentence = keyof typeof answersEn;
