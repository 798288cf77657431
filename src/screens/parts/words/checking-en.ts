/** The page on which a record is checked. */
export const checkingEn = {
  "checking-open": "Check a record",
  "checking-title": "Is this record as it was sealed?",
  "checking-how": "Choose the PDF as it was handed over. It is read on this device alone and sent nowhere; it works without signal.",
  "checking-pick": "The record's PDF",
  "checking-keys": "Lists of keys on this device: {names}",
  "checking-keys-none": "No list of keys is on this device: whose key sealed a record cannot be told.",
  "checking-keys-pick": "Add a list of keys that was handed over",
  "checking-reading": "Reading {file} …",
  "checking-not-here": "What reads a PDF is not on this device yet. Open this page once with signal.",
  "checking-later": "Everything is on this device: it works without signal from now on.",
} as const;
