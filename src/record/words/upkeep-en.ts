/**
 * How to run what was built, through the year, in English. `{…}` are figures of the job. Sentences without a figure are common
 * practice without a source, and the section says so.
 */
export const upkeepEn = {
  "title-running": "Running it",
  "title-without": "Without make-up water",
  "title-topping": "Topping up",
  "title-winter": "Winter",
  "title-spring": "Spring",
  "run-hand": "Power off before a hand goes into the water, every time.",
  "run-falls":
    "While it runs, the basin's water stands {drawDown} lower than at rest. That water ({transit}) is on its way and comes back when the pump stops.",
  "run-air":
    "When nothing comes back, the intake draws air {time} after it started from a full basin. Switch it off when the falls run thin or the pump sounds otherwise than before.",
  "run-intake": "Leaves and silt before the intake make the falls thin: look at it after storms and while leaves fall.",
  "run-lid": "Where a lid lies under stone there is water below it: nobody steps on it where the stone was lifted.",
  "run-dig": "Before anybody digs here: plan and distances in this record tell where pipe, joints and wires lie.",
  "days-last": "Without topping up its water lasts {days}.",
  "days-wait": "How long its water lasts without topping up is not worked out. That waits for: {needs}.",
  "days-left": "Usable water left while it runs: {left}.",
  "days-sun": "Reckoned with {depth} evaporating a day; hot, dry and windy days take more.",
  "top-valve": "The make-up valve tops it up. See each month that it shuts: one that runs all the time hides a leak.",
  "top-hand": "There is no make-up valve: it is topped up by hand.",
  "top-hose":
    "A hose ends above the water, so that nothing is drawn back into the drinking water. A fixed line has backflow prevention, fitted and tried by who may.",
  "top-note":
    "Write down day and amount. When it takes clearly more than on other days of such weather, switch it off and call whoever built it.",
  "winter-service": "{service}: by {day} each year, as the company's terms say.",
  "winter-leave": "{title}: {value}. An empty basin in wet ground floats.",
  "winter-pump":
    "Before hard frost the pump is taken out, or runs on through the winter, whichever its own paper says. Power off at the breaker first.",
  "winter-pipe": "Once the pump is out, the pipe is drained where that can be done.",
  "winter-valve": "The check valve keeps the water above it in the pipe: it is opened or drained as well.",
  "winter-ice": "Ice over the basin carries nobody, and children stay away from it.",
  "spring-service": "{service}: by {day} each year, as the company's terms say.",
  "spring-look": "Before it is filled look at the liner's edge, the lip, the lid and the stones: frost moves them.",
  "spring-cord": "Cord, plug and ground-fault protection are looked at by who may, before power comes on.",
  "spring-run": "Fill it, switch it on, and compare the water's level at rest and running with 'Start-up and leak tests'.",
  source:
    "Figures are worked out from this job's design. The other sentences are common practice without a published source: the parts' own papers, the company's terms and local code go first.",
} as const;

export type UpkeepText = keyof typeof upkeepEn;
