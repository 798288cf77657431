import { addPerson } from "./add-person.ts";
import { appendEntries } from "./append-entries.ts";
import { blurPhoto } from "./blur-photo.ts";
import { checkDesign } from "./check-design.ts";
import { endSession } from "./end-session.ts";
import { foundCompany } from "./found-company.ts";
import { getCompany } from "./get-company.ts";
import { getCompanyLedger } from "./get-company-ledger.ts";
import { getHealth } from "./get-health.ts";
import { getJob } from "./get-job.ts";
import { getJobDesign } from "./get-job-design.ts";
import { getJobDesignPdf } from "./get-job-design-pdf.ts";
import { getJobLedger } from "./get-job-ledger.ts";
import { getJobPictures } from "./get-job-pictures.ts";
import { describing } from "./get-open-api.ts";
import { getPhoto } from "./get-photo.ts";
import { getPhotoOriginal } from "./get-photo-original.ts";
import { getPhotoPrint } from "./get-photo-print.ts";
import { getPhotoScreen } from "./get-photo-screen.ts";
import { getReady } from "./get-ready.ts";
import { getRecordLedger } from "./get-record-ledger.ts";
import { getRecordModel } from "./get-record-model.ts";
import { getRecordPdf } from "./get-record-pdf.ts";
import { getSession } from "./get-session.ts";
import { getVersion } from "./get-version.ts";
import { issueRecord } from "./issue-record.ts";
import { listJobSeenBefore } from "./list-job-seen-before.ts";
import { listJobs } from "./list-jobs.ts";
import { listPeople } from "./list-people.ts";
import { listRecords } from "./list-records.ts";
import { listSeenBefore } from "./list-seen-before.ts";
import { locateSite } from "./locate-site.ts";
import { lookAtPicture } from "./look-at-picture.ts";
import { makeLink } from "./make-link.ts";
import { moveEntries } from "./move-entries.ts";
import { openJob } from "./open-job.ts";
import { putPhoto } from "./put-photo.ts";
import { rebuildJob } from "./rebuild-job.ts";
import { receivePicture } from "./receive-picture.ts";
import { removePerson } from "./remove-person.ts";
import type { Route } from "./route.ts";
import { setInstrument } from "./set-instrument.ts";
import { setKitCard } from "./set-kit-card.ts";
import { setSettings } from "./set-settings.ts";
import { setSheet } from "./set-sheet.ts";
import { signIn } from "./sign-in.ts";
import { withdrawSessions } from "./withdraw-sessions.ts";

export type { Route } from "./route.ts";

const working: readonly Route[] = [
  foundCompany,
  signIn,
  getSession,
  endSession,
  listPeople,
  addPerson,
  makeLink,
  withdrawSessions,
  removePerson,
  getCompany,
  getVersion,
  setSettings,
  setSheet,
  setKitCard,
  setInstrument,
  getCompanyLedger,
  openJob,
  listJobs,
  appendEntries,
  getJob,
  getJobDesign,
  getJobDesignPdf,
  checkDesign,
  getJobLedger,
  moveEntries,
  rebuildJob,
  putPhoto,
  getPhoto,
  getPhotoOriginal,
  getPhotoScreen,
  getPhotoPrint,
  listSeenBefore,
  listJobSeenBefore,
  getJobPictures,
  lookAtPicture,
  receivePicture,
  locateSite,
  blurPhoto,
  issueRecord,
  listRecords,
  getRecordPdf,
  getRecordModel,
  getRecordLedger,
  getHealth,
  getReady,
];

/** Every route of the edge. The router, the OpenAPI document and the test of doors are made from this list. */
export const routes: readonly Route[] = [...working, describing(working)];
