/** Sentences of what is measured of flow, evaporation and room for rain, in English. `{…}` are figures. */
export const waterEn = {
  "flow.as-expected":
    "{title}: measured {value} ± {measuredDoubtFlow}; the design gives {expectedFlow} ± {expectedDoubtFlow}: as expected, within the doubt of the two.",
  "flow.less":
    "{title}: measured {value} ± {measuredDoubtFlow}; the design gives {expectedFlow} ± {expectedDoubtFlow}: less by {byFlow}, and the two are doubtful by {doubt} only.",
  "flow.more":
    "{title}: measured {value} ± {measuredDoubtFlow}; the design gives {expectedFlow} ± {expectedDoubtFlow}: more by {byFlow}, and the two are doubtful by {doubt} only.",
  "flow.off-card":
    "{title}: measured {value} ± {measuredDoubtFlow}; the design gives {expectedFlow} ± {expectedDoubtFlow}: more by {byFlow}, and more than the last point of the pump's card. It is another pump than the card's, or the card is wrong.",
  "flow.bin-too-fast":
    "{title}: does not count, since the bin was full after {tookDuration}; it must take {leastDuration}. A bin of {enoughVolume} would do.",
  "flow.alone": "{title}: measured {measuredFlow} ± {doubtFlow}. Nothing to compare it with until this is known: {unknown}.",
  "flow.several-crossings":
    "{title}: measured {measuredFlow} ± {doubtFlow}. By its card the pump can work at several flows on this pipe, so none is expected.",
  "flow.on-a-vertical-piece":
    "{title}: measured {measuredFlow} ± {doubtFlow}. By its card the pump works where its curve drops straight, so no flow is expected.",
  "flow.curve-below-static-head":
    "{title}: measured {measuredFlow} ± {doubtFlow}. By its card the pump does not lift water to the lip at all: look at the card and at the static head.",
  "flow.beyond-the-last-point":
    "{title}: measured {measuredFlow} ± {doubtFlow}. The pump works beyond the last point of its card, so the flow is not expected to a figure.",
  "flow.before-the-first-point":
    "{title}: measured {measuredFlow} ± {doubtFlow}. The pump works before the first point of its card, so the flow is not expected to a figure.",
  "explains.are": "What would explain it, each alone and likeliest first: {causes}. To look by, no proof.",
  "explains.times": "{cause} ({times} times what is ordinary)",
  "explains.times-most": "{cause} ({times} times what is ordinary, or more)",
  "explains.none": "Nothing that is looked for here would explain it.",
  "explains.cannot": "No size of these would: {causes}.",
  "explains.static-head.more": "a static head of {wouldBe}, {off} more than designed",
  "explains.static-head.less": "a static head of {wouldBe}, {off} less than designed",
  "explains.blockage": "something in the line that takes {wouldBe} of head, as a bore of {share} of its own along the whole pipe would",
  "explains.air": "air, {wouldBe} of what the pump moves",
  "explains.wrong-curve": "a pump that gives {wouldBe} of the head on its card",
  "explains.C.less": "a rougher pipe, of C {wouldBe}, {off} less than assumed",
  "explains.C.more": "a smoother pipe, of C {wouldBe}, {off} more than assumed",
  "cause.static head": "static head",
  "cause.blockage": "blockage",
  "cause.air": "air",
  "cause.wrong curve": "another curve than the card's",
  "cause.C": "the pipe's C",
  "leak.weather-odd": "{title}: does not count, since the weather typed for it does not hold together. Look at its figures once more.",
  "leak.no-evaporation":
    "{title}: without a control bucket it waits for the weather of the test ({missing}), or for a figure of the design: {unknown}.",
  "leak.area-unknown": "{title}: what evaporated from falls and pools cannot be worked out until this is known: {unknown}.",
  "leak.site-unknown": "{title}: what evaporated cannot be worked out from the weather until this is known: {unknown}.",
  "rain.within":
    "{title}: room for {value} ± {doubt} of rain on the lined area; a day's rain by the design is {perDay}: within. At that rain, and nothing drying, it overflows after {overflowDuration}.",
  "rain.outside":
    "{title}: room for {value} ± {doubt} of rain on the lined area; a day's rain by the design is {perDay}: outside by {by}. At that rain, and nothing drying, it overflows after {overflowDuration}.",
  "rain.too-close":
    "{title}: room for {value} ± {doubt} of rain on the lined area; a day's rain by the design is {perDay}: too close to call. At that rain, and nothing drying, it overflows after {overflowDuration}.",
  "tried.most": "Most of the doubt: {sources}.",
  "source.resolution": "the marks that were read",
  "source.placing": "what the reading rests on",
  "source.receiver": "the receiver",
  "source.slope": "the laser's slope",
  "source.line": "the level line",
  "source.vial": "the spirit level",
  "source.permitted-error": "how far off the instrument may be",
  "source.watch": "the hand on the watch",
  "source.bin/mark": "the bin's mark",
  "source.clocks": "the clocks",
  "source.limit": "the limit, which comes from the design",
  "source.design:limit": "the limit, which comes from the design",
  "source.design:water-per-depth": "the basin's water per depth",
  "source.weather:highest": "the day's highest temperature",
  "source.weather:lowest": "the day's lowest temperature",
  "source.weather:humidity": "the air's humidity",
  "source.weather:wind": "the wind",
  "source.weather:sunshine": "the hours of sun",
  "source.weather:radiation": "the sun's radiation",
  "source.own:part-of-day": "which part of the day it was",
  "source.factor:open-water-coefficient": "what the evaporation formula is worth here",
} as const;

export type WaterSentence = keyof typeof waterEn;
