/**
 * The version of the rules by which ledgers become findings. Raised only when a frozen ledger in the tests gets another
 * finding than it had; a sealed record keeps the version that it was sealed under.
 */
export const RULES = 1;
