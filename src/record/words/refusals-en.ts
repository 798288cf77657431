import type { CheckingCode, RefusalCode } from "../../outcome/index.ts";

/**
 * What is wrong and how to fix it, in English. `{…}` are figures of the refusal, besides `{place}`. A figure that is absent prints
 * nothing, blank before it included, so every sentence must read without it.
 */
export const refusalsEn: Readonly<Record<Exclude<RefusalCode, CheckingCode>, string>> = {
  "reading-empty": "Nothing was typed. Type the reading with its unit, such as 3 1/2 in, or say why it could not be taken.",
  "reading-not-understood":
    "The text {found} cannot be read. Type a number and its unit and nothing else, such as 3 1/2 in, 12 mm or 1 h 30 min.",
  "reading-denominator":
    "No tape has the mark {found}. Type halves, quarters, eighths, sixteenths, thirty-seconds or sixty-fourths; metric readings take a decimal, such as 3.5 cm.",
  "reading-fraction":
    "The fraction {found} does not fit here. Type it below one, with a blank after the inches, such as 1 1/2; whole feet and counted pieces take no fraction.",
  "reading-comma-ambiguous":
    "The number {found} can be read in two ways because of its comma. Type 1250 without a comma, or 1.25 with a point.",
  "reading-hyphen-ambiguous":
    "The text {found} can be read with a minus or with a hyphen that joins. Leave the hyphen out: 4 3/8, or 5 ft 3 in.",
  "reading-two-readings":
    "A second number {found} follows the first. Enter each reading by itself; type thousands without a blank, and 1 m 23 cm as 1.23 m.",
  "reading-unit-unknown":
    "The unit {found} is not known here. Type a length in ft, in, mm, cm or m; anything else in the unit shown beside it.",
  "reading-unit-kind":
    "The unit {found} measures something else than what is asked for here. Type the reading in the unit shown beside it.",
  "reading-inches-over-foot": "Beside feet, the inches {found} must be below 12. Type 5 ft 13 in as 6 ft 1 in, or all of it in inches.",
  "reading-sign":
    "The sign {found} has no place here. Type the number without plus or minus; only a reading above or below a mark takes a sign, and only one.",
  "reading-out-of-range":
    "The text {found} lies outside what can be taken here. Look for a digit too many or another unit; minutes stay below 60, and the day must be in the calendar.",

  "number-not-finite": "The figure {place} is not a number that can be worked with. Enter it again.",
  "number-not-positive": "The figure {place} is too small: it cannot be below zero, and a size cannot be zero either. Enter it again.",
  "limits-crossed":
    "The limits of {place} cross: the lower one lies above the upper one, or the aim outside them. Change one of them, and keep the aim between the two.",
  "limits-missing": "The check {place} has neither a lower nor an upper limit. Give it at least one.",
  "points-too-few": "Not all of the {least} places that are needed have been read. Read the missing ones in the same set-up.",
  "points-too-many":
    "The {taken} places read are more than the {most} places that this check takes. Withdraw those that do not belong to it.",
  "points-coincident": "Two places were entered at the same spot. Read each place by itself, or correct the one that is there twice.",
  "points-collinear": "All places lie in one line, which does not show how level the other way is. Read one more place off that line.",

  "ties-too-few": "A buried point needs the distances to at least {least} marks. Measure to one more mark before it is covered.",
  "ties-mark-unknown":
    "The mark {mark} has not been placed, so no distance to it can be used. Enter how far it is from two other marks first.",
  "ties-mark-twice": "The mark {mark} is there twice. Keep one of the two, or give the other mark a name of its own.",
  "ties-rise-too-great": "The rise along the tape is as long as the tape. Read both once more, or measure level from a plumb line.",
  "ties-cannot-meet":
    "The distances from {first} and from {second} cannot meet: they miss each other by {miss}. Measure both once more; a point in line with the two marks needs a third mark off to the side.",
  "ties-in-line":
    "The point lies in line with its marks, so the distances do not show how far it is off that line. Measure to one more mark off to the side.",
  "ties-not-settled": "The distances do not lead to one place. Measure them once more, and to one more mark off to the side.",
  "ties-side-missing":
    "The distances leave two places for {mark}. Say whether it is left or right for someone at {first} who looks to {second}.",
  "drawing-does-not-fit":
    "The drawing does not fit on the paper at any usual scale. Look for a distance with a digit too many, or choose larger paper.",

  "sheet-shape": "The tolerance sheet cannot be read at {place}. Write there {wanted} and save again.",
  "sheet-unknown-name":
    "The tolerance sheet names {name} at {place}, but that is not in it or cannot stand there. Add it, or choose a name that fits.",
  "sheet-duplicate-name": "The name {name} stands twice in the tolerance sheet, at {place}. Give one of the two another name.",
  "sheet-limit-without-aim":
    "The limit of {place} can hold a covering but has no aim. Give the aim that good work reaches, or let this check be asked only.",
  "sheet-limit-undecidable":
    "Good work could not be told from the limit of {place}: the room {room} from aim to limit is less than the room {needed} that the instrument takes. Widen the limit or name a finer instrument.",
  "sheet-limit-on-nominal":
    "The limit of {place} sits on the size {size} in which stock is bought, so a piece as sold would be too close to call. Move the limit off that size.",
  "sheet-words-missing": "The tolerance sheet has no wording for {place} in one of its languages. Write it and save again.",

  "entry-shape":
    "This entry cannot be read at {place}. Bring the program on the phone up to date and send the entry again; the phone keeps it.",
  "entry-id-used":
    "The id of this entry already belongs to the entry {number} with other content. Enter it once more as a new entry; the phone keeps this one.",
  "entry-unknown-item":
    "The name {item} is not in this job's tolerance sheet. Let the phone fetch the job again and enter it once more; if it stays unknown, call the office.",
  "entry-unknown-tag":
    "The tag {tag} does not fit here. Name it first, with the covering that hides it; a step that does not repeat takes no tag.",
  "entry-unknown-covering": "The covering {covering} is not one that can be named here. Choose one from this job's tolerance sheet.",
  "entry-unknown-entry": "This entry refers to another that has not reached this job. Send that one first, then this one again.",
  "entry-unknown-setup":
    "This reading belongs to a set-up, and none is named with it. Enter the set-up, read the height mark, then take the reading.",
  "entry-unknown-version":
    "This job has not taken over the version that this entry needs of a tolerance sheet, kit card or setting. Ask the office to take it over, then send the entry again.",
  "version-unknown": "The company has nothing of this kind under this name. Read the list again and choose one from it.",
  "version-not-newest":
    "Somebody saved another version meanwhile. What you typed is still here: look at what changed there, take it over by hand, and save again.",
  "version-held": "This job is judged by this very version already. There is nothing to move.",
  "entry-digest-differs": "This entry changed on its way: its content is not what the phone sealed. Send it again from the phone.",
  "entry-answered": "This word by telephone has been answered already. Read the job again and see how.",
  "entry-customer-word":
    "The tolerance sheet lets this be accepted as built by the customer only. Enter what the customer said, word for word.",
  "entry-role": "Entries of this kind are made by somebody else in the company. Ask the office to enter it.",
  "entry-author":
    "This entry names a person for whom this phone may not speak. Let that person sign in, or enter it again under the name of a person on the crew.",
  "entry-clock":
    "The time in this entry cannot be taken. Let the phone set its date and time by itself and enter it again; the phone keeps this one.",
  "entry-not-applicable": "Entries of this kind speak of their own job alone and stay in it. Leave this one out and move the others.",
  "entry-body-size": "This entry holds more than one entry can. Shorten its text or split it into two; photos travel by themselves.",
  "batch-shape":
    "What was sent cannot be read as a list of entries. Bring the program on the phone up to date and send again; the phone keeps them.",
  "batch-size": "Too much was sent at once. Send it in smaller lots; the phone keeps what waits.",
  "job-unknown": "The company has no such job. Look it up among the company's jobs and open it from there.",
  "own-number-used":
    "The number {number} already belongs to another of the company's jobs. Look that job up and go on with it, or give this one a number of its own.",
  "site-unknown": "The company has no such site. Choose one from its sites, or enter the site anew.",
  "table-unreadable":
    "The file cannot be read as a table from its line {line} on. Save it once more from the spreadsheet as CSV, and look for a quotation mark that is never closed.",
  "table-empty": "The file holds no line under its column names. Save the table with its first line of names and the jobs under it.",
  "table-column-missing": "A column that is needed is missing from the file's first line: the {column}. Name it there.",
  "table-column-twice": "The column {column} stands there twice, under one name or two. Leave one of the two out.",
  "table-too-long":
    "The table has more lines than the {most} that are taken at once. Split it and take one part after the other: nothing is doubled.",
  "table-cell-long": "The column {place} is filled with more signs than the {most} that fit. Shorten it.",
  "table-cell-signs": "The column {place} holds signs that are no text. Type it again, or save the file as CSV in UTF-8.",
  "table-cells-more":
    "The line has more cells than the file has columns. Put text that holds the separator between quotation marks, or let the spreadsheet save it.",
  "table-number-missing": "The line has no own number, so the job cannot be told from others. Give it one.",
  "table-number-twice": "An earlier line has the same own number, line {line}. Leave one of the two out, or put its number right.",
  "table-title-missing": "The line opens a job and does not say what it is called. Fill in the title.",
  "table-name-unknown":
    "The company has nobody and nothing named {found} for the column {place}. Write the name as the company has it, or add it first.",
  "table-lines-bad":
    "Not every line of the table can be taken; the first that cannot is line {line}. Put such lines right in the file: all of it is taken, or nothing.",
  "archive-unreadable": "The file is no archive of a job that this program reads. Take the archive out once more where the job is.",
  "archive-part-missing": "The archive lacks the part {place} that its list names. Take it out once more where the job is.",
  "archive-part-differs":
    "The part {place} of the archive is not what its list says: it was changed or cut off. Take it out once more where the job is.",
  "archive-part-unexpected": "The archive holds the part {place} that its list does not name. Take it out once more where the job is.",
  "archive-job-differs":
    "This company has that job already, and its ledger is another. Nothing was changed; compare the two before anything else.",
  "job-exists": "This job is already open. Go on with it, or open the new one as a job of its own.",

  "ledger-format": "The ledger or entry is in a format {found} that this program does not read. Use a newer version of the program.",
  "ledger-number":
    "The entry number {found} is out of turn, so one is missing, doubled or moved. Ask the company for the ledger again and compare.",
  "ledger-link":
    "The entry {number} does not carry the hash of the one before it, so one of the two was changed. Ask the company for the ledger again and compare.",
  "ledger-hash":
    "The last entry {number} does not have the hash that stands at the head, so one of the two was changed. Ask the company for the ledger again and compare.",
  "ledger-part-digest":
    "The part at {place} is not what its digest was taken of, so it was changed. Send it again from the phone, or ask the company for the ledger again.",
  "ledger-part-missing":
    "The part at {place} was promised and is not there. Send the entry whole from the phone, or ask the company for the ledger again.",
  "ledger-duplicate-id":
    "The entry {number} has the same id as the earlier entry {earlier}, so one of the two was put in. Ask the company for the ledger again and compare.",
  "ledger-head":
    "The {found} entries of this ledger are not the {expected} entries that its head names: some are missing or were added at the end. Ask the company for the ledger again.",
  "ledger-withheld-reason":
    "The part at {place} is withheld for a reason that the program never gives. Ask the company for the ledger again and compare.",
  "ledger-job": "The entry {number} belongs to another job. File it under the job that it was made for.",
  "ledger-shape":
    "What stands at {place} is not what a ledger has there. Bring the program up to date and send it again, or ask the company for the ledger again.",
  "ledger-salt": "The salt at {place} is not 32 fresh random bytes. Let the program draw a new one and send again.",
  "ledger-part-unexpected":
    "The part at {place} was never promised. Send the entry again from the phone, or ask the company for the ledger again.",
  "ledger-version-digest":
    "The attached version {version} is not what its digest was taken of, so it was changed. Ask the company for the ledger again and compare.",
  "ledger-not-json": "What stands at {place} cannot be kept in a ledger. Use text, numbers, yes or no, lists and named fields only.",
  "ledger-text-surrogate":
    "The text at {place} holds half of a character, such as a picture sign cut in two. Delete the last sign and type it again.",
  "ledger-too-deep": "What stands at {place} is nested below the level {deepest} that a ledger takes. Send it with fewer levels.",

  "photo-hash-differs": "The photo that arrived is not the one that was announced. Send it again; the phone keeps the original.",
  "photo-too-large": "The photo's file is over 25 MB. Take it again with the camera's ordinary setting, not as a raw file.",
  "photo-empty": "The photo's file is empty. Take the picture again while it can still be seen.",
  "photo-type": "This file is not a photo that can be read here. Send the camera's own file: JPEG, HEIC, AVIF, PNG, WebP or GIF.",
  "photo-is-film":
    "This file is a video, and a record holds photos. Stop the video where it shows the thing, keep that frame as a photo, and send the photo.",
  "photo-length-required":
    "The photo was sent without its size. Bring the program on the phone up to date and send it again; the phone keeps it.",
  "photo-length-differs": "The photo did not arrive whole. Send it again where the signal is better; the phone keeps it.",
  "paper-type": "This file is not a PDF. Send the paper as a PDF, or take a picture of it.",
  "mark-type": "This file is no PNG, JPEG or SVG. Save the company's mark as one of them and choose it again.",
  "mark-too-large": "The company's mark is larger than 2 MB or 40 million pixels. Save it smaller and choose it again.",
  "mark-more-than-picture":
    "This file holds more than a picture: something stands behind its end, or it carries a script or points elsewhere. Save the bare picture and choose that.",
  "mark-unreadable": "No picture can be made of this file. Open it, save it again as PNG and choose that.",
  "mark-unknown": "The company's mark has not arrived. Choose the file once more.",
  "paper-unreadable": "This PDF cannot be opened. Print it to a PDF once more and send that.",
  "paper-locked": "This PDF is locked with a password or encrypted. Save it without and send that.",
  "paper-too-heavy":
    "The drawings in this PDF unpack to more than 32 million bytes, more than can be bound in. Save it with less detail, or print it to a new PDF, and send that.",
  "paper-too-long": "This PDF has more than 60 pages. Send the pages that matter, or in parts.",
  "paper-unknown": "This paper has not arrived. Send it once more.",
  "others-link-ended":
    "This link does not work: it was used, its days are over, it was withdrawn, or it has taken as many files as one link takes. Ask whoever sent it for a new one.",
  "others-paper-missing": "There is no paper yet. Add a picture of it or a PDF.",
  "question-unknown": "There is no such question or table. Open it from the company owner's own page.",
  "photo-unknown": "This photo has not arrived. Open the program on the phone that took it and let it send.",
  "photo-unreadable":
    "The photo's file cannot be opened as a picture. Send the camera's own file once more, or take it again while it can still be seen.",
  "photo-not-whole":
    "The photo's file is not whole: {percent} % of its rows can be read. Send it again from the phone that took it, or take it again while it can still be seen.",
  "photo-too-many-pixels": "The photo has more than 60 million pixels. Take it again with the camera's ordinary setting.",
  "photo-not-read-yet": "The photo has arrived and waits to be read. Try again in a minute.",

  "seal-key-missing":
    "The office's server has no secret by which the company's key can be kept, so that nothing can be sealed. Whoever runs the server sets SEAL_SECRET.",
  "seal-key-unreadable":
    "The company's key was kept with another secret than the server has now. Whoever runs the server puts the former SEAL_SECRET back, or makes a new key.",
  "session-missing": "Nobody is signed in here. Sign in, or take a code or a link from the office; what the phone holds stays on it.",
  "session-ended": "This sign-in has ended. Sign in again, or ask the office for a new code; what the phone holds stays on it.",
  "link-unknown": "This link has been used, has ended or was never given. Ask the office for a new one.",
  "link-passkeys":
    "This person signs in with a passkey. If it is lost, a company owner withdraws it and gives a new way in, on the page of the people.",
  "join-code-unknown":
    "There is no such code that still waits: it was used, withdrawn or ran out, or a digit is another one. Look at it once more, or ask the office for a new one.",
  "join-code-crew": "Codes are for crews' phones. Office and company owner get a link, and make a passkey with it.",
  "passkey-unknown": "There is no such passkey any more. Bring the page up to date and choose another.",
  "passkey-not-made":
    "The passkey did not come through, or it took longer than five minutes. Try again on this page, and confirm with finger, face or the code that unlocks it.",
  "passkey-there": "This device has a passkey for you already. Sign in with that one.",
  "passkey-last": "This is your only passkey. Make another one first, on this or another device; then remove this one.",
  "passkeys-many": "You have ten passkeys. Remove one that is not used any more; then make the new one.",
  "passkeys-not-set": "This server does not say at which address it is found, so that no passkey can be made. Whoever runs it sets ORIGIN.",
  "sign-in-unknown":
    "That did not let you in: the passkey is not known here or was removed, or it took longer than five minutes. Try again; if it is lost, ask a company owner for a new way in.",
  "session-unknown": "This device is signed out already. Bring the page up to date.",
  "too-many-tries": "There were many tries from here. Wait {minutes} min, then try again.",
  "role-not-allowed": "This is for another role in the company. Ask the office, or the company owner.",
  "request-shape":
    "The part {place} of what was sent is missing or not what belongs there. Bring the program up to date and send it again.",
  "request-type": "What was sent is not of a kind that is taken here. Bring the program up to date and send it again, as JSON.",
  "request-origin": "This came from another page than the program's own. Open the program at its own address and do it there.",
  "route-unknown": "There is nothing at this address. Look it over for a slip, or start from the program's first page.",
  "company-unknown": "There is no such company here. Open the link that the company's office gave.",
  "person-unknown": "This person is not in the company, or has left it. Choose another, or let the office add the person.",
  "person-request-unknown": "There is no such request here. Look at the list of those who asked for their data.",
  "person-request-answered": "This request has been answered. If something new is to be found or removed, enter a new request.",
  "person-request-held": "This request is held until {until}. Answer it after that day, or say until when it is held now.",
  "person-covered":
    "A cover of this person's own installation runs until {until}: what was recorded may be needed until then. Hold the request, and say until when.",
  "person-still-here": "This person still works for the company. Say first that the person has left; then the name can be removed.",
  "release-ended": "This link to a record has ended or was never given. Ask the company that built it for a new one.",
  "release-company-edition":
    "This is the company's own edition, with every name and position in it. Issue the customer's edition and release that one.",
  "record-unknown": "There is no such record yet. Issue it first, or choose another version.",
  "record-unreadable": "What is stored of this record cannot be read. Its PDF is as it was issued; open that, or issue the record again.",

  "service-token":
    "Two parts of the program did not know each other. Try again; if it stays so, whoever runs the program gives both the same key and sets their clocks.",
  "store-unavailable": "The store of photos and records does not answer. Try again in a few minutes; what the phone holds stays on it.",
  "media-unavailable":
    "The part that reads photos does not answer. Photos that arrived are kept and read once it runs; nothing has to be sent twice.",
  "print-unavailable": "The part that prints records does not answer. Nothing is lost; issue the record again in a few minutes.",
  "print-failed":
    "The record could not be printed. Nothing is lost; issue it again, and tell whoever runs the program if it happens twice.",
  "mail-not-set": "No mail service is named for this installation. Save the message as a file and send it from your own mail program.",
  "mail-sender-missing": "The company's own mail address is missing. Enter it in the company's settings.",
  "mail-not-sent":
    "The mail service did not take the message. Save it as a file and send it from your own mail program, or try again later.",
  "database-busy": "Others wrote to this job at the same moment. Send it again in a minute; the phone keeps it.",
  "company-moving": "This company's data is being moved at this moment. Send it again in a few seconds; the phone keeps it.",
  "shard-unknown": "No database is bound under this name. Name one that is bound: DB, DB_2 and so on.",
  "move-other":
    "Another move of this company is not over, or another command has taken this one over. Let it end, and have the rows that it left behind removed.",
  "move-differs":
    "The copied table {what} is not the same as before, so the company works on where it was. Run the move again; if it says so again, do not move the company.",

  "pipe-size-unknown": "No table here has the pipe size at {place}. Choose a size as it is sold, 1/2 to 4 in, or another table.",
  "pipe-kind-unknown": "The kind of pipe at {place} is not known here. Write rigid, flexible or ribbed.",
  "fitting-length-unknown":
    "No table here gives the loss of that fitting in that size. Take its equivalent length from its own paper and add it to the pipe's.",
  "count-not-whole": "What is counted at {place} comes in whole pieces. Enter a whole number.",
  "pipe-part-longer": "The part of the line at {place} is longer than the whole line. Measure both from the pump along the pipe.",
  "pump-curve-text":
    "The point {place} of the pump's curve cannot be read. Write each as a flow and a head with their units, such as 20 gpm 21 ft, and part them by semicolons.",
  "pump-curve-too-few":
    "One point of a pump's curve does not show where it runs. Copy at least two points from its paper, better all of them.",
  "pump-curve-point-twice":
    "The point {place} of the pump's curve is there twice. Delete one of the two, or correct it from the pump's paper.",
  "pump-curve-rises":
    "By its points this pump gives no less head at its greatest flow than at its least. Look whether flow and head were exchanged.",
  "pump-beyond-curve":
    "The pump's paper gives no point at that flow, so its head there is not known. Add the missing points to its kit card, or ask the maker.",
  "flow-bin-too-fast":
    "The bin fills too fast to be timed by hand: it takes less than 20 s. Use a larger bin, or measure by the basin's own draw-down.",
  "cure-time-unknown": "No published table covers the joints of this pipe. Type the set and cure times that the can gives.",
  "cure-temperature-outside":
    "The coldest temperature lies outside the chosen table of cure times. Read it again, choose another table, or type the times that the can gives.",
  "cure-pressure-outside":
    "The chosen table of cure times does not go up to that pressure. Choose another table, or type the times that the can gives.",
  "cure-before-set": "The cure time at {place} is shorter than the set time. Read both from the can once more; water comes after handling.",
  "socket-mark-beyond":
    "The witness mark cannot be that far from the socket: the pipe would not be in it. Measure from the socket's face to the mark.",
  "wire-size-unknown": "The resistance of that wire is not in the table here. Choose another size or stranding, or ask the electrician.",
};
