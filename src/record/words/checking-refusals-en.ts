import type { CheckingCode } from "../../outcome/index.ts";

/** What checking a record refuses or finds, in English: what is wrong and how to fix it, as the other refusals. */
export const checkingRefusalsEn: Readonly<Record<CheckingCode, string>> = {
  "pdf-not-read": "This file cannot be read as a PDF. Take the record as it was handed over, not a picture or a print of it.",
  "seal-missing":
    "The file has no seal inside. Either it is no sealed record, or a program that saved it has dropped what was attached; ask for the file as it was issued.",
  "seal-not-understood":
    "The seal is not written as a seal is, at {place}. It was changed, or made by a newer program; ask for the file as it was issued.",
  "seal-signature": "The signature does not fit the seal: one of them was changed. Ask for the file as it was issued.",
  "seal-company": "The key {key} is in the list of {name}, but the seal names another company. Ask both whose record it is.",
  "seal-key-retired": "The key {key} was retired before the record says that it was sealed. Ask the company whether the record is its own.",
  "seal-file-missing": "The attached file {file} is gone. Ask for the file as it was issued.",
  "seal-file-changed": "The attached file {file} is not what was sealed. What of it was changed stands below, where it can be told.",
  "seal-file-not-json": "The text of {file} is broken here, so that it cannot be read. Ask for the file as it was issued.",
  "seal-file-unexpected": "The file {file} was attached later: the seal does not name it. Do not take it for a part of the record.",
  "seal-differs": "The seal and the attached files do not say the same about {what}. Ask the company for its own copy.",
  "seal-text-not-shown": "The record's data say “{text}” and no page shows it. Compare the page with the company's own copy.",
  "seal-pages": "The seal names {was} pages and the file has {now} of them. Ask for the file as it was issued.",
  "seal-page-words": "Page {page} was sealed as “{was}” and now reads “{now}”. Go by what was sealed, and ask who changed it.",
  "seal-picture-missing":
    "The picture of the photo {photo} is gone from the file, or is not the one that was printed. Ask for the file as it was issued.",
  "seal-picture-unknown": "The file holds a picture that was not printed in it. Do not take it for a part of the record.",
  "seal-finding":
    "The attached entries do not give what was sealed for {title}. Go by the entries that are unchanged, and ask the company.",
  "seal-not-judged": "The findings could not be worked out again: what they rest on cannot be read. Ask for the file as it was issued.",
  "rules-unknown":
    "The rules {version}, by which this record was judged, are not here. Take a newer version of this program to work its findings out again.",
  "rules-differ":
    "The file of rules {version} here is not the one by which this record was judged. Take the one that came with the program.",
  "key-list-shape": "This is no list of keys that says whose they are, at {place}. Take the list from the address that the company gives.",
};
