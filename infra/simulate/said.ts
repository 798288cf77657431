import { MOST_CREWS } from "./resources.ts";

export const whole = (value: number): string => Math.round(value).toLocaleString("en-US");
export const many = (count: number, one: string): string => (count === 1 ? `one ${one}` : `${whole(count)} ${one}s`);
export const until = (crews: number | undefined): string => (crews === undefined ? `over ${whole(MOST_CREWS)}` : whole(crews));
