/** Whom a message is from or for. */
export interface Mailbox {
  readonly name?: string;
  readonly address: string;
}

/** A message of mail with all that is in it; nothing of it is of the moment of making. */
export interface Message {
  /** Absent: whoever opens the message sends it from his own. */
  readonly from?: Mailbox;
  readonly to: Mailbox;
  readonly subject: string;
  readonly text: string;
  readonly language: "en" | "es";
  /** Its date, milliseconds. */
  readonly at: number;
  /** Letters and digits that name it. */
  readonly id: string;
  /** A calendar file (RFC 5545) that goes with it. */
  readonly calendar?: string;
}

/** `POST /message`: the message as a file, sent too where `send` says so. */
export interface MessageAsked {
  readonly message: Message;
  readonly send: boolean;
}

export interface MessageAnswer {
  /** RFC 5322. */
  readonly eml: string;
  readonly sent: boolean;
}

/** `GET /message`: whether a mail service is named in the environment. */
export interface MessageService {
  readonly sends: boolean;
}
