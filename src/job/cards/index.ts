export { type CardLayout, cardCodeNames, cardLayout } from "./card-layout.ts";
export { cardSteps } from "./card-steps.ts";
export { type CardFor, type CardJob, type CardRead, cardJobs, cardText, readCard } from "./card-text.ts";
