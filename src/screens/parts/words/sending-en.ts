/** The crew's phone: what is kept, what is sent, who enters. */
export const sendingEn = {
  "newer-app": "A newer version lies ready.",
  "take-newer": "Take it now",
  "signed-out-kept": "Signed out. Everything is kept on this phone; ask the office for a new link and it goes on by itself.",
} as const;
