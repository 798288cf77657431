import { addPerson } from "./add-person.ts";
import { answerPerson } from "./answer-person.ts";
import { answerQuestion } from "./answer-question.ts";
import { appendEntries } from "./append-entries.ts";
import { askForPerson } from "./ask-for-person.ts";
import { askPasskey } from "./ask-passkey.ts";
import { askSignIn } from "./ask-sign-in.ts";
import { blurPhoto } from "./blur-photo.ts";
import { checkDesign } from "./check-design.ts";
import { decide } from "./decide.ts";
import { endNamedSession } from "./end-named-session.ts";
import { endRelease } from "./end-release.ts";
import { endSession } from "./end-session.ts";
import { enterAfterWork } from "./enter-after-work.ts";
import { enterCompanyFact } from "./enter-company-fact.ts";
import { foundCompany } from "./found-company.ts";
import { getAccess } from "./get-access.ts";
import { getCompany } from "./get-company.ts";
import { getCompanyKeys } from "./get-company-keys.ts";
import { getCompanyLedger } from "./get-company-ledger.ts";
import { getHealth } from "./get-health.ts";
import { getJob } from "./get-job.ts";
import { getJobArchive } from "./get-job-archive.ts";
import { getJobCalendar } from "./get-job-calendar.ts";
import { getJobCardsPdf } from "./get-job-cards-pdf.ts";
import { getJobDesign } from "./get-job-design.ts";
import { getJobDesignPdf } from "./get-job-design-pdf.ts";
import { getJobLedger } from "./get-job-ledger.ts";
import { getJobPictures } from "./get-job-pictures.ts";
import { getKeeping } from "./get-keeping.ts";
import { getMail } from "./get-mail.ts";
import { getMark } from "./get-mark.ts";
import { getMetrics } from "./get-metrics.ts";
import { describing } from "./get-open-api.ts";
import { getOthersAsked } from "./get-others-asked.ts";
import { getPaper } from "./get-paper.ts";
import { getPerson } from "./get-person.ts";
import { getPersonsAccess } from "./get-persons-access.ts";
import { getPersonsData } from "./get-persons-data.ts";
import { getPhoto } from "./get-photo.ts";
import { getPhotoOriginal } from "./get-photo-original.ts";
import { getPhotoPrint } from "./get-photo-print.ts";
import { getPhotoScreen } from "./get-photo-screen.ts";
import { getQuestionTable } from "./get-question-table.ts";
import { getReady } from "./get-ready.ts";
import { getRecordLedger } from "./get-record-ledger.ts";
import { getRecordModel } from "./get-record-model.ts";
import { getRecordPdf } from "./get-record-pdf.ts";
import { getReleased } from "./get-released.ts";
import { getReleasedPdf } from "./get-released-pdf.ts";
import { getReleasedPicture } from "./get-released-picture.ts";
import { getReport } from "./get-report.ts";
import { getSession } from "./get-session.ts";
import { tables } from "./get-table.ts";
import { getVersion } from "./get-version.ts";
import { holdPerson } from "./hold-person.ts";
import { importOldWarranties } from "./import-old-warranties.ts";
import { issueRecord } from "./issue-record.ts";
import { join } from "./join.ts";
import { listAboutToBeBuried } from "./list-about-to-be-buried.ts";
import { listCallbacks } from "./list-callbacks.ts";
import { listCompanyFacts } from "./list-company-facts.ts";
import { listJobSeenBefore } from "./list-job-seen-before.ts";
import { listJobs } from "./list-jobs.ts";
import { listJoinCodes } from "./list-join-codes.ts";
import { listLaidAside } from "./list-laid-aside.ts";
import { listOthersLinks } from "./list-others-links.ts";
import { listPeople } from "./list-people.ts";
import { listPersons } from "./list-persons.ts";
import { listQuestions } from "./list-questions.ts";
import { listRecords } from "./list-records.ts";
import { listReleases } from "./list-releases.ts";
import { listSeenBefore } from "./list-seen-before.ts";
import { listSites } from "./list-sites.ts";
import { versionLists } from "./list-versions.ts";
import { listWarranties } from "./list-warranties.ts";
import { locateSite } from "./locate-site.ts";
import { lookAtPicture } from "./look-at-picture.ts";
import { makeJoinCode } from "./make-join-code.ts";
import { makeLink } from "./make-link.ts";
import { makeMessage } from "./make-message.ts";
import { makeOthersLink } from "./make-others-link.ts";
import { makePasskey } from "./make-passkey.ts";
import { makeSealKey } from "./make-seal-key.ts";
import { moveCompany } from "./move-company.ts";
import { moveEntries } from "./move-entries.ts";
import { moveToJob } from "./move-to-job.ts";
import { moveToVersion } from "./move-to-version.ts";
import { openJob } from "./open-job.ts";
import { openJobTyped } from "./open-job-typed.ts";
import { passkeySignIn } from "./passkey-sign-in.ts";
import { putMark } from "./put-mark.ts";
import { putOthersFile } from "./put-others-file.ts";
import { putPaper } from "./put-paper.ts";
import { putPhoto } from "./put-photo.ts";
import { readArchive } from "./read-archive.ts";
import { rebuildJob, rewriteJob } from "./rebuild-job.ts";
import { receivePicture } from "./receive-picture.ts";
import { recoverOwner } from "./recover-owner.ts";
import { recoverPerson } from "./recover-person.ts";
import { releaseRecord } from "./release-record.ts";
import { removePerson } from "./remove-person.ts";
import type { Route } from "./route.ts";
import { setInstrument } from "./set-instrument.ts";
import { setKitCard } from "./set-kit-card.ts";
import { setOldWarranty } from "./set-old-warranty.ts";
import { setParticulars } from "./set-particulars.ts";
import { setSettings } from "./set-settings.ts";
import { setSheet } from "./set-sheet.ts";
import { setSite } from "./set-site.ts";
import { signIn } from "./sign-in.ts";
import { takeTable } from "./take-table.ts";
import { tryLaidAside } from "./try-laid-aside.ts";
import { useOthersLink } from "./use-others-link.ts";
import { withdrawJoinCode } from "./withdraw-join-code.ts";
import { withdrawOthersLink } from "./withdraw-others-link.ts";
import { withdrawPasskey } from "./withdraw-passkey.ts";
import { withdrawSessions } from "./withdraw-sessions.ts";

export type { Route } from "./route.ts";

const working: readonly Route[] = [
  foundCompany,
  signIn,
  askSignIn,
  passkeySignIn,
  join,
  getSession,
  endSession,
  getAccess,
  endNamedSession,
  askPasskey,
  makePasskey,
  withdrawPasskey,
  listPeople,
  addPerson,
  makeLink,
  makeJoinCode,
  listJoinCodes,
  withdrawJoinCode,
  getPersonsAccess,
  recoverPerson,
  recoverOwner,
  moveCompany,
  withdrawSessions,
  removePerson,
  getCompany,
  getVersion,
  setSettings,
  putMark,
  getMark,
  setSheet,
  setKitCard,
  ...versionLists,
  setInstrument,
  getCompanyLedger,
  getCompanyKeys,
  makeSealKey,
  openJob,
  openJobTyped,
  setParticulars,
  takeTable,
  ...tables,
  getJobArchive,
  readArchive,
  listSites,
  setSite,
  listJobs,
  listAboutToBeBuried,
  appendEntries,
  getJob,
  getJobDesign,
  getJobCardsPdf,
  getJobDesignPdf,
  checkDesign,
  getJobLedger,
  moveEntries,
  moveToJob,
  moveToVersion,
  rebuildJob,
  rewriteJob,
  putPhoto,
  getPhoto,
  getPhotoOriginal,
  getPhotoScreen,
  getPhotoPrint,
  listSeenBefore,
  listJobSeenBefore,
  listLaidAside,
  tryLaidAside,
  getJobPictures,
  lookAtPicture,
  decide,
  makeOthersLink,
  listOthersLinks,
  withdrawOthersLink,
  getOthersAsked,
  putOthersFile,
  useOthersLink,
  getPaper,
  putPaper,
  receivePicture,
  locateSite,
  enterAfterWork,
  getJobCalendar,
  makeMessage,
  getMail,
  listWarranties,
  importOldWarranties,
  setOldWarranty,
  listCallbacks,
  enterCompanyFact,
  listCompanyFacts,
  listQuestions,
  answerQuestion,
  getQuestionTable,
  getReport,
  getKeeping,
  listPersons,
  askForPerson,
  getPerson,
  getPersonsData,
  holdPerson,
  answerPerson,
  blurPhoto,
  issueRecord,
  listRecords,
  getRecordPdf,
  getRecordModel,
  getRecordLedger,
  releaseRecord,
  listReleases,
  endRelease,
  getReleased,
  getReleasedPdf,
  getReleasedPicture,
  getHealth,
  getReady,
  getMetrics,
];

/** Every route of the edge. The router, the OpenAPI document and the test of doors are made from this list. */
export const routes: readonly Route[] = [...working, describing(working)];
