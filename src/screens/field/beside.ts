interface Policies {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
}

/** What goes to a script beside the page, and what it answers: the same number. */
export interface PhotoAsked {
  readonly number: number;
  readonly photo: Blob;
}
export interface Numbered {
  readonly number: number;
}

/** A script that has not answered by then has died of the picture. */
const PATIENCE_MS = 20_000;

interface Script<Answer extends Numbered> {
  readonly address: string;
  /** Name of the policy by which this one script may be started. */
  readonly policy: string;
  /** Instead of an answer where there is none. */
  readonly failed: (number: number) => Answer;
}

/** A script that looks at photos beside the page, one at a time. */
export class Beside<Answer extends Numbered> {
  readonly #script: Script<Answer>;
  #worker: Worker | undefined;
  #count = 0;
  #last: Promise<unknown> = Promise.resolve();

  constructor(script: Script<Answer>) {
    this.#script = script;
  }

  #start(): Worker {
    const { address, policy: name } = this.#script;
    const { trustedTypes } = globalThis as { trustedTypes?: Policies };
    const policy = trustedTypes?.createPolicy(name, { createScriptURL: () => address });
    return new Worker(policy?.createScriptURL(address) ?? address);
  }

  /** Starts it before there is a photo, so that the first one need not wait for it. */
  ready(): void {
    try {
      this.#worker ??= this.#start();
    } catch {
      // the photo itself will say that it cannot be looked at here
    }
  }

  /** Never rejects. */
  ask(photo: Blob): Promise<Answer> {
    const answer = this.#last.then(() => this.#one(photo));
    this.#last = answer;
    return answer;
  }

  #one(photo: Blob): Promise<Answer> {
    this.#count += 1;
    const number = this.#count;
    return new Promise((resolve) => {
      const end = (answer: Answer, dead: boolean): void => {
        clearTimeout(timer);
        this.#worker?.removeEventListener("message", hear);
        if (dead) {
          this.#worker?.terminate();
          this.#worker = undefined;
        }
        resolve(answer);
      };
      const fail = (): void => end(this.#script.failed(number), true);
      const hear = ({ data }: MessageEvent<Answer>): void => {
        if (data.number === number) end(data, false);
      };
      const timer = setTimeout(fail, PATIENCE_MS);
      try {
        this.#worker ??= this.#start();
        this.#worker.addEventListener("message", hear);
        this.#worker.onerror = fail;
        this.#worker.postMessage({ number, photo } satisfies PhotoAsked);
      } catch {
        fail();
      }
    });
  }
}
