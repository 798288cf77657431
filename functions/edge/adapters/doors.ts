/**
 * Says that a key leads to the company whose rows these are, before the row itself is written: a key that leads to a company which does
 * not have it harms nobody, and a row that nobody finds would keep somebody out. False where the key leads to another company already.
 */
export type NoteDoor = (key: string) => Promise<boolean>;
