import { CUBIC_METRES_PER_GALLON } from "../units/index.ts";

/** Flow in SI is m³/s. One US gallon a minute is 231 in³ / 60 s = 6.30901964e-5 m³/s, exactly by definition. */
export const gallonsPerMinute = (n: number): number => (n * CUBIC_METRES_PER_GALLON) / 60;
export const toGallonsPerMinute = (flow: number): number => (flow * 60) / CUBIC_METRES_PER_GALLON;
/** How kit cards state small pumps. */
export const gallonsPerHour = (n: number): number => gallonsPerMinute(n / 60);
export const toGallonsPerHour = (flow: number): number => toGallonsPerMinute(flow) * 60;
export const litresPerMinute = (n: number): number => n / 60_000;
