/** One person's readings of one step of one job, counted. */
export interface GroupCarried {
  readonly step: string;
  readonly person: string;
  readonly readings: number;
  /** Of them, those that followed another place on the same phone, and within seconds. */
  readonly followed: number;
  readonly within: number;
  readonly afterCovering: number;
  /** With a nominal; on it; as many as their doubt lets stand there at most. */
  readonly nominal: number;
  readonly onNominal: number;
  readonly most: number;
}

/** The places around one rim, as one set-up read them. */
export interface RimCarried {
  readonly step: string;
  readonly person: string;
  /** Fixed unit of their kind. */
  readonly values: readonly number[];
  readonly typed: string;
  /** The most often that all of them fall on the first one's mark. */
  readonly chance: number;
}

export interface PictureCarried {
  readonly step: string;
  readonly person: string;
  /** SHA-256 of the bytes. */
  readonly photo: string;
  /** 16 hex digits. */
  readonly likeness?: string;
}

/** What one job's readings and pictures come to, where it is asked whether they carry anything. */
export interface Carried {
  readonly groups: readonly GroupCarried[];
  readonly rims: readonly RimCarried[];
  readonly pictures: readonly PictureCarried[];
}
