// src/job/finding.ts
var message = (key, figures = {}) => ({
	key,
	figures
});
// src/job/once-per.ts
/**
* A function of something that never changes (a job's state, a sheet) and a key, worked out once for each: the same value,
* sooner. What is kept goes when its owner goes.
*/
function oncePer(compute) {
	const kept = /* @__PURE__ */ new WeakMap();
	return (owner, key) => {
		let own = kept.get(owner);
		if (own === void 0) {
			own = /* @__PURE__ */ new Map();
			kept.set(owner, own);
		}
		const known = own.get(key);
		if (known !== void 0 || own.has(key)) return known;
		const value = compute(owner, key);
		own.set(key, value);
		return value;
	};
}
// src/job/sheet-callbacks.ts
/** What a customer calls about. A planned return visit is no callback. */
var symptoms = [
	"water low",
	"water bill",
	"wet ground",
	"no flow",
	"noise",
	"breaker or ground fault trips",
	"edge or lid sunk",
	"splash",
	"frozen",
	"foam or smell",
	"damage by others"
];
// src/job/sheet-check.ts
var checkFunctions = [
	"single value",
	"out of level",
	"fourth place",
	"moved since",
	"steady",
	"level along a lip",
	"at least one of",
	"time passed since",
	"between two instants",
	"loss a day",
	"short of the socket",
	"flow as measured",
	"room for rain",
	"found by ties",
	"stone on the lid",
	"voltage drop"
];
var limitFunctions = [
	"design figure",
	"rim below finished grade",
	"cord reach",
	"as typed",
	"set time",
	"cure time",
	"standard socket depth",
	"expected draw-down",
	"expected flow",
	"rain of a day",
	"water left inside"
];
/** Named figures that are printed beside a verdict. */
var checkCosts = ["water lost to tilt", "water to leave inside"];
/** What a time is to have passed before, where no item's entry says so: the covering that is held, or a moment of the job. */
var passedBefore = ["covering", "first running"];
/** What a drawing of the record takes from a check's value. */
var checkShows = ["depth of cover"];
/** The two leak tests: what only the second loses leaves by falls and edges. */
var leakTests = ["basin, pump off", "running"];
var flowWays = [
	"bin",
	"basin going down",
	"meter"
];
// src/job/sheet.ts
/** What a point that was tied to marks can be on the plan. `basin`: the middle of it. */
var drawnAs = [
	"joint",
	"crossing",
	"splice",
	"outlet",
	"lid",
	"basin"
];
/** Moments of a job that a sheet can name: the water ran for the first time. */
var jobMoments = ["first running"];
/** What is looked at before the crew leaves for the night. */
var nightMatters = ["holes", "pump"];
/** What an answer means where a check or a limit goes by it. */
var choiceMeanings = [
	"rigid PVC",
	"flexible PVC",
	"ABS to PVC transition",
	"humid",
	"dry air",
	"water outside",
	"make-up shut",
	"make-up open",
	"no rain",
	"rain",
	"pump off",
	"pump ran",
	"pump ran in part",
	"sealant",
	"patch primer",
	"foam"
];
/** The tag set whose tags repeat a check: that of the items it reads. */
var tagSetOf = oncePer((items, check) => items.find((item) => check.items.includes(item.id) && item.tags !== void 0)?.tags);
/** The item of this name. */
var itemNamed = oncePer((sheet, id) => sheet.items.find((item) => item.id === id));
// src/job/corrections.ts
/**
* The corrections of an entry, given all `corrected` entries in the order of the work. One that names an earlier
* correction goes on correcting what that one corrected; one that withdraws a correction leaves the entry as it was.
*/
function correctionsOf(corrected) {
	const byTarget = /* @__PURE__ */ new Map();
	for (const { id, what } of corrected) {
		const correction = {
			id,
			what
		};
		const known = byTarget.get(correction.what.entry.id);
		if (known) known.push(correction);
		else byTarget.set(correction.what.entry.id, [correction]);
	}
	const resolve = (target, above) => {
		let result;
		for (const { id, what } of byTarget.get(target) ?? []) {
			if (above.has(id)) continue;
			const later = resolve(id, /* @__PURE__ */ new Set([...above, id]));
			if (later?.withdrawn) continue;
			result = {
				replace: {
					...result?.replace,
					...what.replace,
					...later?.replace
				},
				withdrawn: what.withdrawn === true,
				by: later?.by ?? id
			};
		}
		return result;
	};
	return (id) => byTarget.has(id) ? resolve(id, /* @__PURE__ */ new Set([id])) : void 0;
}
// src/job/order.ts
/** Half a second for the way of the quickest contact, and 20 ppm of drift (a usual quartz clock, from memory) since then. */
var CONTACT_DOUBT_MS = 500;
var DRIFT = 2e-5;
/** A phone waits no longer for an answer: two contacts that differ by more do so because the clock was set between them. */
var LONGEST_WAY_MS = 12e4;
/** Index of the last entry that each contact carried. */
function carriedBy(own) {
	const known = /* @__PURE__ */ new Map();
	const carried = /* @__PURE__ */ new Map();
	for (let i = own.length - 1; i >= 0; i -= 1) {
		const { sent, received } = own[i];
		if (sent === void 0 || received === void 0) continue;
		const later = known.get(received);
		if (later?.includes(sent)) continue;
		if (later) later.push(sent);
		else known.set(received, [sent]);
		carried.set(i, {
			sent,
			received
		});
	}
	return carried;
}
/** A clock that goes back within the phone's own order was set back there: contacts before and after it do not serve alike. */
function clockOf(own) {
	const carried = carriedBy(own);
	const contacts = [];
	const stretches = [];
	let stretch = 0;
	let clock = Number.NEGATIVE_INFINITY;
	const tick = (reads) => {
		if (reads < clock) stretch += 1;
		clock = reads;
		return stretch;
	};
	own.forEach(({ made }, i) => {
		stretches.push(tick(made));
		const contact = carried.get(i);
		if (contact) contacts.push({
			...contact,
			stretch: tick(contact.sent)
		});
	});
	contacts.sort((a, b) => a.sent - b.sent || a.received - b.received);
	const after = slowerThan(contacts);
	const before = slowerThan([...contacts].reverse()).reverse();
	return {
		contacts: contacts.map((contact, i) => ({
			...contact,
			slower: Math.max(after[i] ?? 0, before[i] ?? 0)
		})),
		stretches
	};
}
/**
* What a request waited on its way stands in the skew, which no clock but the edge's tells: the smallest skew is that of the
* quickest way, and every other contact is doubtful by how far it lies above it. Of each contact, by how much it is slower than
* those that stand before it in the list; ms.
*/
function slowerThan(contacts) {
	const quickest = /* @__PURE__ */ new Map();
	return contacts.map(({ sent, received, stretch }) => {
		const skew = received - sent;
		const best = quickest.get(stretch);
		const drifted = best === void 0 ? skew : best.skew + DRIFT * Math.abs(sent - best.sent);
		const isQuickest = skew <= drifted || skew - drifted > LONGEST_WAY_MS;
		if (isQuickest) quickest.set(stretch, {
			skew,
			sent
		});
		return isQuickest ? 0 : Math.round(skew - drifted);
	});
}
/** Of contacts in the order of their sending: the earlier of two that are as near. */
function nearest$1(contacts, made) {
	let [from, to] = [0, contacts.length];
	while (from < to) {
		const middle = from + to >> 1;
		if (contacts[middle].sent < made) from = middle + 1;
		else to = middle;
	}
	const after = contacts[from];
	let before = contacts[from - 1];
	if (before === void 0 || after !== void 0 && after.sent - made < made - before.sent) return after;
	for (let i = from - 2; contacts[i]?.sent === before.sent; i -= 1) before = contacts[i];
	return before;
}
/** One phone's entries, in its own order, with corrected times that never go back. */
function phoneOrder(entries) {
	const own = [...entries].sort((a, b) => a.run - b.run || compareText(a.id, b.id));
	const { contacts, stretches } = clockOf(own);
	const byStretch = /* @__PURE__ */ new Map();
	for (const contact of contacts) {
		const known = byStretch.get(contact.stretch);
		if (known) known.push(contact);
		else byStretch.set(contact.stretch, [contact]);
	}
	let latest = Number.NEGATIVE_INFINITY;
	return own.map((entry, i) => {
		const { made, received = Number.POSITIVE_INFINITY } = entry;
		const contact = nearest$1(byStretch.get(stretches[i] ?? 0) ?? [], made) ?? nearest$1(contacts, made);
		const corrected = Math.min(contact ? made + (contact.received - contact.sent) : made, received);
		const doubt = contact ? CONTACT_DOUBT_MS + contact.slower + DRIFT * Math.abs(contact.sent - made) : CONTACT_DOUBT_MS;
		latest = Math.max(latest, corrected);
		return {
			entry,
			at: latest,
			doubt
		};
	});
}
/**
* The entries in the order of the work, whatever order they arrived in: across phones by corrected clocks, within one
* phone by its running number (a clock set back in mid-job does not turn the phone's own order round). The entries' own
* times never serve to correct a clock.
*/
function workOrder(entries) {
	const byPhone = /* @__PURE__ */ new Map();
	for (const entry of entries) {
		const own = byPhone.get(entry.author.phone);
		if (own) own.push(entry);
		else byPhone.set(entry.author.phone, [entry]);
	}
	return [...byPhone.values()].flatMap(phoneOrder).sort((a, b) => a.at - b.at || compareText(a.entry.author.phone, b.entry.author.phone) || a.entry.run - b.entry.run || compareText(a.entry.id, b.entry.id));
}
/** By UTF-16 code units, the same everywhere; never by a locale. */
function compareText(a, b) {
	return a < b ? -1 : a > b ? 1 : 0;
}
// src/job/fact.ts
/** How an authority's inspection stands, as somebody told it; the program judges none. */
var inspectionStates = [
	"not required here",
	"applied",
	"due",
	"passed",
	"failed"
];
// src/outcome/outcome.ts
var ok = (value) => ({
	ok: true,
	value
});
function refuse(code, place, figures = {}, column) {
	return {
		ok: false,
		refusal: column === void 0 ? {
			code,
			place,
			figures
		} : {
			code,
			place,
			figures,
			column
		}
	};
}
// src/job/shape.ts
var fault$1 = (place, wanted) => [refuse("sheet-shape", place, { wanted }).refusal];
var text = (value, place) => typeof value === "string" && value.length > 0 && value.length <= 2e3 ? [] : fault$1(place, "text");
var anyText = (value, place) => typeof value === "string" ? [] : fault$1(place, "text");
var finite = (value, place) => Number.isFinite(value) ? [] : fault$1(place, "a number");
var integer = (value, place) => Number.isSafeInteger(value) ? [] : fault$1(place, "a whole number");
var notNegative = (value, place) => Number.isSafeInteger(value) && value >= 0 ? [] : fault$1(place, "a whole number from 0");
var yesNo = (value, place) => typeof value === "boolean" ? [] : fault$1(place, "true or false");
var among = (...allowed) => (value, place) => allowed.includes(value) ? [] : fault$1(place, allowed.join(", "));
var listOf = (shape) => (value, place) => Array.isArray(value) ? value.flatMap((entry, i) => shape(entry, `${place}/${i}`)) : fault$1(place, "a list");
/** A list of just so many, each of its own shape. */
var eachOf = (...shapes) => (value, place) => Array.isArray(value) && value.length === shapes.length ? shapes.flatMap((shape, i) => shape(value[i], `${place}/${i}`)) : fault$1(place, `a list of ${shapes.length}`);
var eitherOf = (...shapes) => (value, place) => shapes.some((shape) => shape(value, place).length === 0) ? [] : fault$1(place, "one of the shapes that this can have");
/** An object whose every field, whatever its name, has this shape. */
var recordOf = (shape) => (value, place) => typeof value === "object" && value !== null && !Array.isArray(value) ? Object.entries(value).flatMap(([name, inner]) => shape(inner, `${place}/${name}`)) : fault$1(place, "an object");
/** An object with these fields, those whose name ends in `?` optional. Other fields: a fault, unless they are `kept`. */
function objectOf(fields, others = "refused") {
	const read = () => new Map(Object.entries(fields).map(([name, shape]) => [name.replace("?", ""), {
		shape,
		optional: name.endsWith("?")
	}]));
	let known;
	return (value, place) => {
		if (typeof value !== "object" || value === null || Array.isArray(value)) return fault$1(place, "an object");
		known ??= read();
		const optional = known;
		const given = value;
		const faults = [];
		const add = (more) => {
			for (const one of more) faults.push(one);
		};
		if (others === "refused") {
			for (const name of Object.keys(given)) if (!optional.has(name)) add(fault$1(`${place}/${name}`, "nothing: this name is not known here"));
		}
		for (const [name, field] of optional) {
			const inner = Object.hasOwn(given, name) ? given[name] : void 0;
			if (inner !== void 0) add(field.shape(inner, `${place}/${name}`));
			else if (!field.optional) add(fault$1(`${place}/${name}`, "something"));
		}
		return faults;
	};
}
// src/job/what-shape.ts
var saying = (fields) => objectOf(fields, "kept");
var typed = saying({
	typed: anyText,
	unit: anyText
});
var about$1 = saying({
	"item?": anyText,
	"check?": anyText,
	"tag?": anyText
});
var aboutOrStep = saying({
	"item?": anyText,
	"check?": anyText,
	"tag?": anyText,
	"step?": anyText
});
var reference = saying({ id: anyText });
var role = among("crew", "office", "company owner");
var covering = { covering: anyText };
var said = {
	about: about$1,
	reason: anyText
};
var spot = eachOf(integer, integer, integer);
var movedEntry = saying({
	id: anyText,
	kind: anyText,
	author: saying({
		person: anyText,
		phone: anyText
	}),
	run: finite,
	made: finite
});
/**
* What must be there before the core reads a fact of its kind. The wire has judged what phones send more strictly; this
* also meets corrected words, entries moved in from another job, and what a newer program wrote.
*/
var shapes = {
	"job-opened": saying({
		title: anyText,
		"ownNumber?": anyText,
		zone: anyText,
		language: among("en", "es"),
		units: among("inch", "metric"),
		"order?": anyText,
		"invoice?": anyText,
		"site?": anyText,
		"crew?": listOf(anyText)
	}),
	"opened-late": saying({
		reason: anyText,
		"steps?": listOf(anyText),
		"coverings?": listOf(anyText)
	}),
	"particulars-set": saying({
		"title?": anyText,
		"order?": anyText,
		"invoice?": anyText,
		"crew?": listOf(anyText)
	}),
	"site-taken-over": saying({
		site: anyText,
		"heightMark?": anyText,
		"tieMarks?": listOf(anyText)
	}),
	"version-taken-over": saying({
		thing: among("sheet", "kit card", "settings"),
		name: anyText,
		number: finite,
		digest: anyText
	}),
	"design-set": saying({
		"figures?": recordOf(eitherOf(typed, among("unknown"))),
		"switches?": recordOf(yesNo)
	}),
	"tag-named": saying({
		set: anyText,
		tag: anyText,
		hiddenBy: anyText,
		"description?": anyText
	}),
	"set-up-made": saying({
		instrument: anyText,
		"receiver?": among("fine", "coarse"),
		"distance?": typed
	}),
	"reading-taken": saying({
		item: anyText,
		"tag?": anyText,
		typed: anyText,
		unit: anyText,
		"setUp?": anyText,
		"instrument?": anyText,
		"placing?": anyText,
		"receiver?": among("fine", "coarse"),
		"distance?": typed,
		"mark?": anyText,
		"side?": among("left", "right"),
		"at?": finite
	}),
	"read-again": saying({
		reading: anyText,
		item: anyText,
		"tag?": anyText,
		typed: anyText,
		unit: anyText,
		"instrument?": anyText,
		"setUp?": anyText
	}),
	"picture-taken": saying({
		item: anyText,
		"tag?": anyText,
		photo: anyText,
		"judged?": among("readable", "unreadable")
	}),
	"picture-read": saying({ photo: anyText }),
	"photo-measured": saying({
		item: anyText,
		"tag?": anyText,
		photo: anyText,
		width: integer,
		height: integer,
		paper: among("letter", "a4"),
		"ruler?": typed,
		codes: listOf(saying({
			place: among(0, 1, 2, 3),
			corners: eachOf(spot, spot, spot, spot)
		})),
		"lens?": saying({
			distortion: integer,
			within: integer
		}),
		from: spot,
		to: spot
	}),
	"picture-looked-at": saying({
		picture: anyText,
		says: among("shows it", "does not show it", "cannot tell")
	}),
	answered: saying({
		item: anyText,
		"tag?": anyText,
		choice: anyText
	}),
	"note-for-record": saying({
		text: anyText,
		"step?": anyText,
		"tag?": anyText
	}),
	"note-for-office": saying({ text: anyText }),
	"paper-added": saying({
		title: anyText,
		paper: anyText,
		"photo?": anyText,
		"pdf?": anyText
	}),
	"visit-begun": saying({ "note?": anyText }),
	"visit-ended": saying({
		"staysOpen?": anyText,
		"note?": anyText
	}),
	"does-not-apply": saying({
		...said,
		role
	}),
	"could-not-be-taken": saying(said),
	"received-otherwise": saying({
		item: anyText,
		"tag?": anyText,
		photo: anyText
	}),
	"done-by-others": saying({
		what: anyText,
		"step?": anyText,
		"photo?": anyText,
		"paper?": anyText
	}),
	"inspected-by-authority": saying({
		what: anyText,
		state: among(...inspectionStates),
		"number?": anyText,
		"day?": anyText,
		"photo?": anyText
	}),
	"site-located": saying({
		how: anyText,
		"reaches?": integer
	}),
	corrected: saying({
		entry: reference,
		"withdrawn?": yesNo,
		"replace?": recordOf(() => [])
	}),
	"moved-out": saying({ entries: listOf(reference) }),
	"moved-in": saying({
		from: anyText,
		entries: listOf(movedEntry)
	}),
	"covering-announced": saying({
		...covering,
		about: finite
	}),
	covered: saying({
		...covering,
		shown: among("clear", "on word", "not yet"),
		lines: listOf(anyText),
		"at?": finite
	}),
	"opened-up-again": saying({
		...covering,
		exposed: eitherOf(among("all"), listOf(about$1))
	}),
	"rework-asked": saying({ about: about$1 }),
	reworked: saying({ about: about$1 }),
	"looked-again": saying({ about: about$1 }),
	"go-ahead": saying({
		...covering,
		role,
		"about?": listOf(about$1),
		"confirms?": anyText
	}),
	"departure-agreed": saying({
		about: about$1,
		"lower?": integer,
		"upper?": integer
	}),
	"go-ahead-denied": saying({
		goAhead: anyText,
		reason: anyText
	}),
	concession: saying({
		about: about$1,
		"customerSaid?": anyText
	}),
	"left-to-do": saying({
		text: anyText,
		by: anyText,
		"about?": aboutOrStep
	}),
	"left-to-do-done": saying({ entry: reference }),
	"region-blurred": saying({
		photo: anyText,
		rendition: anyText,
		reason: anyText
	}),
	"body-withheld": saying({
		entry: reference,
		parts: listOf(among("what", "who", "where")),
		reason: anyText
	}),
	"record-issued": saying({
		version: integer,
		edition: anyText,
		"seal?": anyText,
		"key?": anyText
	}),
	"record-released": saying({
		version: integer,
		to: anyText
	}),
	"rules-moved": saying({
		from: integer,
		to: integer,
		changed: listOf(anyText)
	}),
	signed: saying({
		relation: anyText,
		"textDigest?": anyText,
		"text?": anyText
	}),
	declined: saying({ objection: anyText }),
	"not-reached": saying({ how: anyText }),
	"callback-opened": saying({
		symptom: anyText,
		"said?": anyText,
		"day?": anyText
	}),
	"callback-closed": saying({
		cause: anyText,
		"callback?": anyText,
		"confirmed?": yesNo,
		"supposed?": anyText,
		"part?": anyText,
		"borneBy?": anyText,
		"minutes?": finite,
		"travelMinutes?": finite,
		"partsCost?": finite,
		"recovered?": finite
	}),
	"service-done": saying({
		service: anyText,
		date: anyText
	}),
	"delivered-unsigned": saying({
		how: anyText,
		day: anyText,
		to: anyText,
		because: among("not reached", "declined", "vacant"),
		"objection?": anyText
	}),
	"in-use": saying({
		since: anyText,
		how: anyText
	}),
	"cover-started": saying({
		rule: among("invoice paid", "date of sale"),
		day: anyText,
		"part?": anyText
	}),
	"part-kept": saying({
		part: anyText,
		why: anyText
	}),
	"part-replaced": saying({
		part: anyText,
		day: anyText,
		why: among("under warranty", "sold"),
		"serial?": anyText
	}),
	"part-registered": saying({
		part: anyText,
		day: anyText,
		"number?": anyText
	}),
	"new-owner": saying({ day: anyText })
};
/** Whether the core can read what a fact of this kind says. A kind that it does not know says what it likes. */
function isUnderstood(kind, what) {
	if (!Object.hasOwn(shapes, kind)) return true;
	return shapes[kind]?.(what, "what").length === 0;
}
// src/job/live.ts
/** The `what` of a fact in its kind's shape. A withheld `what` reads as empty: ask only facts that count. */
function whatOf(live, _kind) {
	return live.what;
}
var readable = ({ kind, what }, wanted) => kind === wanted && what !== void 0 && isUnderstood(kind, what);
function movedIn(entry) {
	if (!readable(entry, "moved-in")) return [];
	const { from, entries } = entry.what;
	const { received, number } = entry;
	return entries.map(({ id, kind, author, run, made, what }) => ({
		from,
		by: entry.id,
		entry: {
			id,
			digest: entry.digest,
			kind,
			author,
			run,
			made,
			...received === void 0 ? {} : { received },
			...number === void 0 ? {} : { number },
			...what === null ? {} : { what }
		}
	}));
}
/** Position of the last `moved-out` that names an entry, by its id. */
function movedOutAt(placed) {
	return new Map(placed.flatMap(({ entry }, position) => readable(entry, "moved-out") ? entry.what.entries.map(({ id }) => [id, position]) : []));
}
/** What says something about its own job alone, and means nothing in another. */
var ofItsJob = /* @__PURE__ */ new Set([
	"job-opened",
	"version-taken-over",
	"moved-out",
	"moved-in",
	"record-issued",
	"record-released",
	"rules-moved",
	"opened-late",
	"particulars-set",
	"site-taken-over"
]);
var isRecord = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
/** Whose word it was is no matter of correction. */
function corrected(what, correction) {
	if (correction === void 0) return what;
	const words = {
		...what,
		...correction.replace
	};
	return Object.hasOwn(what, "role") ? {
		...words,
		role: what.role ?? null
	} : words;
}
function standingOf$1({ kind, what: original }, what, { isMovedOut, isOutOfPlace, isWithdrawn }) {
	if (original === void 0) return "withheld";
	if (isMovedOut) return "moved out";
	if (isWithdrawn) return "withdrawn";
	return isRecord(original) && !isOutOfPlace && isUnderstood(kind, what) ? "counts" : "not understood";
}
/** Every fact of the job in the order of the work, corrections, withdrawals and moves applied; nothing is dropped. */
function liveFacts(entries) {
	const moved = new Map(entries.flatMap(movedIn).map((m) => [m.entry, m]));
	const placed = workOrder([...entries, ...moved.keys()]);
	const places = new Map(placed.map(({ entry }, position) => [entry.id, position]));
	const out = movedOutAt(placed);
	const correctionOf = correctionsOf(placed.filter(({ entry }) => readable(entry, "corrected") && !out.has(entry.id)).map(({ entry }) => entry));
	return placed.map(({ entry, at, doubt }, position) => {
		const came = moved.get(entry);
		const correction = correctionOf(entry.id);
		const what = isRecord(entry.what) ? corrected(entry.what, correction) : {};
		const outAt = out.get(entry.id);
		const isMovedOut = outAt !== void 0 && (came === void 0 || outAt > (places.get(came.by) ?? -1));
		const isWithdrawn = correction?.withdrawn === true || came !== void 0 && correctionOf(came.by)?.withdrawn === true;
		return {
			id: entry.id,
			kind: entry.kind,
			what,
			entry,
			position,
			at,
			doubt,
			standing: standingOf$1(entry, what, {
				isMovedOut,
				isOutOfPlace: came !== void 0 && ofItsJob.has(entry.kind),
				isWithdrawn
			}),
			...correction ? { correctedBy: correction.by } : {},
			...came ? { movedFrom: came.from } : {}
		};
	});
}
/** The end of the year 9999, ms, as the wire has it: what is said to lie beyond it is no time. */
var LAST_INSTANT = 0xe677d21fdbff;
var isInstant = (said) => Number.isSafeInteger(said) && Number(said) >= 0 && Number(said) <= LAST_INSTANT;
/**
* When something happened: at the time that was said beside it, else when it was entered. What is said is told by the same
* phone's clock as the entry, so the same correction holds for both.
*/
var happenedAt = (fact) => isInstant(fact.what.at) ? fact.at + (fact.what.at - fact.entry.made) : fact.at;
// src/job/sheet-names.ts
var unknown = (place, name) => refuse("sheet-unknown-name", place, { name }).refusal;
function duplicates(lists) {
	return Object.entries(lists).flatMap(([list, things]) => things.flatMap((thing, i) => things.findIndex((other) => other.id === thing.id) < i ? [refuse("sheet-duplicate-name", `sheet/${list}/${thing.id}`, { name: thing.id }).refusal] : []));
}
function listsOf(sheet) {
	const ids = (things) => new Set(things.map((t) => t.id));
	return {
		switches: ids(sheet.switches),
		figures: ids(sheet.figures),
		instruments: ids(sheet.instruments),
		placings: ids(sheet.placings),
		tagSets: ids(sheet.tagSets),
		coverings: ids(sheet.coverings),
		cautions: ids(sheet.cautions),
		steps: ids(sheet.steps),
		items: ids(sheet.items)
	};
}
function heldFaults(miss, place, { weight, holds }, isTagged) {
	if (weight !== "holds") return holds === void 0 ? [] : [unknown(`${place}/holds`, holds)];
	if (holds === "by tag") return isTagged ? [] : [unknown(`${place}/holds`, holds)];
	return holds === void 0 ? [unknown(`${place}/holds`, "")] : miss(`${place}/holds`, [holds], "coverings");
}
function itemFaults(miss, item, isInGroup) {
	const place = `sheet/items/${item.id}`;
	return [
		...miss(`${place}/step`, [item.step], "steps"),
		...miss(`${place}/tags`, [item.tags, item.whenNoTagOf], "tagSets"),
		...miss(`${place}/needsHidden`, [item.needsHidden], "coverings"),
		...miss(`${place}/instrument`, [item.instrument], "instruments"),
		...miss(`${place}/placing`, [item.placing, item.placingAlso], "placings"),
		...miss(`${place}/cautions`, [...item.cautions ?? [], ...(item.choices ?? []).map((c) => c.caution)], "cautions"),
		...miss(`${place}/switches`, [...item.switches?.on ?? [], ...item.switches?.off ?? []], "switches"),
		...isInGroup ? [] : heldFaults(miss, place, item, item.tags !== void 0)
	];
}
var readByName = ({ items, minus = [], bucket = [], conditions = [], weather, ways = [] }) => [
	...items,
	...minus,
	...bucket,
	...conditions,
	...Object.values(weather ?? {}),
	...ways.flatMap((way) => way.items)
];
function checkFaults(miss, check, isTagged) {
	const place = `sheet/checks/${check.id}`;
	const limits = [
		check.aim,
		check.lower,
		check.upper
	].flatMap((limit) => typeof limit === "object" ? [limit] : []);
	return [
		...miss(`${place}/step`, [check.step, check.begins], "steps"),
		...miss(`${place}/items`, [
			...readByName(check),
			check.until,
			...limits.flatMap((l) => [l.item, ...l.items ?? []])
		], "items"),
		...miss(`${place}/figure`, limits.map((l) => l.figure), "figures"),
		...miss(`${place}/switches`, [...check.switches?.on ?? [], ...check.switches?.off ?? []], "switches"),
		...heldFaults(miss, place, check, isTagged)
	];
}
function oneOfFaults(miss, one) {
	const place = `sheet/oneOf/${one.id}`;
	const items = one.groups.flatMap((group) => group.items);
	return [
		...miss(place, [one.step], "steps"),
		...miss(place, [one.holds], "coverings"),
		...miss(place, items, "items")
	];
}
/** Each symptom once, and each look at one check or one item. */
function callbackFaults(miss, sheet) {
	const checks = new Set(sheet.checks.map(({ id }) => id));
	return (sheet.callbacks ?? []).flatMap(({ symptom, cautions, look }, index, all) => {
		const place = `sheet/callbacks/${symptom}`;
		return [
			...all.findIndex((other) => other.symptom === symptom) < index ? [refuse("sheet-duplicate-name", place, { name: symptom }).refusal] : [],
			...miss(`${place}/cautions`, cautions, "cautions"),
			...look.flatMap(({ check, item }) => {
				if (check === void 0 === (item === void 0)) return [unknown(`${place}/look`, check ?? "")];
				if (check !== void 0) return checks.has(check) ? [] : [unknown(`${place}/look`, check)];
				return miss(`${place}/look`, [item], "items");
			})
		];
	});
}
/** Names that a sheet uses and does not define, and names defined twice. */
function nameFaults(sheet) {
	const known = listsOf(sheet);
	const miss = (place, names, list) => names.flatMap((name) => name === void 0 || known[list].has(name) ? [] : [unknown(place, name)]);
	const inGroups = new Set(sheet.oneOf.flatMap((one) => one.groups.flatMap((g) => g.items)));
	return [
		...duplicates({
			switches: sheet.switches,
			figures: sheet.figures,
			instruments: sheet.instruments,
			placings: sheet.placings,
			coverings: sheet.coverings,
			cautions: sheet.cautions,
			steps: sheet.steps,
			items: [
				...sheet.items,
				...sheet.checks,
				...sheet.tagSets
			],
			oneOf: sheet.oneOf,
			beforehand: sheet.beforehand ?? []
		}),
		...sheet.items.flatMap((item) => itemFaults(miss, item, inGroups.has(item.id))),
		...sheet.checks.flatMap((check) => checkFaults(miss, check, tagSetOf(sheet.items, check) !== void 0)),
		...sheet.tagSets.flatMap((set) => miss(`sheet/tagSets/${set.id}`, set.coverings, "coverings")),
		...sheet.steps.flatMap((step) => miss(`sheet/steps/${step.id}`, step.cautions, "cautions")),
		...sheet.coverings.flatMap((covering) => miss(`sheet/coverings/${covering.id}`, covering.cautions, "cautions")),
		...sheet.oneOf.flatMap((one) => oneOfFaults(miss, one)),
		...callbackFaults(miss, sheet),
		...(sheet.beforehand ?? []).flatMap((due) => miss(`sheet/beforehand/${due.id}`, due.steps, "steps"))
	];
}
// src/units/calendar.ts
var isLeapYear = (year) => year % 4 === 0 && year % 100 !== 0 || year % 400 === 0;
var monthDays = [
	31,
	28,
	31,
	30,
	31,
	30,
	31,
	31,
	30,
	31,
	30,
	31
];
var daysInMonth = (year, month) => month === 2 && isLeapYear(year) ? 29 : monthDays[month - 1] ?? 0;
/** Days from 1970-01-01 to the day, negative before it. Counted in years that begin in March, so that the leap day comes last. */
function dayNumber({ year, month, day }) {
	const marchYear = month > 2 ? year : year - 1;
	const marchMonth = (month + 9) % 12;
	const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
	return 365 * marchYear + leapDays + Math.floor((153 * marchMonth + 2) / 5) + day - 1 - 719468;
}
// src/units/rounding.ts
/** Nearest integer of numerator / denominator, half away from zero. The denominator is positive. */
function nearest(numerator, denominator) {
	const rounded = (2n * (numerator < 0n ? -numerator : numerator) + denominator) / (2n * denominator);
	return numerator < 0n ? -rounded : rounded;
}
// src/units/trade-units.ts
var exactly = (kind, numerator, denominator = 1n, shift = 0n) => ({
	kind,
	numerator,
	denominator,
	shift
});
/**
* The closed list of units that can be typed or printed. Exact factors: international inch and pound (1959), US gallon of
* 231 in³ (NIST SP 811 App. B), °F = °C × 9/5 + 32.
*/
var tradeUnits = {
	in: exactly("length", 25400n),
	ft: exactly("length", 304800n),
	mm: exactly("length", 1000n),
	cm: exactly("length", 10000n),
	m: exactly("length", 1000000n),
	"in²": exactly("area", 64516n, 10000n),
	"ft²": exactly("area", 9290304n, 10000n),
	"cm²": exactly("area", 1n),
	"m²": exactly("area", 10000n),
	gal: exactly("volume", 3785411784n, 1000000n),
	L: exactly("volume", 1000n),
	ml: exactly("volume", 1n),
	gpm: exactly("flow", 3785411784n, 1000000n),
	gph: exactly("flow", 3785411784n, 60000000n),
	"L/min": exactly("flow", 1000n),
	"L/h": exactly("flow", 1000n, 60n),
	"L/s": exactly("flow", 60000n),
	"m³/h": exactly("flow", 1000000n, 60n),
	"gph/in": exactly("flowPerLength", 3785411784n, 1524000n),
	"L/min/m": exactly("flowPerLength", 1000n),
	"ft/s": exactly("velocity", 3048n, 10n),
	"m/s": exactly("velocity", 1000n),
	mph: exactly("velocity", 44704n, 100n),
	"km/h": exactly("velocity", 1000000n, 3600n),
	"°": exactly("angle", 1000000n),
	"MJ/m²": exactly("radiation", 100n),
	"kWh/m²": exactly("radiation", 360n),
	s: exactly("duration", 1000n),
	min: exactly("duration", 60000n),
	h: exactly("duration", 3600000n),
	d: exactly("duration", 86400000n),
	"°F": exactly("temperature", 5000n, 9n, -32n),
	"°C": exactly("temperature", 1000n),
	W: exactly("power", 1000n),
	kW: exactly("power", 1000000n),
	V: exactly("voltage", 1000n),
	A: exactly("current", 1000n),
	lb: exactly("mass", 45359237n, 100000n),
	kg: exactly("mass", 1000n),
	g: exactly("mass", 1n),
	"1": exactly("count", 1n),
	"%": exactly("ratio", 10000n),
	ppm: exactly("ratio", 1n)
};
/** Graduations to the inch that a tape in inches has. */
var tapeMarks = [
	2,
	4,
	8,
	16,
	32,
	64
];
// src/units/quantities.ts
var metres = (n) => n;
/** Exact factors. International inch 0.0254 m (1959); US gallon 231 in³ = 3.785411784e-3 m³ (NIST SP 811 App. B). */
var METRES_PER_INCH = .0254;
var CUBIC_METRES_PER_GALLON = .14903196 * .0254;
var inches = (n) => metres(n * METRES_PER_INCH);
var feet = (n) => metres(n * 12 * METRES_PER_INCH);
var toInches = (m) => m / METRES_PER_INCH;
/** Nearest integer micrometre; half away from zero, so that a value and its mirror round alike. */
var toMicrometres = (m) => Math.sign(m) * Math.round(Math.abs(m) * 1e6);
/** The kinds of value that a reading or a design figure can have, and the fixed unit of the stored integer. */
var fixedUnits = {
	length: "um",
	area: "cm2",
	volume: "ml",
	flow: "ml/min",
	flowPerLength: "ml/min/m",
	velocity: "mm/s",
	angle: "udeg",
	radiation: "J/cm2",
	duration: "ms",
	instant: "ms",
	temperature: "mC",
	power: "mW",
	voltage: "mV",
	current: "mA",
	mass: "g",
	count: "1",
	ratio: "ppm"
};
var perSi = {
	length: 1e6,
	area: 1e4,
	volume: 1e6,
	flow: 6e7,
	flowPerLength: 6e7,
	velocity: 1e3,
	angle: 1e6,
	radiation: 1e-4,
	duration: 1e3,
	instant: 1e3,
	temperature: 1e3,
	power: 1e3,
	voltage: 1e3,
	current: 1e3,
	mass: 1e3,
	count: 1,
	ratio: 1e6
};
/** Fixed units in one SI unit of the kind (m, m², m³, m³/s, m²/s, m/s, degrees, J/m², s, °C, W, V, A, kg, 1). */
var fixedPerSi = (kind) => perSi[kind];
// src/doubt/figures.ts
var ownFigures = {
	laserSlope: inches(1 / 16) / feet(100),
	stringSlope: inches(1 / 4) / feet(10),
	spiritLevelSlope: 5e-4,
	receiver: {
		fine: inches(1 / 16),
		coarse: inches(1 / 8)
	},
	lineHeight: inches(1 / 8),
	distance: feet(50),
	closing: {
		fine: inches(3 / 16),
		coarse: inches(1 / 4)
	}
};
inches(0), inches(1 / 16), inches(1 / 16), inches(1 / 16), inches(1 / 4), inches(1 / 4), inches(1 / 2), inches(1 / 2);
// src/doubt/fit.ts
var partsOf = (figure) => typeof figure === "number" ? [] : [...figure.parts.values()];
function fault(figure, wanted, place) {
	const value = typeof figure === "number" ? figure : figure.value;
	if (![value, ...partsOf(figure)].every(Number.isFinite)) return refuse("number-not-finite", place).refusal;
	if (wanted === "positive" && value <= 0) return refuse("number-not-positive", place).refusal;
	if (wanted === "not negative" && value < 0) return refuse("number-not-positive", place).refusal;
	if (typeof wanted === "string" || value >= wanted[0] && value <= wanted[1]) return void 0;
	return refuse("reading-out-of-range", place, { found: value.toString() }).refusal;
}
/** The first figure that cannot be worked with, as a refusal at `place/name`. Absent figures are not looked at. */
function faultIn(place, figures) {
	for (const [name, [figure, wanted]] of Object.entries(figures)) {
		const found = figure === void 0 ? void 0 : fault(figure, wanted, `${place}/${name}`);
		if (found !== void 0) return found;
	}
}
/** The refusal as an outcome. */
var refused$1 = (refusal) => ({
	ok: false,
	refusal
});
/** One figure, refused at its own place; undefined where it is fit. */
function unfitAt(place, wanted, figure) {
	const found = fault(figure, wanted, place);
	return found && refused$1(found);
}
/** The same for figures that must all be alike. */
function unfit(place, wanted, figures) {
	const found = faultIn(place, Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, [figure, wanted]])));
	return found && refused$1(found);
}
var smallestFirst = (a, b) => Math.abs(a) - Math.abs(b) || a - b;
/** Up to here putting each term in its place is quicker than a sort, which is asked for thousands of times for a handful. */
var A_HANDFUL = 16;
function fromTheSmallest(terms) {
	if (terms.length > A_HANDFUL) return [...terms].sort(smallestFirst);
	const sorted = [];
	for (const term of terms) {
		let at = sorted.length;
		for (; at > 0 && smallestFirst(term, sorted[at - 1]) < 0; at -= 1) sorted[at] = sorted[at - 1];
		sorted[at] = term;
	}
	return sorted;
}
/** Sum that does not depend on the order of the terms: floats are not associative, and entries arrive in any order. */
function total(terms) {
	if (terms.length < 3) return 0 + (terms[0] ?? 0) + (terms[1] ?? 0);
	let sum = 0;
	for (const term of fromTheSmallest(terms)) sum += term;
	return sum;
}
var certain = (value) => ({
	value,
	parts: /* @__PURE__ */ new Map()
});
/** Σ times × of. Every other operation is this one; shared sources add with their signs, new ones stand beside each other. */
function combine(terms) {
	return {
		value: total(terms.map(({ times, of }) => times * of.value)),
		parts: terms.length < 3 ? partsOfTwo(terms) : partsOfMany(terms)
	};
}
/** Of one or two: each source is added once at most, whatever the order. */
function partsOfTwo(terms) {
	const parts = /* @__PURE__ */ new Map();
	for (const { times, of } of terms) for (const [source, part] of of.parts) parts.set(source, (parts.get(source) ?? 0) + times * part);
	for (const [source, part] of parts) if (part === 0) parts.delete(source);
	return parts;
}
function partsOfMany(terms) {
	const parts = /* @__PURE__ */ new Map();
	const shared = /* @__PURE__ */ new Map();
	for (const { times, of } of terms) for (const [source, part] of of.parts) {
		const own = times * part;
		const known = parts.get(source);
		const list = known === void 0 ? void 0 : shared.get(source);
		if (known === void 0) parts.set(source, own);
		else if (list === void 0) shared.set(source, [known, own]);
		else list.push(own);
	}
	for (const [source, list] of shared) parts.set(source, total(list));
	for (const [source, part] of parts) if (part === 0) parts.delete(source);
	return parts;
}
/** Adds standard uncertainty `u` (unit of the value) from `source`; a source it already has adds to itself, as one cause does. */
function withSource(x, source, u) {
	return combine([{
		times: 1,
		of: x
	}, {
		times: 1,
		of: {
			value: 0,
			parts: /* @__PURE__ */ new Map([[source, u]])
		}
	}]);
}
var add = (a, b) => combine([{
	times: 1,
	of: a
}, {
	times: 1,
	of: b
}]);
var subtract = (a, b) => combine([{
	times: 1,
	of: a
}, {
	times: -1,
	of: b
}]);
var scale = (x, factor) => combine([{
	times: factor,
	of: x
}]);
/** The value without its sign; the doubt keeps its size. For limits that hold either way ('out of level at most ...'). */
var magnitude = (x) => x.value < 0 ? scale(x, -1) : x;
var mean = (list) => combine(list.map((of) => ({
	times: 1 / list.length,
	of
})));
/** Root of the sum of squares of the parts, unit of the value. Only + × and a square root: the same in every engine. */
function standardUncertainty(x) {
	const squares = [];
	for (const part of x.parts.values()) squares.push(part * part);
	return Math.sqrt(total(squares));
}
/** That of a − b, to the last bit what `subtract` would have: what both share cancels. For a comparison that wants the doubt alone. */
function uncertaintyOfDifference(a, b) {
	const squares = [];
	for (const [source, part] of a.parts) {
		const left = part - (b.parts.get(source) ?? 0);
		squares.push(left * left);
	}
	for (const [source, part] of b.parts) if (!a.parts.has(source)) squares.push(part * part);
	return Math.sqrt(total(squares));
}
/** U = 2 u, unit of the value. */
var expanded = (x) => 2 * standardUncertainty(x);
/** Standard uncertainty of something anywhere in ± `halfWidth` with equal chance (GUM 4.3.7, from memory). */
var rectangular = (halfWidth) => halfWidth / Math.sqrt(3);
/** Standard uncertainty of reading to the nearest `step`: half a step either side (GUM F.2.2.1, from memory). */
var resolutionUncertainty = (step) => step / (2 * Math.sqrt(3));
// src/doubt/propagation.ts
/**
* First-order propagation for what is not a plain sum (GUM 5.1.2, from memory): y = f(x1, x2, ...), its part from each source
* is Σ ∂f/∂xi × the part of xi, so that a source which two inputs share counts once and with its sign. Terms: slope × input.
*/
var firstOrder = (value, terms) => ({
	value,
	parts: combine(terms).parts
});
/** a × b. */
var product = (a, b) => firstOrder(a.value * b.value, [{
	times: b.value,
	of: a
}, {
	times: a.value,
	of: b
}]);
/** a ÷ b; b is not zero. */
var quotient = (a, b) => firstOrder(a.value / b.value, [{
	times: 1 / b.value,
	of: a
}, {
	times: -a.value / (b.value * b.value),
	of: b
}]);
/**
* f of several inputs, each slope taken as {f(x + u) - f(x - u)} / 2u (GUM 5.1.4 note, from memory). For formulas with powers
* and exponentials, never for a check that holds. `of` must have an answer within one standard uncertainty of each input.
*/
function throughSteps(inputs, of) {
	const names = Object.keys(inputs);
	const at = Object.fromEntries(names.map((name) => [name, inputs[name].value]));
	const terms = names.flatMap((name) => {
		const u = standardUncertainty(inputs[name]);
		if (u === 0) return [];
		return [{
			times: (of({
				...at,
				[name]: at[name] + u
			}) - of({
				...at,
				[name]: at[name] - u
			})) / (2 * u),
			of: inputs[name]
		}];
	});
	return firstOrder(of(at), terms);
}
// src/doubt/sources.ts
/** What makes a reading doubtful. The first four are new at each reading; the last three belong to a set-up where one is named. */
var sourceRoles = [
	"resolution",
	"placing",
	"receiver",
	"slope",
	"line",
	"permitted-error",
	"vial"
];
var ofReading = (reading, role) => `reading:${reading}/${role}`;
var ofSetUp = (setUp, role) => `set-up:${setUp}/${role}`;
var belongsToReading = (source) => source.startsWith("reading:");
var roles = new Set(sourceRoles);
var isRole = (name) => roles.has(name);
/** The role of a source that `ofReading` or `ofSetUp` named; undefined for any other. */
function roleOfSource(source) {
	const name = source.slice(source.lastIndexOf("/") + 1);
	return isRole(name) ? name : void 0;
}
var byCode = (a, b) => a < b ? -1 : a > b ? 1 : 0;
function largestFirst(squares, whole, count) {
	return [...squares].map(([source, square]) => ({
		source,
		u: Math.sqrt(square),
		share: square / (whole * whole)
	})).sort((a, b) => b.u - a.u || byCode(a.source, b.source)).slice(0, count);
}
/** The `count` sources that bring the most doubt, largest first; equal ones in the order of their names. */
function contributors$1(x, count = 3) {
	return largestFirst(new Map([...x.parts].map(([source, part]) => [source, part * part])), standardUncertainty(x), count);
}
/** The same by role over all readings, for saying what would settle a verdict (a finer receiver, a harder place to stand on). */
function contributingRoles(x, count = 3) {
	const squares = /* @__PURE__ */ new Map();
	for (const [source, part] of x.parts) {
		const role = roleOfSource(source);
		const known = role && squares.get(role);
		if (known) known.push(part * part);
		else if (role) squares.set(role, [part * part]);
	}
	return largestFirst(new Map([...squares].map(([role, list]) => [role, total(list)])), standardUncertainty(x), count);
}
// src/doubt/tapes.ts
/** Accuracy classes of OIML R 35 (the same in 2004/22/EC MI-008): permitted error a + b L, in mm and mm per metre. */
var tapeClasses = {
	I: {
		a: .1,
		b: .1
	},
	II: {
		a: .3,
		b: .2
	},
	III: {
		a: .6,
		b: .4
	}
};
/**
* Permitted error of a tape at `length` metres, as a half-width in metres. L is rounded up to the next whole metre.
* The length counts without its sign; less than a metre counts as one.
*/
function tapePermittedError(length, tapeClass = "II") {
	const { a, b } = tapeClasses[tapeClass];
	return (a + b * Math.max(1, Math.ceil(Math.abs(length) - 1e-9))) / 1e3;
}
feet(6), inches(1 / 32), feet(30), inches(1 / 16), feet(55), inches(1 / 8), feet(80), inches(3 / 16), feet(100), inches(1 / 4);
// src/doubt/reading.ts
var slopeOf = (kind, figures) => kind === "laser" ? figures.laserSlope : kind === "spirit level" ? figures.spiritLevelSlope : figures.stringSlope;
function vialSign(line) {
	if (line.kind !== "spirit level" || line.lay === "both ways") return 0;
	return line.lay === "turned" ? -1 : 1;
}
/** Half-widths, signed, that the line brings. */
function lineHalfWidths(line, figures) {
	const atPlace = slopeOf(line.kind, figures) * (line.distance ?? figures.distance);
	if (line.kind === "spirit level") return [["vial", vialSign(line) * atPlace]];
	return [
		["receiver", line.kind === "laser" ? figures.receiver[line.receiver] : 0],
		["slope", atPlace],
		["line", figures.lineHeight]
	];
}
var shared = /* @__PURE__ */ new Set([
	"line",
	"permitted-error",
	"vial"
]);
function unfitSize(name, size) {
	if (!Number.isFinite(size)) return refuse("number-not-finite", `reading/${name}`).refusal;
	return size < 0 ? refuse("number-not-positive", `reading/${name}`).refusal : void 0;
}
/**
* One reading with its doubt, metres. New with every reading: resolution, placing, receiver, slope of the line × distance.
* Once per set-up, hence without effect on differences within it: height of the line, permitted error, the vial's error.
* Refuses numbers that are not finite, and negative steps, half-widths and distances.
*/
function readingUncertainty(circumstances, figures = ownFigures) {
	const { reading, setUp, value, resolution, placingHalfWidth, instrument, line } = circumstances;
	if (!Number.isFinite(value)) return refuse("number-not-finite", "reading/value");
	const permittedError = instrument?.permittedErrorHalfWidth ?? tapePermittedError(value);
	const distance = line?.distance ?? 0;
	const fault = unfitSize("resolution", resolution) ?? unfitSize("placingHalfWidth", placingHalfWidth) ?? unfitSize("permittedErrorHalfWidth", permittedError) ?? unfitSize("distance", distance);
	if (fault) return {
		ok: false,
		refusal: fault
	};
	const parts = /* @__PURE__ */ new Map();
	const bring = (role, u) => {
		if (u !== 0) parts.set(setUp !== void 0 && shared.has(role) ? ofSetUp(setUp, role) : ofReading(reading, role), u);
	};
	bring("resolution", resolutionUncertainty(resolution));
	bring("placing", rectangular(placingHalfWidth));
	bring("permitted-error", rectangular(permittedError));
	if (line) for (const [role, halfWidth] of lineHalfWidths(line, figures)) bring(role, rectangular(halfWidth));
	return ok({
		value: 0 + value,
		parts
	});
}
// src/doubt/repeated.ts
/** A bound is rounded up, that a difference of exactly 3/16 in (4762.5 µm) agrees with a bound of 3/16 in; past the floats' own dust. */
var boundInMicrometres = (bound) => Math.ceil(bound * 1e6 - 1e-6);
function agreement(first, second, allowed) {
	const difference = toMicrometres(metres(Math.abs(second.value - first.value)));
	const bound = boundInMicrometres(allowed);
	return {
		agrees: difference <= bound,
		difference,
		allowed: bound
	};
}
/** Whether two readings of one point agree within the expanded doubt of their difference. */
var agreeWithinDoubt = (a, b) => agreement(a, b, 2 * uncertaintyOfDifference(b, a));
/**
* Whether a set-up closes: the first and the last reading of the height mark agree within 3/16 in (receiver on fine) or
* 1/4 in (coarse), own figures; without a receiver (string, water level) within the expanded doubt of their difference.
*/
function setUpCloses(first, last, receiver, figures = ownFigures) {
	return receiver === void 0 ? agreeWithinDoubt(first, last) : agreement(first, last, figures.closing[receiver]);
}
/** The role of a source that is named anew at each reading, and is the same each time. */
function roleThatRepeats(source) {
	if (!belongsToReading(source)) return void 0;
	const role = roleOfSource(source);
	return role === "resolution" || role === "placing" ? void 0 : role;
}
/**
* The mean of several readings of one point. What differs by chance each time (resolution, placing) goes down with √n. The
* receiver's threshold and the line's slope are named anew at each reading but repeat at one point, so they stay whole:
* they are gathered under the first of their names, so that another point's stay apart from them.
*/
function meanAtOnePoint(list) {
	const plain = mean(list);
	const parts = new Map(plain.parts);
	const whole = /* @__PURE__ */ new Map();
	for (const x of list) for (const [source, part] of x.parts) {
		const role = roleThatRepeats(source);
		if (role === void 0 || list.every((other) => other.parts.has(source))) continue;
		parts.delete(source);
		const known = whole.get(role);
		if (known === void 0) whole.set(role, {
			name: source,
			sizes: [Math.abs(part)]
		});
		else {
			known.sizes.push(Math.abs(part));
			if (source < known.name) known.name = source;
		}
	}
	for (const { name, sizes } of whole.values()) parts.set(name, Math.sign(plain.parts.get(name) ?? 1) * total(sizes) / list.length);
	return {
		value: plain.value,
		parts
	};
}
/** Several readings of one point (those not corrected) as one. */
function repeated(list) {
	const [first, second, ...further] = list;
	const asksForThird = second !== void 0 && further.length === 0 && !agreeWithinDoubt(first, second).agrees;
	return {
		mean: meanAtOnePoint(list),
		asksForThird
	};
}
// src/geometry/cholesky.ts
/** Lower factor of a symmetric positive definite matrix; its diagonal is not a number where the matrix is not positive definite. */
function choleskyOf(matrix) {
	const factor = [];
	for (const [i, row] of matrix.entries()) {
		const line = [];
		for (let j = 0; j <= i; j++) {
			const earlier = j === i ? line : factor[j] ?? [];
			const known = [];
			for (let k = 0; k < j; k++) known.push(line[k] * (earlier[k] ?? 0));
			const rest = (row[j] ?? 0) - total(known);
			line.push(j === i ? Math.sqrt(rest) : rest / (earlier[j] ?? 1));
		}
		factor.push(line);
	}
	return factor;
}
/** Solves a x = b for a symmetric positive definite matrix by its Cholesky factor. */
function solve(factor, b) {
	const at = (i, j) => factor[i]?.[j] ?? 0;
	const half = [];
	for (let i = 0; i < b.length; i++) {
		const known = [];
		for (let j = 0; j < i; j++) known.push(at(i, j) * half[j]);
		half.push((b[i] - total(known)) / at(i, i));
	}
	const x = half.map(() => 0);
	for (let i = half.length - 1; i >= 0; i--) {
		const known = [];
		for (let j = i + 1; j < x.length; j++) known.push(at(j, i) * x[j]);
		x[i] = (half[i] - total(known)) / at(i, i);
	}
	return x;
}
var dot = (a, b) => total(a.map((value, i) => value * (b[i] ?? 0)));
/** Spread across the places over spread along them, below which they are in one line (own). */
var COLLINEAR_BELOW = .01;
/** Height of a place under the level line of its set-up: the rod hangs or stands down from the line. */
var heightFromRod = (rodReading) => scale(rodReading, -1);
var square$2 = (n) => n * n;
/** Places that can carry a plane: at least `least`, finite, no two in one spot. */
function checkPlaces(places, least) {
	if (places.length < least) return refuse("points-too-few", "points", {
		taken: places.length,
		least
	});
	for (const [i, place] of places.entries()) {
		const [x, y, height] = [
			place.x,
			place.y,
			place.height
		].map((figure) => unfitAt(`points/${i}`, "finite", figure));
		const bad = x ?? y ?? height;
		if (bad) return bad;
		const twin = places.findIndex((other, j) => j < i && square$2(other.x - place.x) + square$2(other.y - place.y) < square$2(.01));
		if (twin >= 0) return refuse("points-coincident", `points/${i}`, {
			first: twin + 1,
			second: i + 1
		});
	}
	return ok(places);
}
// src/geometry/fourth-place.ts
var square$1 = (n) => n * n;
/** Twice the signed area of a triangle in plan, and whether it is a line. */
function triangle(p, q, r) {
	const area = (q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y);
	const longest = Math.max(square$1(q.x - p.x) + square$1(q.y - p.y), square$1(r.x - q.x) + square$1(r.y - q.y), square$1(p.x - r.x) + square$1(p.y - r.y));
	return {
		area,
		flat: Math.abs(area) < COLLINEAR_BELOW * longest
	};
}
/**
* How far a fourth place of a rim lies off the plane of the other three, metres, signed: the gap under the corner that rocks.
* Four places in order around. At the corners of a rectangle or the quarter points of a circle it is z1 − z2 + z3 − z4,
* whichever the fourth is; elsewhere the gap depends on which, and the largest of the four is given. Positive when the first
* place stands high; tilt does not enter. Refuses other than four places, two in one spot, three in one line.
*/
function fourthPlace(places) {
	const checked = checkPlaces(places, 4);
	if (!checked.ok) return checked;
	if (places.length > 4) return refuse("points-too-many", "points", {
		taken: places.length,
		most: 4
	});
	const [p, q, r, s] = places;
	const others = [
		triangle(q, r, s),
		triangle(p, r, s),
		triangle(p, q, s),
		triangle(p, q, r)
	];
	if (others.some(({ flat }) => flat)) return refuse("points-collinear", "points");
	const weights = others.map(({ area }, i) => i % 2 === 0 ? area : -area);
	const least = Math.min(...weights.map(Math.abs));
	const unit = Math.sign(weights[0] ?? 1) * least;
	return ok(combine([
		p,
		q,
		r,
		s
	].map(({ height }, i) => ({
		times: (weights[i] ?? 0) / unit,
		of: height
	}))));
}
// src/geometry/plane.ts
/** Square root of the ratio of the two principal spreads. */
function conditioningOf({ xx, xy, yy }) {
	const determinant = xx * yy - xy * xy;
	const largest = (xx + yy + Math.sqrt((xx - yy) * (xx - yy) + 4 * xy * xy)) / 2;
	return determinant <= 0 ? 0 : Math.sqrt(determinant) / largest;
}
function fitted(places) {
	const checked = checkPlaces(places, 3);
	if (!checked.ok) return checked;
	const n = places.length;
	const x0 = total(places.map(({ x }) => x)) / n;
	const y0 = total(places.map(({ y }) => y)) / n;
	const offsets = places.map(({ x, y, height }) => ({
		dx: x - x0,
		dy: y - y0,
		height
	}));
	const scatter = {
		xx: total(offsets.map(({ dx }) => dx * dx)),
		xy: total(offsets.map(({ dx, dy }) => dx * dy)),
		yy: total(offsets.map(({ dy }) => dy * dy))
	};
	const conditioning = conditioningOf(scatter);
	if (conditioning < .01) return refuse("points-collinear", "points");
	const { xx, xy, yy } = scatter;
	const determinant = xx * yy - xy * xy;
	const b = combine(offsets.map(({ dx, dy, height }) => ({
		times: (yy * dx - xy * dy) / determinant,
		of: height
	})));
	const c = combine(offsets.map(({ dx, dy, height }) => ({
		times: (xx * dy - xy * dx) / determinant,
		of: height
	})));
	const middle = combine(places.map(({ height }) => ({
		times: 1 / n,
		of: height
	})));
	return ok({
		plane: {
			a: subtract(middle, combine([{
				times: x0,
				of: b
			}, {
				times: y0,
				of: c
			}])),
			b,
			c
		},
		offsets,
		middle,
		conditioning
	});
}
/** The plane alone, where nobody asks how far the places lie off it. Refuses as `fitPlane` does. */
function planeThrough(places) {
	const fit = fitted(places);
	return fit.ok ? ok(fit.value.plane) : fit;
}
/** Rise from one end to the other over `extent` metres along x and along y. */
var risesAcross = ({ b, c }, extentX, extentY) => ({
	x: scale(b, extentX),
	y: scale(c, extentY)
});
// src/geometry/level.ts
/** How far a point went up (positive) or down since it was first read, metres; both heights over the same height mark. */
var movedSince = (before, after) => subtract(after, before);
/**
* A lip's end-to-end difference, metres: the mean of the gap under the low end and the gap after turning the level end for end,
* each signed by which end of the lip was low (the same end positive both times). The level's own error drops out.
*/
var lipOutOfLevel = (gaps) => mean(gaps);
// src/geometry/set-out-heights.ts
/** Places that are set out by rod, from the lowest up as they are worked. */
var setOutPlaces = [
	"dug bottom",
	"top of bed",
	"rim",
	"wall fitting",
	"spillway lip",
	"liner edge"
];
var sizes = [
	"basinHeight",
	"bedThickness",
	"fittingBelowRim",
	"linerEdgeOverLip"
];
/** Signed figures that add up to each place's height over finished grade. */
var madeOf = {
	"dug bottom": [
		[-1, "rimBelowGrade"],
		[-1, "basinHeight"],
		[-1, "bedThickness"]
	],
	"top of bed": [[-1, "rimBelowGrade"], [-1, "basinHeight"]],
	rim: [[-1, "rimBelowGrade"]],
	"wall fitting": [[-1, "rimBelowGrade"], [-1, "fittingBelowRim"]],
	"spillway lip": [[1, "lipOverGrade"]],
	"liner edge": [[1, "lipOverGrade"], [1, "linerEdgeOverLip"]]
};
/** The heights over finished grade that a design leads to. Refuses figures that are not finite, and sizes below zero. */
function heightsFromDesign(design, limits = {}) {
	for (const [figure, value] of Object.entries(design)) {
		if (!Number.isFinite(value)) return refuse("number-not-finite", `design/${figure}`);
		if (value < 0 && sizes.some((size) => size === figure)) return refuse("number-not-positive", `design/${figure}`);
	}
	const heights = [];
	const missing = [];
	for (const place of setOutPlaces) {
		const figures = madeOf[place].flatMap(([, figure]) => design[figure] === void 0 ? [figure] : []);
		if (figures.length > 0) missing.push({
			place,
			figures
		});
		else {
			const aim = madeOf[place].reduce((height, [sign, figure]) => height + sign * (design[figure] ?? 0), 0);
			heights.push({
				place,
				over: "finished grade",
				aim,
				...limits[place]
			});
		}
	}
	return ok({
		heights,
		missing
	});
}
// src/geometry/ties-chi-square.ts
/** Chi-square that is exceeded in 5 cases of 100, by degrees of freedom from 1 (NIST/SEMATECH e-Handbook 1.3.6.7.4). */
var CHI_SQUARE_95 = [
	3.841459,
	5.991465,
	7.814728,
	9.487729,
	11.070498,
	12.591587,
	14.06714,
	15.507313,
	16.918978,
	18.307038
];
var ELLIPSE_95_SQUARED = CHI_SQUARE_95[1];
/** Two degrees of freedom are used up by x and y. */
var MOST_TIES = CHI_SQUARE_95.length + 2;
var inMillionths = (n) => Math.round(n * 1e6);
function consistencyOf(chiSquare, residuals) {
	const degreesOfFreedom = residuals.length - 2;
	const limit = CHI_SQUARE_95[degreesOfFreedom - 1];
	if (limit === void 0) return void 0;
	const [found, most] = [inMillionths(chiSquare), inMillionths(limit)];
	const agrees = found <= most;
	const plain = {
		chiSquare: found,
		most,
		degreesOfFreedom,
		agrees
	};
	if (agrees || degreesOfFreedom < 2) return plain;
	const worst = residuals.map(({ mark, residual }) => ({
		mark,
		size: Math.abs(residual.value) / standardUncertainty(residual)
	})).reduce((a, b) => b.size > a.size ? b : a);
	return {
		...plain,
		suspect: worst.mark
	};
}
// src/geometry/ties-plan.ts
var planVector = ({ x, y }) => ({
	x: x.value,
	y: y.value
});
var apart = (a, b) => Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
/** Which side of the line `from` → `to` a place lies; on the line counts as left. */
var sideOf$1 = (from, to, at) => (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x) >= 0 ? "left" : "right";
/** Distance of two points in plan with its doubt, metres; to first order, hence refused for points in one spot. */
function planDistance(a, b) {
	const [bad] = [
		a.x,
		a.y,
		b.x,
		b.y
	].flatMap((figure) => unfitAt("points", "finite", figure) ?? []);
	if (bad) return bad;
	const length = apart(planVector(a), planVector(b));
	if (!Number.isFinite(length)) return refuse("number-not-finite", "points");
	if (length === 0) return refuse("points-coincident", "points", {
		first: 1,
		second: 2
	});
	const [ux, uy] = [(b.x.value - a.x.value) / length, (b.y.value - a.y.value) / length];
	return ok(firstOrder(length, [
		{
			times: ux,
			of: b.x
		},
		{
			times: uy,
			of: b.y
		},
		{
			times: -ux,
			of: a.x
		},
		{
			times: -uy,
			of: a.y
		}
	]));
}
/** √5.99146: from the standard ellipse to the one that holds the point in 95 cases of 100 (two dimensions). */
var ELLIPSE_95 = Math.sqrt(ELLIPSE_95_SQUARED);
/** Covariance of two values over the sources that they share, product of their units. */
function covariance$1(a, b) {
	const products = [];
	for (const [source, part] of a.parts) {
		const other = b.parts.get(source);
		if (other !== void 0) products.push(part * other);
	}
	return total(products);
}
/** Only + − × ÷ and square roots: the axis comes as a vector, not as an angle. Never refuses; a certain point has no axes. */
function errorEllipse({ x, y }) {
	const [xx, xy, yy] = [
		covariance$1(x, x),
		covariance$1(x, y),
		covariance$1(y, y)
	];
	const spread = Math.sqrt((xx - yy) / 2 * ((xx - yy) / 2) + xy * xy);
	const largest = (xx + yy) / 2 + spread;
	if (largest === 0) return {
		semiMajor: 0,
		semiMinor: 0,
		direction: {
			x: 1,
			y: 0
		}
	};
	const along = xx >= yy ? {
		x: (xx - yy) / 2 + spread,
		y: xy
	} : {
		x: xy,
		y: (yy - xx) / 2 + spread
	};
	const length = Math.sqrt(along.x * along.x + along.y * along.y);
	const round = length <= largest * 1e-12;
	const up = along.y < 0 || along.y === 0 && along.x < 0 ? -1 : 1;
	return {
		semiMajor: Math.sqrt(largest),
		semiMinor: Math.sqrt(Math.max(0, (xx * yy - xy * xy) / largest)),
		direction: round ? {
			x: 1,
			y: 0
		} : {
			x: up * along.x / length,
			y: up * along.y / length
		}
	};
}
// src/geometry/ties-crossing.ts
/** cos² 30° = 3/4 (own bound). Compared as squares, so that no cosine enters. */
var POOR_COSINE_SQUARED = 3 / 4;
/** Terms of the series, enough for an argument below 0.2. */
var TERMS = 10;
/** Arc tangent of x ≥ 0, radians, by halving the angle three times: + − × ÷ and square roots only, alike in every engine. */
function arcTangent(x) {
	const halved = [
		1,
		2,
		3
	].reduce((t) => t / (1 + Math.sqrt(1 + t * t)), x);
	let [sum, power] = [0, halved];
	for (let k = 0; k < TERMS; k++) {
		sum += (k % 2 === 0 ? power : -power) / (2 * k + 1);
		power *= halved * halved;
	}
	return 8 * sum;
}
/** Angle between two directions, degrees, 0 to 180. */
function degreesBetween(u, v) {
	const [dot, cross] = [u.x * v.x + u.y * v.y, Math.abs(u.x * v.y - u.y * v.x)];
	const length = Math.sqrt(dot * dot + cross * cross);
	if (length + dot <= length * 1e-15) return 180;
	return 2 * arcTangent(cross / (length + dot)) * 180 / Math.PI;
}
/** How two marks see a place. A place on one of the marks has no crossing: sine 0. */
function crossingAt(first, second, at) {
	const [u, v] = [first, second].map((mark) => ({
		x: at.x - mark.x.value,
		y: at.y - mark.y.value
	}));
	const squares = (u.x * u.x + u.y * u.y) * (v.x * v.x + v.y * v.y);
	const names = {
		first: first.name,
		second: second.name
	};
	if (squares === 0) return {
		...names,
		degrees: 0,
		sine: 0,
		poor: true
	};
	const dot = u.x * v.x + u.y * v.y;
	const cross = Math.abs(u.x * v.y - u.y * v.x);
	return {
		...names,
		degrees: Math.round(degreesBetween(u, v)),
		sine: cross / Math.sqrt(squares),
		poor: dot * dot > POOR_COSINE_SQUARED * squares
	};
}
var pairsOf = (list) => list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b]));
/** All pairs of marks as they see a point, the best crossing first: which two to measure from, before the crew leaves. */
function crossings$1(marks, at) {
	const place = typeof at.x === "number" ? at : planVector(at);
	return pairsOf(marks).map(([first, second]) => crossingAt(first, second, place)).sort((a, b) => b.sine - a.sine);
}
// src/geometry/ties-meet.ts
/** Rounding of the floats must not part two distances that just meet. Metres. */
var FLOAT_DUST = 1e-9;
/** Of the distance of the marks and the two ties, one longer than the other two together. */
var signsOfMiss = [
	[
		1,
		-1,
		-1
	],
	[
		-1,
		1,
		-1
	],
	[
		-1,
		-1,
		1
	]
];
/**
* Two circles about two marks. Too short together: the miss is the gap between them. One far longer: the gap that the shorter
* leaves to it. The half chord by Heron's product, which loses nothing when the two only just meet.
*/
function meetingOf(first, second) {
	const between = planDistance(first.mark, second.mark);
	if (!between.ok) return between;
	const three = [
		between.value,
		first.distance,
		second.distance
	];
	const [d, r, s] = [
		three[0].value,
		three[1].value,
		three[2].value
	];
	const missed = signsOfMiss.find(([a, b, c]) => total([
		a * d,
		b * r,
		c * s
	]) > FLOAT_DUST);
	if (missed) return ok({
		kind: "miss",
		miss: combine(three.map((of, i) => ({
			times: missed[i] ?? 0,
			of
		})))
	});
	const chord = Math.sqrt(Math.max(0, (r + s - d) * (r + s + d) * (d - r + s) * (d + r - s))) / (2 * d);
	const along = (d + (r - s) * (r + s) / d) / 2;
	const [a, b] = [planVector(first.mark), planVector(second.mark)];
	const unit = {
		x: (b.x - a.x) / d,
		y: (b.y - a.y) / d
	};
	const at = (h) => ({
		x: a.x + along * unit.x - h * unit.y,
		y: a.y + along * unit.y + h * unit.x
	});
	return ok({
		kind: "meet",
		left: at(chord),
		right: at(-chord),
		sine: d * chord / (r * s)
	});
}
// src/geometry/ties-solve.ts
/** No tape is better than this (own): keeps the weights finite where a doubt is nil or wholly shared. Metres. */
var LEAST_DOUBT = 1e-4;
var MOST_STEPS = 40;
var SETTLED_WITHIN = 1e-9;
function inRows$1(ties) {
	const sources = [...new Set(ties.flatMap(({ mark, distance }) => [
		distance,
		mark.x,
		mark.y
	].flatMap(({ parts }) => [...parts.keys()])))];
	const row = ({ parts }) => sources.map((source) => parts.get(source) ?? 0);
	return {
		sources,
		ties: ties.map((tied) => ({
			tied,
			row: {
				distance: row(tied.distance),
				x: row(tied.mark.x),
				y: row(tied.mark.y)
			}
		}))
	};
}
function fromRow(sources, row) {
	const parts = /* @__PURE__ */ new Map();
	for (const [i, part] of row.entries()) if (part !== 0) parts.set(sources[i], part);
	return parts;
}
/** Σ times × row, source by source. Most sources stand in one or two rows of several: only what is there is summed. */
function combined(terms) {
	const row = [];
	for (let i = 0; i < (terms[0]?.of.length ?? 0); i++) {
		const there = [];
		for (const { times, of } of terms) if (of[i] !== 0) there.push(times * of[i]);
		row.push(total(there));
	}
	return row;
}
/** Covariance of two values over the sources that they share. */
function covariance(a, b) {
	const products = [];
	for (let i = 0; i < a.length; i++) if (a[i] !== 0 && b[i] !== 0) products.push(a[i] * b[i]);
	return total(products);
}
function seenFrom(at, { ties }) {
	const lines = ties.map(({ tied: { mark, distance }, row }) => {
		const [dx, dy] = [at.x - mark.x.value, at.y - mark.y.value];
		const length = Math.sqrt(dx * dx + dy * dy);
		const unit = {
			x: dx / length,
			y: dy / length
		};
		const doubt = combined([
			{
				times: 1,
				of: row.distance
			},
			{
				times: unit.x,
				of: row.x
			},
			{
				times: unit.y,
				of: row.y
			}
		]);
		return {
			length,
			unit,
			misclosure: distance.value - length,
			doubt
		};
	});
	if (!lines.every(({ length }) => Number.isFinite(length) && length > 0)) return void 0;
	return {
		units: lines.map(({ unit }) => unit),
		misclosures: lines.map(({ misclosure }) => misclosure),
		doubts: lines.map(({ doubt }) => doubt)
	};
}
/** Its lower half, which is all that a Cholesky factor is made of. */
var jointCovariance = (doubts) => doubts.map((a, i) => doubts.slice(0, i + 1).map((b, j) => covariance(a, b) + (i === j ? LEAST_DOUBT * LEAST_DOUBT : 0)));
function weigh({ units, misclosures, doubts }) {
	const factor = choleskyOf(jointCovariance(doubts));
	const [xs, ys] = [units.map(({ x }) => x), units.map(({ y }) => y)];
	const [wx, wy] = [solve(factor, xs), solve(factor, ys)];
	const [xx, xy, yy] = [
		dot(xs, wx),
		dot(xs, wy),
		dot(ys, wy)
	];
	const determinant = xx * yy - xy * xy;
	if (!(determinant > 1e-12 * xx * yy) || !Number.isFinite(determinant)) return void 0;
	return {
		gainX: wx.map((w, i) => (yy * w - xy * (wy[i] ?? 0)) / determinant),
		gainY: wx.map((w, i) => (xx * (wy[i] ?? 0) - xy * w) / determinant),
		chiSquare: Math.max(0, dot(misclosures, solve(factor, misclosures)))
	};
}
/**
* Place by generalised least squares from a first guess, Gauss-Newton, at most 40 steps; undefined where it does not settle or
* the marks all lie in one line with it. The weights are the inverse of the joint covariance of the ties, with the marks' own
* doubts along the lines, so that what the ties share (one tape, one mark) is counted once; the doubt of the place follows from
* the same sources and cancels against whatever else rests on them. + − × ÷ and square roots only.
*/
function solveTies(ties, guess) {
	const rows = inRows$1(ties);
	let at = guess;
	for (let step = 0; step < MOST_STEPS; step++) {
		const seen = seenFrom(at, rows);
		const weighted = seen && weigh(seen);
		if (!seen || !weighted) return void 0;
		const move = {
			x: dot(weighted.gainX, seen.misclosures),
			y: dot(weighted.gainY, seen.misclosures)
		};
		at = {
			x: at.x + move.x,
			y: at.y + move.y
		};
		if (move.x * move.x + move.y * move.y <= SETTLED_WITHIN * SETTLED_WITHIN) return solutionAt(at, rows);
	}
}
function solutionAt(at, rows) {
	const seen = seenFrom(at, rows);
	const weighted = seen && weigh(seen);
	if (!seen || !weighted) return void 0;
	const shift = (gain) => combined(seen.doubts.map((of, i) => ({
		times: gain[i] ?? 0,
		of
	})));
	const [dx, dy] = [shift(weighted.gainX), shift(weighted.gainY)];
	const partsOf = (row) => fromRow(rows.sources, row);
	const residuals = rows.ties.map(({ tied }, i) => {
		const unit = seen.units[i];
		const left = combined([
			{
				times: 1,
				of: seen.doubts[i]
			},
			{
				times: -unit.x,
				of: dx
			},
			{
				times: -unit.y,
				of: dy
			}
		]);
		return {
			mark: tied.mark.name,
			residual: {
				value: seen.misclosures[i],
				parts: partsOf(left)
			}
		};
	});
	return {
		point: {
			x: {
				value: at.x,
				parts: partsOf(dx)
			},
			y: {
				value: at.y,
				parts: partsOf(dy)
			}
		},
		residuals,
		chiSquare: weighted.chiSquare
	};
}
/** A mirror place whose chi-square is worse by more than this is ruled out by the ties: odds of about 90 to 1 (own). */
var RULED_OUT_BEYOND = 9;
/**
* Of more than two ties a pair may miss by this many times its expanded doubt before it is refused (own): honest work in line
* with two marks misses by a little half of the time, and up to here the fit tells better.
*/
var MISS_BEYOND = 2;
/** Two places nearer than this are one, metres. */
var SAME_WITHIN$1 = 1e-6;
function tiedMarks(marks, ties) {
	if (ties.length < 2) return refuse("ties-too-few", "ties", {
		taken: ties.length,
		least: 2
	});
	if (ties.length > MOST_TIES) return refuse("points-too-many", "ties", {
		taken: ties.length,
		most: MOST_TIES
	});
	for (const { mark, distance } of ties) {
		const place = `ties/${mark}`;
		if (!marks.some(({ name }) => name === mark)) return refuse("ties-mark-unknown", place, { mark });
		if (ties.filter((tie) => tie.mark === mark).length > 1) return refuse("ties-mark-twice", place, { mark });
		const bad = unfitAt(place, "positive", distance);
		if (bad) return bad;
	}
	return ok(marks.flatMap((mark) => ties.filter((tie) => tie.mark === mark.name).map(({ distance }) => ({
		mark,
		distance
	}))));
}
/** The pair that crosses best, to start from. Refuses two distances that cannot meet: of more than two, far beyond their doubt. */
function baseOf(ties) {
	const bases = [];
	for (const [first, second] of pairsOf(ties)) {
		const meeting = meetingOf(first, second);
		if (!meeting.ok) return meeting;
		const found = meeting.value;
		if (found.kind === "meet") bases.push({
			first,
			second,
			meeting: found
		});
		else if (ties.length === 2 || found.miss.value > MISS_BEYOND * expanded(found.miss)) {
			const figures = {
				first: first.mark.name,
				second: second.mark.name,
				miss: toMicrometres(metres(found.miss.value))
			};
			return refuse("ties-cannot-meet", `ties/${second.mark.name}`, figures);
		}
	}
	const best = bases.reduce((a, b) => a && a.meeting.sine >= b.meeting.sine ? a : b, void 0);
	return best && best.meeting.sine >= .02 ? ok(best) : refuse("ties-in-line", "ties");
}
function tiedPlace(ties, { point, residuals, chiSquare }) {
	const [crossing] = crossings$1(ties.map(({ mark }) => mark), point);
	if (!crossing || crossing.sine < .02) return void 0;
	const consistency = ties.every(({ distance }) => distance.parts.size > 0) ? consistencyOf(chiSquare, residuals) : void 0;
	const concerns = [...crossing.poor ? ["poor crossing"] : [], ...consistency && !consistency.agrees ? ["ties disagree"] : []];
	const place = {
		point,
		ellipse: errorEllipse(point),
		residuals,
		crossing,
		concerns
	};
	return consistency ? {
		...place,
		consistency
	} : place;
}
/** The places that the ties allow, best first: one, or two that they cannot tell apart. */
function allowed(ties, { meeting }) {
	const [best, other] = [meeting.left, meeting.right].flatMap((guess) => solveTies(ties, guess) ?? []).sort((a, b) => a.chiSquare - b.chiSquare);
	if (!best || !other) return best ? [best] : [];
	return apart(planVector(best.point), planVector(other.point)) <= SAME_WITHIN$1 || other.chiSquare - best.chiSquare > RULED_OUT_BEYOND ? [best] : [best, other];
}
var withConcern = (place, concern) => ({
	...place,
	concerns: [...place.concerns, concern]
});
/**
* Where a buried point lies, from two or more level distances to marks. Two ties, or more to marks in one line, give two mirror
* places: both come back with the line to ask about, unless `said` (the design, or a person) picks one. Three and more are
* fitted by least squares, with residuals and whether they fit together. + − × ÷ and square roots only, the whole degrees of
* the crossing included.
*
* Refuses fewer than two or more than 12 ties, a mark that is unknown or there twice, distances that are not positive, that
* cannot meet (with the miss in micrometres), or that say nothing across the line of the marks.
*/
function placeByTies(marks, ties, said) {
	const tied = tiedMarks(marks, ties);
	if (!tied.ok) return tied;
	const [from, to] = [said?.from, said?.to].map((name) => marks.find((mark) => mark.name === name));
	if (said && (!from || !to)) return refuse("ties-mark-unknown", "side", { mark: from ? said.to : said.from });
	const base = baseOf(tied.value);
	if (!base.ok) return base;
	const solutions = allowed(tied.value, base.value);
	if (solutions.length === 0) return refuse("ties-not-settled", "ties");
	const places = solutions.flatMap((solution) => tiedPlace(tied.value, solution) ?? []);
	const [one, other] = places;
	if (!one || places.length < solutions.length) return refuse("ties-in-line", "ties");
	const [a, b] = [base.value.first.mark, base.value.second.mark];
	const sideBy = (place, start, end) => sideOf$1(planVector(start), planVector(end), planVector(place.point));
	const placed = (place) => ({
		kind: "placed",
		side: {
			from: a.name,
			to: b.name,
			side: sideBy(place, a, b)
		},
		...place
	});
	const fits = (place) => said !== void 0 && from !== void 0 && to !== void 0 && sideBy(place, from, to) === said.side;
	if (!other) return ok(placed(said && !fits(one) ? withConcern(one, "side differs") : one));
	const both = apart(planVector(one.point), planVector(other.point)) < 4 * Math.max(one.ellipse.semiMajor, other.ellipse.semiMajor) ? [withConcern(one, "mirrors overlap"), withConcern(other, "mirrors overlap")] : [one, other];
	const [picked, second] = both.filter(fits);
	if (picked && !second) return ok(placed(picked));
	const sides = both.map((place) => ({
		place,
		side: sideBy(place, a, b)
	}));
	const [left, right] = ["left", "right"].map((side) => sides.find((s) => s.side === side)?.place);
	if (!left || !right) return refuse("ties-in-line", "ties");
	return ok({
		kind: "mirrored",
		ask: {
			from: a.name,
			to: b.name
		},
		left,
		right
	});
}
// src/geometry/ties-marks.ts
function placeFurther(known, { name, ties, side }) {
	const place = placeByTies(known, ties, side);
	if (!place.ok) return place;
	if (place.value.kind === "mirrored") return refuse("ties-side-missing", `marks/${name}`, {
		mark: name,
		first: place.value.ask.from,
		second: place.value.ask.to
	});
	return ok({
		name,
		...place.value.point,
		concerns: place.value.concerns
	});
}
/**
* The marks of a site from the distances between them, none of which needs to be known from elsewhere: the first is the origin,
* the second gives the x axis, each further one is placed from two or more that are. In whichever order they were entered. All
* doubts are against the first two, and what the marks share stays shared in every point tied to them.
*/
function marksFromDistances({ first, second, further = [] }) {
	const names = [
		first,
		second.name,
		...further.map(({ name }) => name)
	];
	const twice = names.find((name, i) => names.indexOf(name) !== i);
	if (twice !== void 0) return refuse("ties-mark-twice", `marks/${twice}`, { mark: twice });
	const bad = unfitAt(`marks/${second.name}`, "positive", second.distance);
	if (bad) return bad;
	const placed = /* @__PURE__ */ new Map([[first, {
		name: first,
		x: certain(0),
		y: certain(0),
		concerns: []
	}], [second.name, {
		name: second.name,
		x: second.distance,
		y: certain(0),
		concerns: []
	}]]);
	const known = () => names.flatMap((name) => placed.get(name) ?? []);
	let waiting = further;
	while (waiting.length > 0) {
		const ready = waiting.filter(({ ties, side }) => [...ties.map(({ mark }) => mark), ...side ? [side.from, side.to] : []].every((mark) => placed.has(mark)));
		for (const mark of ready.length > 0 ? ready : waiting.slice(0, 1)) {
			const place = placeFurther(known(), mark);
			if (!place.ok) return place;
			placed.set(mark.name, place.value);
		}
		waiting = waiting.filter(({ name }) => !placed.has(name));
	}
	return ok({
		marks: known().map(({ name, x, y }) => ({
			name,
			x,
			y
		})),
		concerns: known().flatMap(({ name, concerns }) => concerns.length > 0 ? [{
			mark: name,
			concerns
		}] : [])
	});
}
// src/plumbing/bores.ts
/**
* Outside diameter and wall of Schedule 40 pipe. Diameters in inches, ASTM D1785 table 1 (quoted); wall in millimetres, least and
* greatest, ASTM D1785 (quoted); 2-1/2 in diameter from memory.
*/
var schedule40 = {
	"1/2": {
		outside: .84,
		outsideTolerance: .004,
		wall: [2.77, 3.28]
	},
	"3/4": {
		outside: 1.05,
		outsideTolerance: .004,
		wall: [2.87, 3.38]
	},
	"1": {
		outside: 1.315,
		outsideTolerance: .005,
		wall: [3.38, 3.89]
	},
	"1-1/4": {
		outside: 1.66,
		outsideTolerance: .005,
		wall: [3.56, 4.07]
	},
	"1-1/2": {
		outside: 1.9,
		outsideTolerance: .006,
		wall: [3.68, 4.19]
	},
	"2": {
		outside: 2.375,
		outsideTolerance: .006,
		wall: [3.91, 4.42]
	},
	"2-1/2": {
		outside: 2.875,
		outsideTolerance: .007,
		wall: [5.16, 5.77]
	},
	"3": {
		outside: 3.5,
		outsideTolerance: .008,
		wall: [5.49, 6.15]
	},
	"4": {
		outside: 4.5,
		outsideTolerance: .009,
		wall: [6.02, 6.73]
	}
};
/**
* Bores by schedule. The minimum-wall bore (1.610, 2.067) is what friction tables print and is the widest that a pipe may be; pipe
* as it is made has the average wall (1.590, 2.047) and loses 6.3 and 4.8 % more head. Two makers' tables of the average differ by
* 0.002 to 0.006 in; both are kept.
*/
var boreTables = {
	"schedule 40, average wall": {
		source: "A pipe extruder's dimension table: average walls 0.155, 0.164, 0.229, 0.251 in; other sizes the middle of ASTM D1785's walls",
		seen: "worked out",
		bores: {
			"1/2": .602,
			"3/4": .804,
			"1": 1.029,
			"1-1/4": 1.36,
			"1-1/2": 1.59,
			"2": 2.047,
			"2-1/2": 2.445,
			"3": 3.042,
			"4": 3.998
		}
	},
	"schedule 40, average wall, second table": {
		source: "An engineer's page of PVC pipe data, column 'average I.D.'",
		seen: "seen",
		bores: {
			"1/2": .608,
			"3/4": .81,
			"1": 1.033,
			"1-1/4": 1.364,
			"1-1/2": 1.592,
			"2": 2.049,
			"2-1/2": 2.445,
			"3": 3.042,
			"4": 3.998
		}
	},
	"schedule 40, minimum wall": {
		source: "ASTM D1785 (quoted): outside diameter less two minimum walls; 2-1/2 in from memory",
		seen: "worked out",
		bores: {
			"1/2": .622,
			"3/4": .824,
			"1": 1.049,
			"1-1/4": 1.38,
			"1-1/2": 1.61,
			"2": 2.067,
			"2-1/2": 2.469,
			"3": 3.068,
			"4": 4.026
		}
	},
	"schedule 80, average wall": {
		source: "An engineer's page of PVC pipe data, column 'average I.D.'",
		seen: "seen",
		bores: {
			"1/2": .528,
			"3/4": .724,
			"1": .935,
			"1-1/4": 1.256,
			"1-1/2": 1.476,
			"2": 1.913,
			"2-1/2": 2.289,
			"3": 2.864,
			"4": 3.786
		}
	},
	"class 160": {
		source: "A university course's friction table for PVC class 160 pipe",
		seen: "seen",
		bores: {
			"1": 1.195,
			"2": 2.193,
			"3": 3.23
		}
	}
};
var DEFAULT_BORE_TABLE = "schedule 40, average wall";
/** Half-width of a bore, metres: D1785 lets each wall of Schedule 40 range by greatest less least; taken for the other tables too (own). */
function boreHalfWidth(size) {
	const { outsideTolerance, wall } = schedule40[size];
	return (wall[1] - wall[0]) / 1e3 + inches(outsideTolerance);
}
/** Inside diameter of rigid pipe, metres, with the doubt that the standard's own tolerances leave. Refuses a size that the table lacks. */
function pipeBore(size, table = DEFAULT_BORE_TABLE) {
	const bore = boreTables[table].bores[size];
	if (bore === void 0) return refuse("pipe-size-unknown", "pipe/size", { found: size });
	return ok(withSource(certain(inches(bore)), `bore:${size}`, rectangular(boreHalfWidth(size))));
}
// src/plumbing/cement-tables.ts
var HOUR = 60;
var DAY = 1440;
var humid = {
	humidAbove: .6,
	humidFactor: {
		numerator: 3,
		denominator: 2
	}
};
var perHour = (rows) => rows.map((row) => row.map((hours) => hours * HOUR));
/** Above 180 (160) psi tables A and B print the same hours, by band and size range. */
var highPressure = perHour([
	[
		6,
		12,
		24
	],
	[
		12,
		24,
		48
	],
	[
		48,
		96,
		192
	]
]);
var withNothingMore = (rows, more) => rows.map((row) => [...row, ...more]);
/**
* Three published tables for rigid PVC. They disagree: on low-pressure cure at 60 to 100 °F by a factor of 4, on set by 7 to 12. All
* three are for pressure pipe; a buried basin's line runs at a few psi. The text of ASTM D2855 itself was not seen. The can rules.
*/
var cementTables = {
	A: {
		title: "A pipe maker's technical manual",
		source: "PVC pipe maker's technical manual, page 96, set and cure schedule",
		seen: "seen",
		bands: [
			{
				from: 60,
				to: 100
			},
			{
				from: 40,
				to: 60
			},
			{
				from: 0,
				to: 40
			}
		],
		sizes: [
			{
				from: .5,
				to: 1.25
			},
			{
				from: 1.5,
				to: 3
			},
			{
				from: 4,
				to: 8
			},
			{
				from: 10,
				to: 16
			}
		],
		set: [
			[
				15,
				30,
				HOUR,
				120
			],
			[
				HOUR,
				120,
				240,
				480
			],
			[
				180,
				360,
				720,
				1440
			]
		],
		cure: [{
			upToPsi: [
				180,
				180,
				180,
				100
			],
			minutes: [
				[
					HOUR,
					120,
					360,
					1440
				],
				[
					120,
					240,
					720,
					2880
				],
				[
					480,
					960,
					2880,
					8 * DAY
				]
			]
		}, {
			upToPsi: [
				370,
				315,
				315,
				0
			],
			minutes: withNothingMore(highPressure, [0])
		}],
		...humid
	},
	B: {
		title: "A solvent cement maker's schedule",
		source: "Solvent cement maker's product application guide, set and cure schedule",
		seen: "seen",
		bands: [
			{
				from: 60,
				to: 100
			},
			{
				from: 40,
				to: 60
			},
			{
				from: 0,
				to: 40
			}
		],
		sizes: [
			{
				from: .5,
				to: 1.25
			},
			{
				from: 1.5,
				to: 2
			},
			{
				from: 2.5,
				to: 8
			},
			{
				from: 10,
				to: 15
			},
			{
				from: 15,
				to: Number.POSITIVE_INFINITY
			}
		],
		set: [
			[
				2,
				5,
				30,
				120,
				240
			],
			[
				5,
				10,
				120,
				480,
				960
			],
			[
				10,
				15,
				720,
				1440,
				2880
			]
		],
		cure: [{
			upToPsi: [
				160,
				160,
				160,
				100,
				100
			],
			minutes: [
				[
					15,
					30,
					90,
					2 * DAY,
					3 * DAY
				],
				[
					20,
					45,
					240,
					4 * DAY,
					6 * DAY
				],
				[
					30,
					HOUR,
					4320,
					8 * DAY,
					14 * DAY
				]
			]
		}, {
			upToPsi: [
				370,
				370,
				370,
				0,
				0
			],
			minutes: withNothingMore(highPressure, [0, 0])
		}],
		...humid
	},
	C: {
		title: "Another cement maker's leaflet",
		source: "Cement maker's leaflet, average joint cure times for PVC and CPVC, four bands",
		seen: "seen",
		bands: [
			{
				from: 60,
				to: 100
			},
			{
				from: 40,
				to: 60
			},
			{
				from: 20,
				to: 40
			},
			{
				from: 0,
				to: 20
			}
		],
		sizes: [
			{
				from: .5,
				to: 1.25
			},
			{
				from: 1.5,
				to: 3
			},
			{
				from: 4,
				to: 5
			},
			{
				from: 6,
				to: 8
			}
		],
		cure: [{
			upToPsi: [
				180,
				180,
				180,
				180
			],
			minutes: perHour([
				[
					1,
					2,
					6,
					8
				],
				[
					2,
					4,
					12,
					16
				],
				[
					6,
					12,
					36,
					72
				],
				[
					8,
					16,
					48,
					96
				]
			])
		}, {
			upToPsi: [
				Number.POSITIVE_INFINITY,
				Number.POSITIVE_INFINITY,
				Number.POSITIVE_INFINITY,
				0
			],
			minutes: perHour([
				[
					6,
					12,
					18,
					0
				],
				[
					12,
					24,
					36,
					0
				],
				[
					36,
					72,
					96,
					0
				],
				[
					48,
					96,
					192,
					0
				]
			])
		}],
		...humid
	}
};
// src/plumbing/coefficients.ts
/**
* Hazen-Williams C, without unit. For rigid PVC the published design figure is 150 (range 150 to 160, design 150; others print 145
* and 140). For flexible pipe no published C was found: the cautious end of what is commonly said, from memory. A ribbed bore does
* not follow Hazen-Williams at all; its C is a stand-in with a wide doubt, and the pipe's own paper goes before it.
*/
var hazenWilliamsCoefficients = {
	"rigid PVC": {
		design: 150,
		halfWidth: 10,
		source: "C-factor table for PE and PVC pipe, design 150 (seen, quoted); half-width own: others print 140 and 145"
	},
	"flexible PVC, smooth bore": {
		design: 140,
		halfWidth: 10,
		source: "common practice 140 to 150, no source, from memory; half-width own"
	},
	"flexible, ribbed bore": {
		design: 100,
		halfWidth: 20,
		source: "common practice 100 to 120, no source, from memory; half-width own"
	}
};
/** C of a kind of pipe, with its doubt; `typed` from the pipe's own paper takes the place of the default. */
function pipeCoefficient(lining, typed) {
	const { design, halfWidth } = hazenWilliamsCoefficients[lining];
	const value = typed ?? design;
	return unfit("pipe", "positive", { coefficient: value }) ?? ok(withSource(certain(value), `coefficient:${lining}`, rectangular(halfWidth)));
}
// src/plumbing/contents.ts
/**
* Water in a full pipe, cubic metres: V = π/4 d² L; in trade units 0.0408 d² gallons a foot (d in inches; exactly 0.0407999).
* `bore` and `length` in metres, the pipe's own length, not the equivalent one. Source: the definition; factor SEEN in a chart.
*/
function pipeContents(bore, length) {
	const bad = unfit("contents", "positive", { bore }) ?? unfit("contents", "not negative", { length });
	if (bad) return bad;
	const area = Math.PI * bore.value * bore.value / 4;
	return ok(firstOrder(area * length.value, [{
		times: area,
		of: length
	}, {
		times: 2 * area * length.value / bore.value,
		of: bore
	}]));
}
var notLonger = (name, part, whole) => part.value > whole.value ? refuse("pipe-part-longer", `drainBack/${name}`) : void 0;
/** The part of the line between the basin's water and the valve; none where the valve sits under water. */
function betweenWaterAndValve(toValve, belowWater) {
	const between = subtract(toValve, belowWater);
	return between.value > 0 ? between : {
		value: 0,
		parts: /* @__PURE__ */ new Map()
	};
}
/**
* What drains back through the pump when it stops, with and without a check valve, cubic metres. The pool behind the lip is not in
* it: it follows through the pipe where the pipe ends under its surface, until air gets in. Refuses a part longer than the whole.
*/
function drainBack(line) {
	const { bore, length, belowWater, toCheckValve } = line;
	const bad = unfit("drainBack", "not negative", {
		belowWater,
		...toCheckValve && { toCheckValve }
	}) ?? unfit("drainBack", "positive", { length }) ?? notLonger("belowWater", belowWater, length) ?? (toCheckValve && notLonger("toCheckValve", toCheckValve, length));
	if (bad) return bad;
	const contents = pipeContents(bore, length);
	if (!contents.ok) return contents;
	const free = pipeContents(bore, subtract(length, belowWater));
	if (!free.ok) return free;
	const both = {
		contents: contents.value,
		withoutCheckValve: free.value
	};
	if (toCheckValve === void 0) return ok(both);
	const below = pipeContents(bore, betweenWaterAndValve(toCheckValve, belowWater));
	if (!below.ok) return below;
	return ok({
		...both,
		withCheckValve: below.value,
		kept: subtract(free.value, below.value)
	});
}
// src/plumbing/darcy-weisbach.ts
/** Standard gravity, m/s². */
var GRAVITY = 9.80665;
/** Kinematic viscosity of water at 20 °C, m²/s. */
var WATER_VISCOSITY_20C = 1004e-9;
/** Roughness height of smooth plastic, metres: a hundredth of a hair; makers print 1.5 µm (from memory). */
var SMOOTH_PLASTIC_ROUGHNESS = 15e-7;
/** Between the two neither law holds and the flow may change from one to the other: said by name. Textbook bounds, from memory. */
var LAMINAR_BELOW = 2e3;
var TURBULENT_FROM = 4e3;
var regimeAt = (reynolds) => reynolds < LAMINAR_BELOW ? "laminar" : reynolds < TURBULENT_FROM ? "between laminar and turbulent" : "turbulent";
/** Newton on x = 1/√f: x + 2 log10(ε/3.7 + 2.51 x / Re) = 0. Convex and falling towards the root, so it settles in a few steps. */
function colebrookRoot(reynolds, relativeRoughness) {
	const [rough, smooth] = [relativeRoughness / 3.7, 2.51 / reynolds];
	let x = 7;
	for (let step = 0; step < 30; step++) {
		const inside = rough + smooth * x;
		const change = (x + 2 * Math.log10(inside)) / (1 + 2 / Math.LN10 * smooth / inside);
		x -= change;
		if (Math.abs(change) < 1e-15 * x) break;
	}
	return x;
}
/**
* Darcy's friction factor, without unit, by Colebrook:
*
*   1/√f = −2 log10( e/(3.7 D) + 2.51/(Re √f) )
*
* e/D  roughness over bore, `relativeRoughness`, 0 for a smooth wall
* Re   Reynolds number, `reynolds`
*
* Below Re 2000 it is 64/Re. Accuracy: the equation is solved to the last digits; it describes pipe to some 3 % (from memory).
*/
function frictionFactor(reynolds, relativeRoughness) {
	const bad = unfit("friction", "positive", { reynolds }) ?? unfit("friction", "not negative", { relativeRoughness });
	if (bad) return bad;
	if (reynolds < LAMINAR_BELOW) return ok(64 / reynolds);
	return ok(1 / colebrookRoot(reynolds, relativeRoughness) ** 2);
}
var reynoldsOf = (flow, bore, viscosity) => 4 * flow / (Math.PI * bore * viscosity);
function headOf(flow, bore, length, roughness, viscosity) {
	const reynolds = reynoldsOf(flow, bore, viscosity);
	const factor = reynolds < LAMINAR_BELOW ? 64 / reynolds : 1 / colebrookRoot(reynolds, roughness / bore) ** 2;
	const velocity = 4 * flow / (Math.PI * bore * bore);
	return factor * (length / bore) * velocity * velocity / (2 * GRAVITY);
}
/**
* Head that friction takes, metres of water, by Darcy-Weisbach: hf = f (L/D) V²/(2g), f by `frictionFactor`. The independent second
* beside Hazen-Williams: it needs no C, knows the water's temperature, and says when the flow is not turbulent.
* Source: Crane TP-410 (quoted). For smooth plastic at 20 °C it lies −2.6 to +4.4 % from Hazen-Williams with C = 150.
*/
function darcyLoss(flow, pipe) {
	const { length, bore, roughness = SMOOTH_PLASTIC_ROUGHNESS, viscosity = WATER_VISCOSITY_20C } = pipe;
	const bad = unfit("friction", "positive", {
		flow,
		bore,
		viscosity
	}) ?? unfit("friction", "not negative", {
		length,
		roughness
	});
	if (bad) return bad;
	const reynolds = reynoldsOf(flow.value, bore.value, viscosity);
	const factor = frictionFactor(reynolds, roughness / bore.value);
	if (!factor.ok) return factor;
	return ok({
		head: throughSteps({
			flow,
			bore,
			length
		}, (at) => headOf(at.flow, at.bore, at.length, roughness, viscosity)),
		reynolds,
		frictionFactor: factor.value,
		regime: regimeAt(reynolds)
	});
}
// src/plumbing/pipe-sizes.ts
/** Nominal sizes as pipe and fittings are sold by, smallest first. A name, not a measure: no part of a 2 in pipe is 2 in wide. */
var pipeSizes = [
	"1/2",
	"3/4",
	"1",
	"1-1/4",
	"1-1/2",
	"2",
	"2-1/2",
	"3",
	"4"
];
/** The nominal size as a number of inches, for tables that give sizes from and to. */
var nominalInches = {
	"1/2": .5,
	"3/4": .75,
	"1": 1,
	"1-1/4": 1.25,
	"1-1/2": 1.5,
	"2": 2,
	"2-1/2": 2.5,
	"3": 3,
	"4": 4
};
/** Half of a tenth of a millimetre: what is left when 1-1/2 in was kept as whole micrometres or typed as 38.1 mm. */
var SAME_WITHIN = 5e-5;
/** The pipe size that a design figure of kind length names, metres (0.0381 is `1-1/2`). Refuses what is no size of the list. */
function pipeSizeOf(nominal) {
	const bad = unfit("pipe", "positive", { size: nominal });
	if (bad) return bad;
	const size = pipeSizes.find((name) => Math.abs(inches(nominalInches[name]) - nominal) <= SAME_WITHIN);
	return size === void 0 ? refuse("pipe-size-unknown", "pipe/size", { found: toInches(metres(nominal)).toFixed(3) }) : ok(size);
}
// src/plumbing/fittings.ts
var only = (sizes) => pipeSizes.map((size) => sizes[size] ?? null);
/** Published equivalent lengths for plastic, in the order in which a figure is taken from them. They disagree; all are shown. */
var fittingTables = {
	"PVC and CPVC": {
		source: "A PVC and CPVC table of equivalent lengths on a document site; 3 and 4 in columns told apart by their order",
		seen: "seen",
		feet: {
			"90 ell": [
				1.5,
				2,
				2.5,
				3.8,
				4,
				5.7,
				6.9,
				7.9,
				12
			],
			"45 ell": [
				.8,
				1.1,
				1.4,
				1.8,
				2.1,
				2.6,
				3.1,
				4,
				5.1
			],
			"gate valve": [
				.3,
				.4,
				.6,
				.8,
				1,
				1.5,
				2,
				3,
				null
			],
			"tee, run": [
				1,
				1.4,
				1.7,
				2.3,
				2.7,
				4.3,
				5.1,
				6.2,
				8.3
			],
			"tee, branch": [
				4,
				5,
				6,
				7,
				8,
				12,
				15,
				16,
				22
			],
			adapter: [
				1,
				1.5,
				2,
				2.8,
				3.5,
				4.5,
				5.5,
				6.5,
				9
			]
		}
	},
	irrigation: {
		source: "An irrigation calculator's table of fittings and valves",
		seen: "seen",
		feet: {
			"tee, run": only({
				"1-1/2": 2.7,
				"2": 4
			}),
			"tee, branch": only({
				"1-1/2": 8.4,
				"2": 12
			}),
			"90 ell": only({
				"1-1/2": 4,
				"2": 5.7,
				"4": 11.4
			}),
			"45 ell": only({
				"1-1/2": 2.1,
				"2": 2.6
			}),
			"swing check valve": only({
				"1-1/2": 13.4,
				"2": 17.2
			}),
			"gate valve": only({
				"1-1/2": 1.1,
				"2": 1.4
			})
		}
	},
	"PVC trade page": {
		source: "A PVC trade page's friction loss of fittings",
		seen: "seen",
		feet: {
			"90 ell": only({
				"1-1/2": 4,
				"2": 6
			}),
			"45 ell": only({
				"1-1/2": 2,
				"2": 2.5
			}),
			"tee, run": only({
				"1-1/2": 2.7,
				"2": 4.3
			}),
			"tee, branch": only({
				"1-1/2": 8,
				"2": 12
			})
		}
	},
	"plumbing code allowance": {
		source: "Illinois Administrative Code 77-890 appendix A table Q, allowance for wrought fittings",
		seen: "seen",
		apart: true,
		feet: { "90 ell": only({
			"1-1/2": 2,
			"2": 2
		}) }
	}
};
/** What every table says of one fitting, metres, in the tables' order; empty where none has it. */
function publishedLengths(kind, size) {
	return Object.entries(fittingTables).flatMap(([table, { source, apart, feet: rows }]) => {
		const found = rows[kind]?.[pipeSizes.indexOf(size)];
		return typeof found === "number" ? [{
			table,
			source,
			length: feet(found),
			apart: apart === true
		}] : [];
	});
}
/** Own: figures in such tables are rounded from few tests; where they agree they are still not known better than to a fifth. */
var LEAST_SHARE = .2;
/**
* Equivalent length of one fitting, metres: the first table's figure; half-width the largest distance to another table's, at least
* a fifth of it (own). Two fittings of one kind share their doubt. Refuses a fitting that no table has at that size.
*/
function equivalentLength(kind, size) {
	const [first, ...others] = publishedLengths(kind, size).filter(({ apart }) => !apart);
	if (first === void 0) return refuse("fitting-length-unknown", "fittings", {
		fitting: kind,
		size
	});
	const spread = Math.max(LEAST_SHARE * first.length, ...others.map(({ length }) => Math.abs(length - first.length)));
	return ok(withSource(certain(first.length), `fitting:${kind} ${size}`, rectangular(spread)));
}
/** Pipe plus its fittings as equivalent length, metres. Counts are whole and not negative. */
function equivalentRun(pipe, fittings, size) {
	const bad = unfit("fittings", "not negative", { pipe });
	if (bad) return bad;
	let sum = pipe;
	for (const { kind, count } of fittings) {
		const wrong = unfit("fittings", "not negative", { [kind]: count });
		if (wrong) return wrong;
		if (!Number.isInteger(count)) return refuse("count-not-whole", `fittings/${kind}`, { found: count });
		const each = equivalentLength(kind, size);
		if (!each.ok) return each;
		sum = add(sum, scale(each.value, count));
	}
	return ok(sum);
}
// src/plumbing/flow-units.ts
var toGallonsPerMinute = (flow) => flow * 60 / CUBIC_METRES_PER_GALLON;
// src/plumbing/friction.ts
var FLOW_EXPONENT = 1.852;
var BORE_EXPONENT = 4.8655;
/** The gradient as the source prints it: feet of water per 100 ft of pipe, here per foot, hence metres per metre. */
var gradient = (flow, bore, coefficient) => .2083 / 100 * ((100 / coefficient) ** FLOW_EXPONENT * (toGallonsPerMinute(flow) ** FLOW_EXPONENT / toInches(metres(bore)) ** BORE_EXPONENT));
/** Head that friction takes, metres, without doubt and without refusals: for solving. `flow` m³/s, not negative. */
var headLost = (flow, section) => section.length.value * gradient(flow, section.bore.value, section.coefficient.value);
/** Slope of `headLost` over flow, metres per m³/s. */
var headLostSlope = (flow, section) => flow === 0 ? 0 : FLOW_EXPONENT * headLost(flow, section) / flow;
/**
* Head that friction takes, metres of water, by Hazen-Williams:
*
*   hf = 0.2083 (100/C)^1.852 q^1.852 / d^4.8655
*
* hf   head lost, feet of water per 100 ft of pipe; the result is metres over the section's length
* C    roughness coefficient, `coefficient`
* q    flow, US gallons a minute, `flow` (m³/s here)
* d    inside diameter, inches, `bore` (metres here)
*
* One form only. The SI form (10.67, 4.8704), the original (1.318 C R^0.63 S^0.54) and the psi form (4.52) lie about 1.2 % lower at
* 1-1/2 and 2 in. This one is taken because the pipe's own trade association prints it, because the published tables for plastic
* pipe that the tests hold were made with it, and because of two answers it gives the one with more friction.
* Range: water near 60 °F, full pipe, turbulent; below about 10 ft/s (from memory). Accuracy: some 5 % against Colebrook for smooth
* pipe of these sizes, C apart. Source: SEEN in many copies, one quoting the association's specification.
*/
function frictionLoss(flow, section) {
	const { length, bore, coefficient } = section;
	const bad = unfit("friction", "not negative", {
		flow,
		length
	}) ?? unfit("friction", "positive", {
		bore,
		coefficient
	});
	if (bad) return bad;
	const head = headLost(flow.value, section);
	return ok(firstOrder(head, [
		{
			times: headLostSlope(flow.value, section),
			of: flow
		},
		{
			times: gradient(flow.value, bore.value, coefficient.value),
			of: length
		},
		{
			times: -1.852 * head / coefficient.value,
			of: coefficient
		},
		{
			times: -4.8655 * head / bore.value,
			of: bore
		}
	]));
}
/** Sections one after another carry the same flow, and their losses add. Metres; zero for none. */
function frictionInSeries(flow, sections) {
	let sum = certain(0);
	for (const section of sections) {
		const loss = frictionLoss(flow, section);
		if (!loss.ok) return loss;
		sum = add(sum, loss.value);
	}
	return ok(sum);
}
// src/plumbing/monotone.ts
var at = (list, i) => list[i];
/** Three-point slope at an end, held to the sign of the end's own secant and to three times its size. */
function endSlope(near, far, nearStep, farStep) {
	const slope = ((2 * nearStep + farStep) * near - nearStep * far) / (nearStep + farStep);
	if (slope * near <= 0) return 0;
	return near * far < 0 && Math.abs(slope) > 3 * Math.abs(near) ? 3 * near : slope;
}
/** First guesses: three-point slopes, zero where the data turn. On a parabola they are exact. */
function firstSlopes(steps, secants) {
	if (secants.length === 1) return [at(secants, 0), at(secants, 0)];
	const last = secants.length - 1;
	const inner = secants.slice(1).map((after, i) => {
		const before = at(secants, i);
		const [left, right] = [at(steps, i), at(steps, i + 1)];
		return before * after <= 0 ? 0 : (right * before + left * after) / (left + right);
	});
	return [
		endSlope(at(secants, 0), at(secants, 1), at(steps, 0), at(steps, 1)),
		...inner,
		endSlope(at(secants, last), at(secants, last - 1), at(steps, last), at(steps, last - 1))
	];
}
/**
* Monotone piecewise cubic by Fritsch and Carlson (1980, from memory): slopes m at the knots, secants Δ between them, α = m_i/Δ_i,
* β = m_{i+1}/Δ_i; where α² + β² > 9 both slopes are drawn in by 3/√(α² + β²). No value lies outside its two knots, so nothing is
* invented between the points of a kit card. One knot gives a curve of no width.
*/
function monotoneCurve(knots) {
	if (knots.length < 2) return {
		knots,
		slopes: knots.map(() => 0)
	};
	const steps = knots.slice(1).map((knot, i) => knot.x - at(knots, i).x);
	const secants = knots.slice(1).map((knot, i) => (knot.y - at(knots, i).y) / at(steps, i));
	const slopes = firstSlopes(steps, secants);
	for (const [i, secant] of secants.entries()) {
		if (secant === 0) {
			slopes[i] = 0;
			slopes[i + 1] = 0;
			continue;
		}
		const [alpha, beta] = [at(slopes, i) / secant, at(slopes, i + 1) / secant];
		const size = alpha * alpha + beta * beta;
		if (size <= 9) continue;
		const drawnIn = 3 / Math.sqrt(size);
		slopes[i] = drawnIn * alpha * secant;
		slopes[i + 1] = drawnIn * beta * secant;
	}
	return {
		knots,
		slopes
	};
}
/** Value and slope at x, which lies within the knots; at the ends' values beyond them. */
function curveAt({ knots, slopes }, x) {
	if (knots.length === 1) return {
		y: at(knots, 0).y,
		slope: 0
	};
	const after = knots.findIndex((knot, i) => i > 0 && x <= knot.x);
	const i = (after === -1 ? knots.length - 1 : after) - 1;
	const [left, right] = [at(knots, i), at(knots, i + 1)];
	const step = right.x - left.x;
	const t = Math.min(1, Math.max(0, (x - left.x) / step));
	const [m0, m1] = [at(slopes, i) * step, at(slopes, i + 1) * step];
	const rise = right.y - left.y;
	const [square, cube] = [3 * rise - 2 * m0 - m1, m0 + m1 - 2 * rise];
	return {
		y: left.y + t * (m0 + t * (square + t * cube)),
		slope: (m0 + t * (2 * square + 3 * t * cube)) / step
	};
}
// src/plumbing/pump-curve.ts
/**
* ISO 9906 class 2: head ±5 %, flow ±8 % (SEEN, quoted in a pump maker's lexicon). That a small pump's card keeps to it is an
* assumption of our own: such cards name no class.
*/
var CARD_TOLERANCE = {
	head: .05,
	flow: .08
};
var byFlow = (a, b) => a.flow - b.flow || b.head - a.head;
function pointsFault(points) {
	if (points.length < 2) return refuse("pump-curve-too-few", "pumpCurve", {
		taken: points.length,
		least: 2
	});
	for (const [i, { flow, head }] of points.entries()) {
		const bad = unfit(`pumpCurve/${i}`, "not negative", {
			flow,
			head
		});
		if (bad) return bad;
	}
	const sorted = [...points].sort(byFlow);
	const twin = sorted.findIndex(({ flow, head }, i) => sorted[i - 1]?.flow === flow && sorted[i - 1]?.head === head);
	if (twin > 0) return refuse("pump-curve-point-twice", `pumpCurve/${points.indexOf(sorted[twin])}`);
	const [first, last] = [sorted[0], sorted[sorted.length - 1]];
	return last.head >= first.head ? refuse("pump-curve-rises", "pumpCurve") : void 0;
}
/** Points gathered by flow, each group with its highest and its lowest head. */
function byEqualFlow(sorted) {
	const groups = /* @__PURE__ */ new Map();
	for (const { flow, head } of sorted) groups.set(flow, [...groups.get(flow) ?? [], head]);
	return [...groups].map(([flow, heads]) => ({
		flow,
		upper: Math.max(...heads),
		lower: Math.min(...heads)
	}));
}
/** A stretch ends at the upper end of a vertical piece, and the next begins at its lower end. */
function stretchesOf(groups) {
	const stretches = [[]];
	for (const { flow, upper, lower } of groups) {
		stretches.at(-1)?.push({
			x: flow,
			y: upper
		});
		if (upper !== lower) stretches.push([{
			x: flow,
			y: lower
		}]);
	}
	return stretches.map(monotoneCurve);
}
/**
* A pump's curve, head over flow, from the points of its kit card, in any order: a monotone cubic between them (`monotoneCurve`),
* nothing beyond the first and the last. A hump near shut-off and vertical pieces are kept as the card gives them.
* Refuses fewer than two points, one given twice, numbers that are not finite or negative, and a card whose head is not lower at
* its greatest flow than at its least (flow and head exchanged).
*/
function pumpCurve(points, tolerance = CARD_TOLERANCE) {
	const fault = pointsFault(points) ?? unfit("pumpCurve/tolerance", "not negative", {
		head: tolerance.head,
		flow: tolerance.flow
	});
	if (fault) return fault;
	const sorted = [...points].sort(byFlow);
	const groups = byEqualFlow(sorted);
	const first = sorted[0];
	const curve = {
		points: sorted,
		stretches: stretchesOf(groups),
		vertical: groups.filter(({ upper, lower }) => upper !== lower),
		last: sorted[sorted.length - 1],
		tolerance
	};
	return ok(first.flow === 0 ? {
		...curve,
		shutOff: first.head
	} : curve);
}
/** The head at a flow on one stretch with the doubt of the card: a share of the head, and a share of the flow by the curve's slope. */
function headOnStretch(stretch, flow, { head, flow: along }) {
	const { y, slope } = curveAt(stretch, flow);
	return withSource(withSource(certain(y), "pump-curve/head", rectangular(head * y)), "pump-curve/flow", rectangular(along * flow) * -slope);
}
var within = ({ knots }, flow) => flow >= (knots[0]?.x ?? NaN) && flow <= (knots[knots.length - 1]?.x ?? NaN);
/**
* Head that the pump gives at a flow, metres. On a vertical piece its middle, with the piece as doubt. Refuses a flow beyond the
* card's first or last point: nothing is known there.
*/
function pumpHead(curve, flow) {
	const bad = unfit("pumpCurve", "not negative", { flow });
	if (bad) return bad;
	const piece = curve.vertical.find((one) => one.flow === flow);
	if (piece) {
		const middle = (piece.upper + piece.lower) / 2;
		return ok(withSource(withSource(certain(middle), "pump-curve/vertical", rectangular((piece.upper - piece.lower) / 2)), "pump-curve/head", rectangular(curve.tolerance.head * middle)));
	}
	const stretch = curve.stretches.find((one) => within(one, flow));
	return stretch === void 0 ? refuse("pump-beyond-curve", "pumpCurve") : ok(headOnStretch(stretch, flow, curve.tolerance));
}
// src/plumbing/system-curve.ts
var share = (loss, flow) => (flow / loss.flow) ** 2;
/** Static head plus all losses at a flow, metres, and the slope over flow. */
function systemAt(system, flow) {
	let { value: head } = system.staticHead;
	let slope = 0;
	for (const section of system.sections) {
		head += headLost(flow, section);
		slope += headLostSlope(flow, section);
	}
	for (const loss of system.knownLosses ?? []) {
		head += loss.head.value * share(loss, flow);
		slope += flow === 0 ? 0 : 2 * loss.head.value * share(loss, flow) / flow;
	}
	return {
		head,
		slope
	};
}
/** The known losses at a flow, as terms of the head with their doubt. */
var knownLossTerms = (system, flow) => (system.knownLosses ?? []).map((loss) => ({
	times: share(loss, flow),
	of: loss.head
}));
/** The refusal of the first figure of the system that is senseless; a static head below zero is a fall that runs by itself. */
function unfitSystem(system) {
	const sections = system.sections.map(({ length, bore, coefficient }, i) => unfit(`system/sections/${i}`, "not negative", { length }) ?? unfit(`system/sections/${i}`, "positive", {
		bore,
		coefficient
	}));
	const losses = (system.knownLosses ?? []).map(({ head, flow }, i) => unfit(`system/knownLosses/${i}`, "not negative", { head }) ?? unfit(`system/knownLosses/${i}`, "positive", { flow }));
	return unfit("system", "not negative", { staticHead: system.staticHead }) ?? [...sections, ...losses].find((one) => one !== void 0);
}
// src/plumbing/flow-difference.ts
/** What is ordinary where an input brings no doubt of its own: all own. Metres, share, share, unit of C. */
var ordinary = {
	staticHead: .15,
	blockageShare: .1,
	air: .05,
	C: 10
};
/** No pipe is smoother than this (published range 150 to 160). */
var SMOOTHEST = 160;
var orOrdinary = (input, own) => Math.max(expanded(input), own);
/** The bore, as a share of its own along the whole line, whose friction is `head` more; by bisection, since sections differ. */
function narrowedTo(system, flow, head) {
	const friction = (share) => system.sections.reduce((sum, s) => sum + headLost(flow, {
		...s,
		bore: certain(s.bore.value * share)
	}), 0);
	const wanted = friction(1) + head;
	let [narrow, wide] = [.01, 1];
	for (let i = 0; i < 60; i++) {
		const middle = (narrow + wide) / 2;
		if (friction(middle) > wanted) narrow = middle;
		else wide = middle;
	}
	return (narrow + wide) / 2;
}
function staticHead({ system, missing }) {
	const wouldBe = system.staticHead.value + missing;
	const found = {
		cause: "static head",
		wouldBe,
		off: missing,
		timesOrdinary: Math.abs(missing) / orOrdinary(system.staticHead, ordinary.staticHead)
	};
	return wouldBe < 0 ? {
		...found,
		cannot: "not possible"
	} : found;
}
function blockage({ system, measured, missing }) {
	const share = missing > 0 && system.sections.length > 0 ? narrowedTo(system, measured, missing) : 1;
	const found = {
		cause: "blockage",
		wouldBe: missing,
		off: missing,
		timesOrdinary: (1 - share) / ordinary.blockageShare,
		asBoreShare: share
	};
	return missing > 0 ? found : {
		...found,
		cannot: "wrong direction"
	};
}
/** First order, own: the pump moves the same volume, and the share of it that is air is no water. Air spoils the head as well. */
function air({ expected, measured }) {
	const share = 1 - measured / expected;
	const found = {
		cause: "air",
		wouldBe: share,
		off: share,
		timesOrdinary: Math.abs(share) / ordinary.air
	};
	return share > 0 ? found : {
		...found,
		cannot: "wrong direction"
	};
}
function wrongCurve({ pump, missing }) {
	const wouldBe = (pump.value - missing) / pump.value;
	return {
		cause: "wrong curve",
		wouldBe,
		off: wouldBe - 1,
		timesOrdinary: Math.abs(missing) / Math.max(expanded(pump), 1e-9)
	};
}
/** Each section's C in the same proportion, so that friction grows by what is missing; the first section's is told. */
function coefficient$1({ system, measured, missing }) {
	const friction = system.sections.reduce((sum, section) => sum + headLost(measured, section), 0);
	const assumed = system.sections[0]?.coefficient;
	if (assumed === void 0 || friction <= 0 || friction + missing <= 0) return {
		cause: "C",
		timesOrdinary: Number.POSITIVE_INFINITY,
		cannot: "not possible"
	};
	const wouldBe = assumed.value * (friction / (friction + missing)) ** (1 / FLOW_EXPONENT);
	const off = wouldBe - assumed.value;
	const found = {
		cause: "C",
		wouldBe,
		off,
		timesOrdinary: Math.abs(off) / orOrdinary(assumed, ordinary.C)
	};
	return wouldBe <= SMOOTHEST ? found : {
		...found,
		cannot: "not possible"
	};
}
/**
* What could explain a measured flow that is not the expected one, likeliest first: each cause alone, by how far off it would have
* to be in the size of what is ordinary for it. What cannot explain it stands last and says why. A ranking to look by, not a proof.
* Refuses a measured flow beyond the card's points: the pump's head is not known there.
*/
function explainFlow(curve, system, expected, measured) {
	const bad = unfit("flow", "positive", {
		expected: expected.flow,
		measured
	}) ?? unfitSystem(system);
	if (bad) return bad;
	const pump = pumpHead(curve, measured.value);
	if (!pump.ok) return pump;
	const missing = pump.value.value - systemAt(system, measured.value).head;
	const balance = {
		system,
		expected: expected.flow.value,
		measured: measured.value,
		missing,
		pump: pump.value
	};
	const all = [
		staticHead(balance),
		blockage(balance),
		air(balance),
		wrongCurve(balance),
		coefficient$1(balance)
	];
	const last = (one) => one.cannot === void 0 ? 0 : 1;
	return ok(all.sort((a, b) => last(a) - last(b) || a.timesOrdinary - b.timesOrdinary));
}
/** How well a hand starts or stops a watch, seconds, half-width at each end (own). */
var WATCH_HALF_WIDTH = .5;
/** How well a bin's mark is known, as a share of its volume, half-width (own): a pail's mark, rim or belly. */
var BIN_MARK_SHARE = .03;
/** A meter of which nothing is known, as a share of what it reads, half-width (own). */
var METER_SHARE = .05;
/**
* Flow into a bin of known volume at the open pipe end, m³/s. It is the flow with the outlet at the bin's height, not at the lip.
* Refuses a bin that fills in less than 20 s (a 5 gal bucket at 50 gpm is full in 6 s), with the volume that would do.
*/
function flowFromBin(volume, time) {
	const bad = unfit("flow/bin", "positive", {
		volume,
		time
	});
	if (bad) return bad;
	if (time.value < 20) {
		const enough = Math.ceil(volume.value * 20 / time.value * 1e6);
		return refuse("flow-bin-too-fast", "flow/bin", {
			milliseconds: Math.round(time.value * 1e3),
			least: 2e4,
			enough
		});
	}
	return ok(quotient(volume, time));
}
/**
* Flow from the basin's own draw-down while pipe and falls fill and nothing comes back yet, m³/s: water area × drop / time.
* `waterArea` in m² is what really is water (stone, pump vault and posts left out), `drop` in metres, `time` in seconds.
*/
function flowFromDrawDown(waterArea, drop, time) {
	const bad = unfit("flow/drawDown", "positive", {
		waterArea,
		drop,
		time
	});
	if (bad) return bad;
	return ok(quotient(product(waterArea, drop), time));
}
/** Flow by a meter that shows it, m³/s; `share` is the meter's permitted error as a share of what it reads, half-width. */
function flowByMeter(shown, share = METER_SHARE) {
	return unfit("flow/meter", "positive", { shown }) ?? unfit("flow/meter", "not negative", { share }) ?? ok(withSource(shown, "meter/permitted-error", rectangular(share * shown.value)));
}
/** Flow by a meter that counts, m³/s: two readings of its count in m³ and the seconds between. Refuses a count that stood or ran back. */
function flowByCounter(before, after, time, share = METER_SHARE) {
	const counted = subtract(after, before);
	return unfit("flow/meter", "positive", {
		counted,
		time
	}) ?? flowByMeter(quotient(counted, time), share);
}
// src/plumbing/joint-times.ts
var PASCALS_PER_PSI = 6894.757293168;
/** A stored thousandth of a °C is 0.0018 °F: a temperature typed as 40 °F must stay on the bound between two bands. */
var ON_THE_BOUND = .001;
var fahrenheit = (celsius) => celsius * 1.8 + 32;
/** On the bound of two bands the colder one counts. */
var bandAt = (table, coldest) => {
	const last = table.bands.length - 1;
	if (coldest > (table.bands[0]?.to ?? NaN) + ON_THE_BOUND) return -1;
	if (coldest < (table.bands[last]?.from ?? NaN) - ON_THE_BOUND) return -1;
	const found = table.bands.findIndex(({ from }) => coldest > from + ON_THE_BOUND);
	return found === -1 ? last : found;
};
/** A size between two ranges counts to the larger. */
var sizeRange = (table, size) => table.sizes.findIndex(({ to }) => size <= to);
var blockFor = (table, range, psi) => table.cure.find(({ upToPsi }) => psi <= (upToPsi[range] ?? 0));
var isHumid = (humidity, above) => typeof humidity === "number" ? humidity > above : humidity !== "dry";
function fromTable(session, name) {
	const table = cementTables[name];
	const { coldest, humidity, size, pressure = 0 } = session;
	const range = sizeRange(table, nominalInches[size]);
	if (range === -1) return refuse("pipe-size-unknown", "cure/size", { found: size });
	const typed = bandAt(table, fahrenheit(coldest.value));
	if (typed === -1) return refuse("cure-temperature-outside", "cure/coldest", { milliCelsius: Math.round(coldest.value * 1e3) });
	const lower = bandAt(table, fahrenheit(coldest.value - expanded(coldest)));
	const band = lower === -1 ? table.bands.length - 1 : lower;
	const cureMinutes = blockFor(table, range, pressure / PASCALS_PER_PSI)?.minutes[band]?.[range];
	if (cureMinutes === void 0) return refuse("cure-pressure-outside", "cure/pressure", { pascals: Math.round(pressure) });
	const humid = isHumid(humidity, table.humidAbove);
	const { numerator, denominator } = humid ? table.humidFactor : {
		numerator: 1,
		denominator: 1
	};
	const milliseconds = (minutes) => minutes * 6e4 * numerator / denominator;
	const setMinutes = table.set?.[band]?.[range];
	return ok({
		set: milliseconds(setMinutes ?? cureMinutes),
		cure: milliseconds(cureMinutes),
		basis: {
			kind: "table",
			table: name,
			source: table.source
		},
		humid,
		colderBand: band !== typed,
		setIsCure: setMinutes === void 0
	});
}
function fromCan(can) {
	const bad = unfit("cure/can", "positive", {
		set: can.set,
		cure: can.cure
	});
	if (bad) return bad;
	if (can.cure < can.set) return refuse("cure-before-set", "cure/can");
	return ok({
		set: Math.ceil(can.set),
		cure: Math.ceil(can.cure),
		basis: { kind: "can" },
		humid: false,
		colderBand: false,
		setIsCure: false
	});
}
/**
* How long a glue session takes to set and to cure. Times from the can rule wherever they were typed, taken as they stand (the can
* says itself what cold and damp do). Otherwise the company's table: by size, by the coldest temperature less its doubt, by
* pressure, half as much again when humid. Only + − × ÷ and a square root. Refuses pipe that no table covers without a can, a
* temperature, size or pressure outside the table, and figures that are not finite or negative.
*/
function jointTimes(session) {
	const { kind, coldest, humidity, pressure = 0, table = "A", can } = session;
	const bad = unfit("cure", "finite", { coldest }) ?? unfit("cure", "not negative", {
		pressure,
		...typeof humidity === "number" && { humidity }
	});
	if (bad) return bad;
	if (can !== void 0) return fromCan(can);
	return kind === "rigid PVC" ? fromTable(session, table) : refuse("cure-time-unknown", "cure/kind", { kind });
}
// src/plumbing/crossings.ts
/** Looks between two knots: a cubic meets the system's curve there three times at most, and not within a twenty-fourth of the way. */
var LOOKS = 24;
/** Halvings of a bracket: past the last digit of a double. */
var HALVINGS = 60;
function bisect(excess, from, to) {
	let [low, high] = [from, to];
	const sign = Math.sign(excess(low));
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (low + high) / 2;
		if (Math.sign(excess(middle)) === sign) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}
/** Flows at which `excess` changes sign or is zero, between two knots; the left end belongs to the span before. */
function between$2(excess, left, right) {
	const found = [];
	let [before, excessBefore] = [left.x, excess(left.x)];
	for (let look = 1; look <= LOOKS; look++) {
		const flow = look === LOOKS ? right.x : left.x + (right.x - left.x) * look / LOOKS;
		const here = excess(flow);
		if (here === 0) found.push(flow);
		else if (excessBefore * here < 0) found.push(bisect(excess, before, flow));
		[before, excessBefore] = [flow, here];
	}
	return found;
}
/** Every flow above zero at which the pump's curve and the system's meet on a smooth stretch, in order. */
function crossings(curve, system) {
	return curve.stretches.flatMap((stretch) => {
		const excess = (flow) => curveAt(stretch, flow).y - systemAt(system, flow).head;
		const first = stretch.knots[0];
		const atFirst = first !== void 0 && first.x > 0 && excess(first.x) === 0 ? [first.x] : [];
		const inside = stretch.knots.slice(1).flatMap((right, i) => between$2(excess, stretch.knots[i], right));
		return [...atFirst, ...inside].map((flow) => ({
			flow,
			stretch,
			pumpSlope: curveAt(stretch, flow).slope
		}));
	});
}
/** Vertical pieces within whose heads the system's head at their flow lies, ends left to the stretches. */
var jumpCrossings = (curve, system) => curve.vertical.filter(({ flow, upper, lower }) => {
	const { head } = systemAt(system, flow);
	return flow > 0 && head < upper && head > lower;
});
// src/plumbing/operating-point.ts
/** What doubts the balance pump head − system head at a flow, metres. */
function systemTerms(system, flow) {
	const terms = [{
		times: 1,
		of: system.staticHead
	}, ...knownLossTerms(system, flow)];
	for (const section of system.sections) {
		const loss = frictionLoss(certain(flow), section);
		if (!loss.ok) return loss;
		terms.push({
			times: 1,
			of: loss.value
		});
	}
	return ok(terms);
}
/**
* A crossing with its doubt. At it pump head P(q) = system head S(q); what moves either by dh moves the flow by
* dq = (dP − dS) / (S' − P'), and the head by dS + S' dq.
*/
function pointAt(curve, system, crossing) {
	const terms = systemTerms(system, crossing.flow);
	if (!terms.ok) return terms;
	const { head, slope } = systemAt(system, crossing.flow);
	const steeper = slope - crossing.pumpSlope;
	const pump = headOnStretch(crossing.stretch, crossing.flow, curve.tolerance);
	const flow = firstOrder(crossing.flow, [{
		times: 1 / steeper,
		of: pump
	}, ...terms.value.map(({ times, of }) => ({
		times: -times / steeper,
		of
	}))]);
	return ok({
		flow,
		head: firstOrder(head, [...terms.value, {
			times: slope,
			of: flow
		}]),
		stable: steeper > 0
	});
}
function noCrossing(curve, system) {
	const [first, last] = [curve.stretches[0], curve.stretches[curve.stretches.length - 1]];
	const beginning = curve.points[0];
	if (first === void 0 || last === void 0 || beginning === void 0) throw new Error("a pump curve without points");
	if (curve.last.head >= systemAt(system, curve.last.flow).head) {
		const headThere = headOnStretch(last, curve.last.flow, curve.tolerance);
		return ok({
			kind: "beyond the last point",
			atLeast: curve.last.flow,
			headThere
		});
	}
	const headThere = headOnStretch(first, beginning.flow, curve.tolerance);
	if (curve.shutOff === void 0) return ok({
		kind: "before the first point",
		atMost: beginning.flow,
		headThere
	});
	return ok({
		kind: "curve below static head",
		lacks: subtract(system.staticHead, headThere)
	});
}
/**
* Where the pump works: the flow at which the head of its curve is the static head plus all losses, with the doubt that static
* head, lengths, C, bores and the card's own tolerance bring; they are named in the result's parts. Refuses figures of the
* system that are not finite, negative, or zero where a size is meant.
*/
function operatingPoint(curve, system) {
	const bad = unfitSystem(system);
	if (bad) return bad;
	const found = crossings(curve, system);
	const jumps = jumpCrossings(curve, system);
	const [jump] = jumps;
	if (found.length === 0 && jump === void 0) return noCrossing(curve, system);
	if (found.length === 0 && jump !== void 0 && jumps.length === 1) {
		const terms = systemTerms(system, jump.flow);
		return terms.ok ? ok({
			kind: "on a vertical piece",
			piece: jump,
			head: combine(terms.value)
		}) : terms;
	}
	const points = [];
	for (const crossing of found) {
		const point = pointAt(curve, system, crossing);
		if (!point.ok) return point;
		points.push(point.value);
	}
	for (const piece of jumps) {
		const terms = systemTerms(system, piece.flow);
		if (!terms.ok) return terms;
		points.push({
			flow: certain(piece.flow),
			head: combine(terms.value),
			stable: true
		});
	}
	points.sort((a, b) => a.flow.value - b.flow.value);
	const [only] = points;
	if (points.length === 1 && only) return ok({
		kind: "one point",
		point: only
	});
	return ok({
		kind: "several crossings",
		points,
		reachedFromRest: curve.shutOff !== void 0 && curve.shutOff > system.staticHead.value
	});
}
// src/plumbing/sockets.ts
/** The witness mark stands this far beyond the socket depth, metres: near enough to read, clear of cement (own). */
var WITNESS_MARK_BEYOND = inches(2);
/**
* Tapered pressure sockets by ASTM D2466 and D2467, quoted on page 15 of a PVC pipe maker's technical manual. The taper stops a dry
* pipe part-way in: a 2 in pipe of 2.375 in has 0.012 in of play at the entrance and is 0.006 in too thick for the bottom.
*/
var socketDimensions = {
	"1/2": {
		entrance: .848,
		bottom: .836,
		tolerance: .004,
		leastDepth40: .688,
		leastDepth80: .875
	},
	"3/4": {
		entrance: 1.058,
		bottom: 1.046,
		tolerance: .004,
		leastDepth40: .719,
		leastDepth80: 1
	},
	"1": {
		entrance: 1.325,
		bottom: 1.31,
		tolerance: .005,
		leastDepth40: .875,
		leastDepth80: 1.125
	},
	"1-1/4": {
		entrance: 1.67,
		bottom: 1.655,
		tolerance: .005,
		leastDepth40: .938,
		leastDepth80: 1.25
	},
	"1-1/2": {
		entrance: 1.912,
		bottom: 1.894,
		tolerance: .006,
		leastDepth40: 1.094,
		leastDepth80: 1.375
	},
	"2": {
		entrance: 2.387,
		bottom: 2.369,
		tolerance: .006,
		leastDepth40: 1.156,
		leastDepth80: 1.5
	},
	"2-1/2": {
		entrance: 2.889,
		bottom: 2.868,
		tolerance: .007,
		leastDepth40: 1.75,
		leastDepth80: 1.75
	},
	"3": {
		entrance: 3.516,
		bottom: 3.492,
		tolerance: .008,
		leastDepth40: 1.875,
		leastDepth80: 1.875
	},
	"4": {
		entrance: 4.518,
		bottom: 4.491,
		tolerance: .009,
		leastDepth40: 2,
		leastDepth80: 2.25
	}
};
/** Where the witness mark goes, metres from the pipe's end: the depth measured with a dry tape in the fitting's own socket, plus 2 in. */
function witnessMark(socketDepth) {
	return unfit("socket", "positive", { depth: socketDepth }) ?? ok(add(socketDepth, certain(WITNESS_MARK_BEYOND)));
}
/**
* Insertion of a joint, metres, from the distance between witness mark and socket's face after assembly (`markToSocket`) and the
* socket's depth. `markAt` is where the mark was drawn from the pipe's end; absent, at the depth plus 2 in, and the doubt of the
* depth then leaves what is short untouched. Refuses a distance longer than the mark stands from the end.
*/
function insertion(socketDepth, markToSocket, markAt) {
	const bad = unfit("socket", "positive", {
		depth: socketDepth,
		...markAt && { markAt }
	}) ?? unfit("socket", "not negative", { markToSocket });
	if (bad) return bad;
	const mark = markAt ?? add(socketDepth, certain(WITNESS_MARK_BEYOND));
	if (markToSocket.value > mark.value) return refuse("socket-mark-beyond", "socket/markToSocket");
	const depth = subtract(mark, markToSocket);
	return ok({
		depth,
		short: subtract(socketDepth, depth)
	});
}
// src/plumbing/velocity.ts
/**
* 5 ft/s, metres per second: the guidance that friction tables for plastic pipe print (class 160 table's footnote; an engineering
* site: generally to be avoided above it, although 7 to 10 occurs). A guidance, never a limit that holds.
*/
var VELOCITY_GUIDANCE = feet(5);
/**
* Mean velocity in a full pipe, v = Q / (π d²/4); in trade units v = 0.4085 q / d² (ft/s, gpm, in). `flow` m³/s, `bore` metres.
* Source: the definition; the factor 0.4085 SEEN in a fire-protection table, 231/1728/60 / (π/4/144) = 0.408498.
*/
function pipeVelocity(flow, bore) {
	const bad = unfit("velocity", "not negative", { flow }) ?? unfit("velocity", "positive", { bore });
	if (bad) return bad;
	const area = Math.PI * bore.value * bore.value / 4;
	const value = flow.value / area;
	const velocity = firstOrder(value, [{
		times: 1 / area,
		of: flow
	}, {
		times: -2 * value / bore.value,
		of: bore
	}]);
	const room = subtract(certain(VELOCITY_GUIDANCE), velocity);
	return ok({
		velocity,
		guidance: VELOCITY_GUIDANCE,
		against: Math.abs(room.value) <= expanded(room) ? "too close to call" : room.value > 0 ? "below" : "above",
		flowAtGuidance: firstOrder(VELOCITY_GUIDANCE * area, [{
			times: 2 * VELOCITY_GUIDANCE * area / bore.value,
			of: bore
		}])
	});
}
// src/water/basin.ts
/** 1 - share; for a share that blocks or stone take up. */
var freeShare = (displaced) => combine([{
	times: 1,
	of: certain(1)
}, {
	times: -1,
	of: displaced
}]);
/** Gross volume (m³) and water per depth (m³ per m). Refuses sizes that are not above zero, and a displaced share outside 0 to below 1. */
function basinWater(size) {
	if (size.kind === "rating") {
		const fault = faultIn("basin", {
			volume: [size.volume, "positive"],
			depth: [size.depth, "positive"]
		});
		return fault ? refused$1(fault) : ok({
			gross: size.volume,
			perDepth: quotient(size.volume, size.depth)
		});
	}
	const { area, depth, displacedShare } = size;
	const free = freeShare(displacedShare);
	const fault = faultIn("basin", {
		area: [area, "positive"],
		depth: [depth, "positive"],
		displacedShare: [displacedShare, "not negative"],
		freeShare: [free, "positive"]
	});
	if (fault) return refused$1(fault);
	const perDepth = product(area, free);
	return ok({
		gross: product(perDepth, depth),
		perDepth
	});
}
/** What of the water can be pumped, m³ each. What is not given counts as zero. Refuses a height or a tilt below zero. */
function usableWater(water, { intakeHeight = certain(0), outOfLevel = certain(0) }) {
	const fault = faultIn("basin", {
		gross: [water.gross, "positive"],
		perDepth: [water.perDepth, "positive"],
		intakeHeight: [intakeHeight, "not negative"],
		outOfLevel: [outOfLevel, "not negative"]
	});
	if (fault) return refused$1(fault);
	const belowIntake = product(water.perDepth, intakeHeight);
	const lostToTilt = product(water.perDepth, scale(outOfLevel, .5));
	const usable = combine([
		{
			times: 1,
			of: water.gross
		},
		{
			times: -1,
			of: belowIntake
		},
		{
			times: -1,
			of: lostToTilt
		}
	]);
	const answer = usable.value > 0 ? "water above the intake" : "no water above the intake";
	return ok({
		...water,
		belowIntake,
		lostToTilt,
		usable,
		answer
	});
}
/** Water over `depth` metres of it, m³: with `inches(1)` the gallons per inch of a basin. */
function waterOverDepth(perDepth, depth) {
	const fault = faultIn("basin", {
		perDepth: [perDepth, "positive"],
		depth: [depth, "not negative"]
	});
	return fault ? refused$1(fault) : ok(scale(perDepth, depth));
}
// src/water/draw-down.ts
/**
* How far the water in the basin goes down from rest to running.
*
*   Δ_e = V_t / a          Δ_m = z_run - z_rest          V_m = a Δ_m
*
*   V_t  water in transit, m³ (`inTransit`)      a  water per depth of the basin, m³ per m (`perDepth`)
*   z    down from one mark on the rim to the water, m (`atRest`, `running`)
*   Δ    draw-down, m: expected, measured
*
* Source: own. What stood on the mark and the tape's own error cancel in Δ_m, where both readings name them alike.
*/
function expectedDrawDown(inTransit, perDepth) {
	const fault = faultIn("basin", {
		inTransit: [inTransit, "not negative"],
		perDepth: [perDepth, "positive"]
	});
	return fault ? refused$1(fault) : ok(quotient(inTransit, perDepth));
}
// src/water/factors.ts
/** International pound, exact (1959). */
var KILOGRAMS_PER_POUND = .45359237;
var cubicFoot = feet(1) * feet(1) * feet(1);
/** lb/ft³ in kg/m³. */
var poundsPerCubicFoot = (n) => n * KILOGRAMS_PER_POUND / cubicFoot;
/** Standard gravity, m/s², exact (3rd CGPM, 1901; from memory). */
var STANDARD_GRAVITY = 9.80665;
var SECONDS_PER_DAY = 86400;
var waterFactors = {
	/** Fresh water from ice-cold to 30 °C (1000 to 995.7); salt or silt in it makes it heavier. 62.3 lb/ft³. */
	waterDensity: {
		name: "water-density",
		value: 998,
		halfWidth: 3,
		unit: "kg/m³",
		source: "from memory; ± own"
	},
	/** A layer of washed stone as it lies, voids included: about 100 lb/ft³. */
	looseStone: {
		name: "loose-stone-weight",
		value: poundsPerCubicFoot(100),
		halfWidth: poundsPerCubicFoot(15),
		unit: "kg/m³",
		source: "own, from memory; ± own"
	},
	/** Solid rock, 165 lb/ft³: granite and limestone lie near it. Its doubt is in `boulderShape`. */
	solidStone: {
		name: "solid-stone-weight",
		value: poundsPerCubicFoot(165),
		halfWidth: 0,
		unit: "kg/m³",
		source: "own, from memory"
	},
	/** Boulder over the block that its three sizes make; an ellipsoid has 0.52. ± 25 % of it, rock and shape together. */
	boulderShape: {
		name: "boulder-shape",
		value: .6,
		halfWidth: .15,
		unit: "1",
		source: "own, from memory"
	},
	/** Share of an open block matrix that water can fill. */
	blockVoids: {
		name: "block-voids",
		value: .95,
		halfWidth: .02,
		unit: "1",
		source: "common practice; ± own"
	},
	/** Share of a stone-filled basin that water can fill, 0.30 to 0.40: measure it, do not assume it. */
	stoneVoids: {
		name: "stone-voids",
		value: .35,
		halfWidth: .05,
		unit: "1",
		source: "common practice"
	},
	/** What a head by formula is worth over a landscape lip: the sheet clings and surface tension matters, ± 20 % or worse. */
	lipHead: {
		name: "lip-head-estimate",
		value: 1,
		halfWidth: .2,
		unit: "1",
		source: "own"
	},
	/** Depth of the sheet at the brink over its critical depth. */
	brink: {
		name: "brink-depth",
		value: .715,
		halfWidth: 0,
		unit: "1",
		source: "from memory"
	},
	/** Open water under 2 m deep over the grass of FAO-56. The ± also carries what the model itself is worth in a garden. */
	openWater: {
		name: "open-water-coefficient",
		value: 1.05,
		halfWidth: .3,
		unit: "1",
		source: "FAO-56 Table 12, from memory; ± own"
	},
	/** An undisturbed pool over the Carrier/ASHRAE formula: 74 % (seen in the abstract of an ASHRAE paper). */
	stillPool: {
		name: "still-pool",
		value: .74,
		halfWidth: .1,
		unit: "1",
		source: "ASHRAE paper 4146, abstract; ± own"
	},
	/** Least reserve over what is in transit; 2 to 3 is usual. Never a limit of the program's own: the company sets one. */
	reserveRatio: {
		name: "reserve-ratio",
		value: 2.5,
		halfWidth: .5,
		unit: "1",
		source: "common practice"
	}
};
/** A factor as a figure with its doubt, under the source `factor:<name>`. */
var ofFactor = (factor) => withSource(certain(factor.value), `factor:${factor.name}`, rectangular(factor.halfWidth));
// src/water/radiation.ts
/**
* Radiation that reaches the ground and leaves it, FAO-56 chapter 3. MJ/m² a day, °C, kPa, m.
*
*   R_s = (0.25 + 0.50 n/N) R_a        R_so = (0.75 + 2e-5 z) R_a        R_ns = (1 - 0.23) R_s
*   R_nl = 4.903e-9 (T_max,K⁴ + T_min,K⁴)/2 (0.34 - 0.14 √e_a) (1.35 R_s/R_so - 0.35)        R_n = R_ns - R_nl
*
* R_s/R_so counts as 1 at most. Source: FAO-56, examples 10, 11 and 12; equations from memory. Albedo 0.23 is grass: open water
* takes more, which the coefficient for open water carries.
*/
var solarRadiation = (hours, daylight, extraterrestrial) => (.25 + .5 * hours / daylight) * extraterrestrial;
var clearSkyRadiation = (elevation, extraterrestrial) => (.75 + 2e-5 * elevation) * extraterrestrial;
var netShortWave = (solar) => .77 * solar;
var STEFAN_BOLTZMANN = 4.903e-9;
var KELVIN_AT_ZERO_CELSIUS = 273.16;
function netLongWave(highest, lowest, vapourPressure, solar, clearSky) {
	const fourth = (t) => (t + KELVIN_AT_ZERO_CELSIUS) ** 4;
	const humid = .34 - .14 * Math.sqrt(vapourPressure);
	const cloudy = 1.35 * Math.min(1, solar / clearSky) - .35;
	return STEFAN_BOLTZMANN * (fourth(highest) + fourth(lowest)) / 2 * humid * cloudy;
}
// src/water/sun.ts
/**
* Sun above a place in a day, FAO-56 chapter 3. Angles in radians, radiation in MJ/m² a day.
*
*   d_r = 1 + 0.033 cos(2π J/365)      δ = 0.409 sin(2π J/365 - 1.39)      ω_s = arccos(-tan φ tan δ)      N = 24/π ω_s
*   R_a = 24·60/π · 0.0820 d_r (ω_s sin φ sin δ + cos φ cos δ sin ω_s)
*
*   J  day of the year, 1 to 366      φ  latitude, + north      N  hours from sunrise to sunset
*
* Range: latitudes up to 66°, where the sun rises and sets every day. Source: FAO-56, examples 8 and 9.
*/
var inverseDistance = (dayOfYear) => 1 + .033 * Math.cos(2 * Math.PI * dayOfYear / 365);
var declination = (dayOfYear) => .409 * Math.sin(2 * Math.PI * dayOfYear / 365 - 1.39);
var sunsetAngle = (latitude, dayOfYear) => Math.acos(Math.min(1, Math.max(-1, -Math.tan(latitude) * Math.tan(declination(dayOfYear)))));
var daylightHours = (latitude, dayOfYear) => 24 / Math.PI * sunsetAngle(latitude, dayOfYear);
var SOLAR_CONSTANT = .082;
function extraterrestrialRadiation(latitude, dayOfYear) {
	const angle = sunsetAngle(latitude, dayOfYear);
	const tilt = declination(dayOfYear);
	const overDay = angle * Math.sin(latitude) * Math.sin(tilt) + Math.cos(latitude) * Math.cos(tilt) * Math.sin(angle);
	return 1440 / Math.PI * SOLAR_CONSTANT * inverseDistance(dayOfYear) * overDay;
}
// src/water/vapour.ts
/**
* Water vapour in air, FAO-56 chapter 3. kPa, °C, m, m/s.
*
*   e°(T) = 0.6108 exp(17.27 T / (T + 237.3))        Δ = 4098 e°(T) / (T + 237.3)²
*   P = 101.3 ((293 - 0.0065 z) / 293)^5.26          γ = 0.665e-3 P
*   e_a = (e°(T_min) RH_max/100 + e°(T_max) RH_min/100) / 2,  or  RH_mean/100 e_s,  or  e°(T_dew)
*   u_2 = u_z 4.87 / ln(67.8 z - 5.42)
*
* Range: −20 to 50 °C, wind from above 0.1 m. Source: Allen and others, FAO Irrigation and Drainage Paper 56 (1998): equations from
* memory, its worked examples 2, 3, 5, 14, 17, 18 and 20 (quoted in public tests) verify them. Accuracy: its printed digits.
*/
var saturationVapourPressure = (t) => .6108 * Math.exp(17.27 * t / (t + 237.3));
var vapourPressureSlope = (t) => 4098 * saturationVapourPressure(t) / (t + 237.3) ** 2;
var meanSaturationVapourPressure = (highest, lowest) => (saturationVapourPressure(highest) + saturationVapourPressure(lowest)) / 2;
var atmosphericPressure = (elevation) => 101.3 * ((293 - .0065 * elevation) / 293) ** 5.26;
var psychrometricConstant = (pressure) => 665e-6 * pressure;
var vapourPressureFromExtremes = (highest, lowest, mostHumid, leastHumid) => (saturationVapourPressure(lowest) * mostHumid + saturationVapourPressure(highest) * leastHumid) / 200;
var vapourPressureFromMean = (highest, lowest, humidity) => meanSaturationVapourPressure(highest, lowest) * humidity / 100;
var windAtTwoMetres = (wind, height) => wind * 4.87 / Math.log(67.8 * height - 5.42);
// src/water/penman-monteith.ts
function penmanMonteith(terms) {
	const { temperature, slope, psychrometric, netRadiation, soilHeat, wind, saturation, vapourPressure } = terms;
	return (.408 * slope * (netRadiation - soilHeat) + psychrometric * (900 / (temperature + 273)) * wind * (saturation - vapourPressure)) / (slope + psychrometric * (1 + .34 * wind));
}
var radians = (degrees) => degrees * Math.PI / 180;
/** All the steps of one day, from typed weather to mm a day. The figures have been looked at by the caller. */
function daySteps(day) {
	const latitude = radians(day.latitude);
	const daylight = daylightHours(latitude, day.dayOfYear);
	const extraterrestrial = extraterrestrialRadiation(latitude, day.dayOfYear);
	const hours = Math.min(daylight, Math.max(0, day.sunHours ?? 0));
	const solar = day.solar ?? solarRadiation(hours, daylight, extraterrestrial);
	const clearSky = clearSkyRadiation(day.elevation, extraterrestrial);
	const netShortWave$1 = netShortWave(solar);
	const netLongWave$1 = netLongWave(day.highest, day.lowest, day.vapourPressure, solar, clearSky);
	const temperature = (day.highest + day.lowest) / 2;
	const pressure = atmosphericPressure(day.elevation);
	const terms = {
		temperature,
		slope: vapourPressureSlope(temperature),
		psychrometric: psychrometricConstant(pressure),
		netRadiation: netShortWave$1 - netLongWave$1,
		soilHeat: day.soilHeat,
		wind: windAtTwoMetres(day.wind, day.windHeight),
		saturation: meanSaturationVapourPressure(day.highest, day.lowest),
		vapourPressure: day.vapourPressure
	};
	const evaporation = penmanMonteith(terms);
	return {
		...terms,
		pressure,
		daylight,
		extraterrestrial,
		solar,
		clearSky,
		netShortWave: netShortWave$1,
		netLongWave: netLongWave$1,
		evaporation
	};
}
// src/water/float.ts
function worked$1({ mass, area, displacedShare = certain(0), rimHeight }) {
	const free = freeShare(displacedShare);
	const fault = faultIn("basin", {
		mass: [mass, "positive"],
		area: [area, "positive"],
		displacedShare: [displacedShare, "not negative"],
		freeShare: [free, "positive"],
		rimHeight: [rimHeight, "positive"]
	});
	if (fault) return refused$1(fault);
	return ok({
		risesOn: quotient(mass, product(ofFactor(waterFactors.waterDensity), area)),
		free
	});
}
/** Depth of water outside that lifts the basin, with water `inside` metres deep in it. */
function liftDepth(basin, inside = certain(0)) {
	const fault = faultIn("basin", { inside: [inside, "not negative"] });
	if (fault) return refused$1(fault);
	const base = worked$1(basin);
	if (!base.ok) return base;
	const { risesOn, free } = base.value;
	const depth = add(risesOn, product(free, inside));
	return ok({
		risesOn,
		liftDepth: depth,
		answer: basin.rimHeight !== void 0 && depth.value >= basin.rimHeight.value ? "fills first" : "lifts"
	});
}
/** How much water to leave inside where it may stand `outside` metres deep against the basin. */
function waterToLeave(basin, outside) {
	const fault = faultIn("basin", { outside: [outside, "not negative"] });
	if (fault) return refused$1(fault);
	const base = worked$1(basin);
	if (!base.ok) return base;
	const { risesOn, free } = base.value;
	const inside = quotient(subtract(outside, risesOn), free);
	const leaveAtLeast = Math.max(0, inside.value + expanded(inside));
	const rim = basin.rimHeight?.value ?? Number.POSITIVE_INFINITY;
	const answer = leaveAtLeast === 0 ? "none needed" : leaveAtLeast > rim ? "full is not enough" : "leave water";
	return ok({
		risesOn,
		inside,
		leaveAtLeast,
		volume: leaveAtLeast * basin.area.value * free.value,
		answer
	});
}
// src/water/float-occasions.ts
/** When a basin floats. Heights are metres above the basin's underside. The choice of depth on each occasion is our own. */
var floatOccasions = [
	"water seen in the hole",
	"rain before backfill",
	"washing in",
	"winter emptying"
];
/** Rain in an open hole gathers round the basin: depth × area drained into it ÷ area left beside the basin, metres. */
function rainInTheHole(rain, basinArea) {
	const gap = subtract(rain.holeArea, basinArea);
	const fault = faultIn("hole", {
		rain: [rain.depth, "not negative"],
		catchArea: [rain.catchArea, "positive"],
		holeArea: [rain.holeArea, "positive"],
		basinArea: [basinArea, "positive"],
		areaBesideBasin: [gap, "positive"]
	});
	return fault ? refused$1(fault) : ok(quotient(product(rain.depth, rain.catchArea), gap));
}
var stated = (depth, name) => depth === void 0 ? { missing: name } : { depth: ok(depth) };
function outsideOn(occasion, basin, facts) {
	switch (occasion) {
		case "water seen in the hole": return stated(facts.waterSeen, "waterSeen");
		case "rain before backfill": return facts.rain === void 0 ? { missing: "rain" } : { depth: rainInTheHole(facts.rain, basin.area) };
		case "washing in": return stated(facts.layerTop, "layerTop");
		case "winter emptying": return stated(facts.groundWater ?? basin.rimHeight, "rimHeight");
	}
}
/** How much water to leave inside on the occasion, or which figure is missing to say so. */
function floatOn(occasion, basin, facts) {
	const outside = outsideOn(occasion, basin, facts);
	if ("missing" in outside) return ok({
		occasion,
		answer: "not known",
		missing: outside.missing
	});
	if (!outside.depth.ok) return outside.depth;
	const leave = waterToLeave(basin, outside.depth.value);
	return leave.ok ? ok({
		occasion,
		outside: outside.depth.value,
		...leave.value
	}) : leave;
}
// src/water/leak-settling.ts
var MILLILITRES_PER_CUBIC_METRE = 1e6;
var inMillilitres = (cubicMetres) => Math.round(cubicMetres * MILLILITRES_PER_CUBIC_METRE);
/** Called as a verdict is: on whole millilitres, inside up to the limit itself, outside only when clear of it. */
function isCalled$1(room, U) {
	return room >= U || -room > U;
}
var sumOfProducts = (a, b) => total([...a.parts].map(([source, part]) => part * (b.parts.get(source) ?? 0)));
/** Whether the loss can be told from the limit (m³ a day), and if not how long the test would have to be. */
function leakSettling(loss, limitPerDay) {
	const fault = faultIn("leakTest", {
		lossPerDay: [loss.lossPerDay, "finite"],
		seconds: [loss.seconds, "positive"],
		limitPerDay: [limitPerDay, "not negative"]
	});
	if (fault) return refused$1(fault);
	const room = inMillilitres(limitPerDay) - inMillilitres(loss.lossPerDay.value);
	if (isCalled$1(room, inMillilitres(expanded(loss.lossPerDay)))) return ok({ answer: "settled" });
	const stays = subtract(loss.lossPerDay, loss.fading);
	const [a, b] = [sumOfProducts(loss.fading, loss.fading), sumOfProducts(loss.fading, stays)];
	const missing = sumOfProducts(stays, stays) - room * room / (4 * MILLILITRES_PER_CUBIC_METRE * MILLILITRES_PER_CUBIC_METRE);
	if (missing >= 0 || a === 0) {
		const source = contributors$1(stays, 1)[0]?.source;
		return ok(source === void 0 ? { answer: "time will not settle it" } : {
			answer: "time will not settle it",
			source
		});
	}
	const share = (Math.sqrt(b * b - a * missing) - b) / a;
	const seconds = Math.max(loss.seconds, loss.seconds / share);
	return ok({
		answer: "too close to call",
		seconds,
		further: seconds - loss.seconds
	});
}
// src/water/leak-test.ts
/** Why a test does not count; none: it does. */
function leakTestFaults(kind, { makeUpShut, rain, pump }) {
	const faults = [];
	if (makeUpShut !== true) faults.push(makeUpShut === false ? "make-up not shut" : "make-up not stated");
	if (rain !== false) faults.push(rain === true ? "rain" : "rain not stated");
	if (pump !== (kind === "running" ? "ran" : "off")) faults.push(pump === void 0 ? "pump not stated" : kind === "running" ? "pump not running" : "pump not off");
	return faults;
}
var dropOf$1 = ({ first, last }) => subtract(last, first);
/** The loss of one test, or why it does not count. Only + − × ÷. Refuses figures that are no numbers, no time between the readings. */
function leakTest(test) {
	const { kind, level, duration, perDepth, evaporatingArea = perDepth, evaporated, conditions } = test;
	const bucket = evaporated.by === "control bucket" ? evaporated.level : void 0;
	const fault = faultIn("leakTest", {
		first: [level.first, "finite"],
		last: [level.last, "finite"],
		duration: [duration, "positive"],
		perDepth: [perDepth, "positive"],
		evaporatingArea: [evaporatingArea, "not negative"]
	}) ?? (evaporated.by === "control bucket" ? faultIn("bucket", {
		first: [evaporated.level.first, "finite"],
		last: [evaporated.level.last, "finite"]
	}) : faultIn("weather", { evaporationPerDay: [evaporated.depthPerDay, "finite"] }));
	if (fault) return refused$1(fault);
	const faults = leakTestFaults(kind, conditions);
	if (faults.length > 0) return ok({
		answer: "does not count",
		faults
	});
	const days = scale(duration, 1 / SECONDS_PER_DAY);
	const drop = dropOf$1(level);
	const bucketDrop = bucket === void 0 ? certain(0) : dropOf$1(bucket);
	const bucketVolume = product(evaporatingArea, bucketDrop);
	const volume = subtract(product(perDepth, drop), bucketVolume);
	const evaporatedPerDay = evaporated.by === "weather" ? product(evaporatingArea, evaporated.depthPerDay) : quotient(bucketVolume, days);
	const rate = quotient(volume, days);
	const lossPerDay = evaporated.by === "weather" ? subtract(rate, evaporatedPerDay) : rate;
	const fromReadings = combine([{
		times: perDepth.value,
		of: drop
	}, {
		times: -evaporatingArea.value,
		of: bucketDrop
	}]);
	const fading = quotient({
		value: volume.value,
		parts: fromReadings.parts
	}, days);
	return ok({
		answer: "counts",
		kind,
		lossPerDay,
		evaporatedPerDay,
		seconds: duration.value,
		fading
	});
}
// src/water/lip-level.ts
/** Flow at the low end over flow at the high end. Refuses a head that is not above zero. */
function lipFlowRatio(head, outOfLevel) {
	const fault = faultIn("lip", {
		head: [head, "positive"],
		outOfLevel: [outOfLevel, "finite"]
	});
	if (fault) return refused$1(fault);
	const h = head.value;
	const half = Math.abs(outOfLevel.value) / 2;
	if (half >= h) return ok({
		answer: "high end dry",
		dryShare: (half - h) / (2 * half)
	});
	const [low, high] = [h + half, h - half];
	const ratio = (low / high) ** 1.5;
	const sign = outOfLevel.value < 0 ? -1 : 1;
	return ok({
		answer: "runs all along",
		ratio: firstOrder(ratio, [{
			times: 1.5 * ratio * (1 / low - 1 / high),
			of: head
		}, {
			times: sign * .75 * ratio * (1 / low + 1 / high),
			of: outOfLevel
		}])
	});
}
/** End-to-end difference at which the flow ratio is just `ratio` (above 1), metres: a limit that comes from the design's flow. */
function outOfLevelForRatio(head, ratio) {
	const fault = faultIn("lip", {
		head: [head, "positive"],
		ratio: [ratio, "finite"],
		ratioAboveOne: [ratio - 1, "positive"]
	});
	if (fault) return refused$1(fault);
	const power = Math.cbrt(ratio * ratio);
	const perHead = 2 * (power - 1) / (power + 1);
	return ok(firstOrder(head.value * perHead, [{
		times: perHead,
		of: head
	}]));
}
// src/water/overflow.ts
/** Room above the water and the rain that fills it. */
function overflow({ perDepth, freeboard, linedArea, comesBack }) {
	const fault = faultIn("overflow", {
		perDepth: [perDepth, "positive"],
		freeboard: [freeboard, "not negative"],
		linedArea: [linedArea, "positive"],
		comesBack: [comesBack, "not negative"]
	});
	if (fault) return refused$1(fault);
	const above = product(perDepth, freeboard);
	const room = comesBack === void 0 ? above : subtract(above, comesBack);
	if (room.value < 0) return ok({
		answer: "overflows when the pump stops",
		room
	});
	return ok({
		answer: "room for rain",
		room,
		rainToOverflow: quotient(room, linedArea)
	});
}
/** Days to overflow at `rainPerDay` metres a day and a loss of `lossPerDay` m³ a day (absent: none). `room` from `overflow`. */
function daysToOverflow(room, linedArea, rainPerDay, lossPerDay) {
	const fault = faultIn("overflow", {
		room: [room, "not negative"],
		linedArea: [linedArea, "positive"],
		rainPerDay: [rainPerDay, "not negative"],
		lossPerDay: [lossPerDay, "not negative"]
	});
	if (fault) return refused$1(fault);
	const gathers = product(linedArea, rainPerDay);
	const gain = subtract(gathers, lossPerDay ?? scale(gathers, 0));
	return ok(gain.value <= 0 ? { answer: "loses more than it rains" } : {
		answer: "overflows after",
		days: quotient(room, gain)
	});
}
// src/water/plan-area.ts
/** Area in plan, m²: length × width, or π/4 × diameter². Refuses sizes that are not above zero. */
function planArea$1(plan) {
	const fault = plan.kind === "rectangle" ? faultIn("plan", {
		length: [plan.length, "positive"],
		width: [plan.width, "positive"]
	}) : faultIn("plan", { diameter: [plan.diameter, "positive"] });
	if (fault) return refused$1(fault);
	return ok(plan.kind === "rectangle" ? product(plan.length, plan.width) : scale(product(plan.diameter, plan.diameter), Math.PI / 4));
}
// src/water/reserve.ts
/** Reserve ratio and what is left while running. Refuses water that is not above zero. */
function reserve(usable, inTransit) {
	const fault = faultIn("basin", {
		usable: [usable, "positive"],
		inTransit: [inTransit, "positive"]
	});
	if (fault) return refused$1(fault);
	const left = subtract(usable, inTransit);
	return ok({
		ratio: quotient(usable, inTransit),
		left,
		answer: left.value > 0 ? "intake stays covered" : "intake draws air"
	});
}
/**
* Time until the intake draws air, with `available` m³ above it, while `flow` m³/s leaves and `comesBack` m³/s returns. Before the
* falls run, nothing comes back and the usable water is what is available; with a broken edge, the left of the reserve.
*/
function timeUntilAir(available, flow, comesBack) {
	const fault = faultIn("basin", {
		available: [available, "finite"],
		flow: [flow, "positive"],
		comesBack: [comesBack, "not negative"]
	});
	if (fault) return refused$1(fault);
	if (available.value <= 0) return ok({ answer: "draws air at once" });
	const away = subtract(flow, comesBack);
	return ok(away.value <= 0 ? { answer: "all comes back" } : {
		answer: "draws air after",
		seconds: quotient(available, away)
	});
}
/** Time to fill falls, stream, pools and pipe at start-up, seconds: the intake must stay covered for longer than this. */
function timeToFill(inTransit, flow) {
	const fault = faultIn("basin", {
		inTransit: [inTransit, "not negative"],
		flow: [flow, "positive"]
	});
	return fault ? refused$1(fault) : ok(quotient(inTransit, flow));
}
/** Days until the intake draws air while running without make-up water, at a loss in m³ a day (evaporation, splash, leak). */
function daysWithoutMakeUp(left, lossPerDay) {
	const fault = faultIn("basin", {
		left: [left, "finite"],
		lossPerDay: [lossPerDay, "finite"]
	});
	if (fault) return refused$1(fault);
	if (left.value <= 0) return ok({ answer: "nothing left" });
	return ok(lossPerDay.value <= 0 ? { answer: "no loss" } : {
		answer: "lasts",
		days: quotient(left, lossPerDay)
	});
}
// src/water/weir-formulas.ts
var rootFoot = Math.sqrt(feet(1));
/** ft^½/s in m^½/s: 3.33 is 1.8384. */
var fromUsCoefficient = (c) => c * rootFoot;
var FRANCIS = fromUsCoefficient(3.33);
(2 / 3) ** 1.5 * Math.sqrt(STANDARD_GRAVITY);
feet(.003);
// src/water/spillway.ts
/**
* What stands on a spillway's lip.
*
*   q = Q / L        h = (q / 1.8384)^⅔        y_c = (q² / g)^⅓        y_b = 0.715 y_c
*
*   Q    flow, m³/s (`flow`)          L    lip, m (`lipLength`)
*   q    flow per lip, m²/s (`flowPerLip`); 100 gph per inch is 4.14e-3
*   h    water behind the lip above it, by Francis, m (`head`)
*   y_c  critical depth, m (`criticalDepth`); y_b the sheet at the brink, m (`sheet`)
*
* Range: see `weir-formulas.ts`; below 0.2 ft, so on nearly every landscape lip, the head is an estimate of ± 20 % or worse (own)
* and says so. Source: Francis, as USBR Water Measurement Manual ch. 7 prints it; brink depth from memory.
*/
var LEAST_HEAD_OF_FORMULAS = feet(.2);
/** Flow per length of lip, m²/s. */
function flowPerLip(flow, lipLength) {
	const fault = faultIn("spillway", {
		flow: [flow, "positive"],
		lipLength: [lipLength, "positive"]
	});
	return fault ? refused$1(fault) : ok(quotient(flow, lipLength));
}
/** Flow that a lip needs for a wanted flow per length of it, m³/s. */
function flowForLip(wantedPerLip, lipLength) {
	const fault = faultIn("spillway", {
		wantedPerLip: [wantedPerLip, "positive"],
		lipLength: [lipLength, "positive"]
	});
	return fault ? refused$1(fault) : ok(product(wantedPerLip, lipLength));
}
/** (q ÷ divisor)^⅔, whose slope is ⅔ of itself over q. */
function twoThirdsPower(q, divisor) {
	const value = Math.cbrt(q.value / divisor * (q.value / divisor));
	return firstOrder(value, [{
		times: 2 / 3 * (value / q.value),
		of: q
	}]);
}
/** What stands on the lip at a flow. */
function sheetOverLip(flow, lipLength) {
	const perLip = flowPerLip(flow, lipLength);
	if (!perLip.ok) return perLip;
	const estimate = ofFactor(waterFactors.lipHead);
	const head = product(twoThirdsPower(perLip.value, FRANCIS), estimate);
	const criticalDepth = product(twoThirdsPower(perLip.value, Math.sqrt(STANDARD_GRAVITY)), estimate);
	const answer = {
		flowPerLip: perLip.value,
		head,
		criticalDepth,
		sheet: scale(criticalDepth, waterFactors.brink.value)
	};
	return ok(head.value < LEAST_HEAD_OF_FORMULAS ? {
		...answer,
		warning: "heads out of range"
	} : answer);
}
// src/water/stone.ts
/** Weight of one layer, kg. */
function layerWeight({ depth, area }) {
	const fault = faultIn("layer", {
		depth: [depth, "not negative"],
		area: [area, "positive"]
	});
	return fault ? refused$1(fault) : ok(product(ofFactor(waterFactors.looseStone), product(depth, area)));
}
/** Weight of one boulder, kg; the same figure serves the caution before lifting. */
function boulderWeight({ length, width, height }) {
	const fault = faultIn("boulder", {
		length: [length, "positive"],
		width: [width, "positive"],
		height: [height, "positive"]
	});
	if (fault) return refused$1(fault);
	return ok(product(product(ofFactor(waterFactors.solidStone), ofFactor(waterFactors.boulderShape)), product(length, product(width, height))));
}
/** All the stone on the lid, kg. Nothing on it weighs nothing. */
function stoneWeight({ layers, boulders }) {
	const masses = [];
	let heaviestBoulder;
	for (const layer of layers) {
		const mass = layerWeight(layer);
		if (!mass.ok) return mass;
		masses.push(mass.value);
	}
	for (const boulder of boulders) {
		const mass = boulderWeight(boulder);
		if (!mass.ok) return mass;
		masses.push(mass.value);
		if (heaviestBoulder === void 0 || mass.value.value > heaviestBoulder.value) heaviestBoulder = mass.value;
	}
	const mass = combine(masses.map((of) => ({
		times: 1,
		of
	})));
	return ok(heaviestBoulder === void 0 ? { mass } : {
		mass,
		heaviestBoulder
	});
}
function statedMass(load) {
	const fault = load.kind === "in all" ? faultIn("load", { mass: [load.mass, "positive"] }) : faultIn("load", {
		massPerArea: [load.massPerArea, "positive"],
		lidArea: [load.lidArea, "positive"]
	});
	if (fault) return refused$1(fault);
	return ok(load.kind === "in all" ? load.mass : product(load.massPerArea, load.lidArea));
}
/** The stone against the load its kit card states: room = load - stone, kg. No load stated: ask the maker; none is ever assumed. */
function stoneAgainstLoad(stone, stated) {
	const weight = stoneWeight(stone);
	if (!weight.ok) return weight;
	if (stated === void 0) return ok({
		answer: "ask the maker",
		...weight.value
	});
	const load = statedMass(stated);
	if (!load.ok) return load;
	return ok({
		answer: "compared",
		load: load.value,
		room: subtract(load.value, weight.value.mass),
		...weight.value
	});
}
// src/water/transit.ts
var sumOf$1 = (list) => combine(list.map((of) => ({
	times: 1,
	of
})));
/** Water in transit by where it is, m³ each. Refuses sizes below zero, and lengths, widths and areas of zero. */
function waterInTransit({ pieces, pools, pipe }) {
	for (const [i, { length, width, depth }] of pieces.entries()) {
		const fault = faultIn(`stream/${i}`, {
			length: [length, "positive"],
			width: [width, "positive"],
			depth: [depth, "not negative"]
		});
		if (fault) return refused$1(fault);
	}
	for (const [i, { area, head }] of pools.entries()) {
		const fault = faultIn(`pool/${i}`, {
			area: [area, "positive"],
			head: [head, "not negative"]
		});
		if (fault) return refused$1(fault);
	}
	const fault = faultIn("pipe", { contents: [pipe?.contents, "not negative"] });
	if (fault) return refused$1(fault);
	const stream = sumOf$1(pieces.map(({ length, width, depth }) => product(length, product(width, depth))));
	const behindLips = sumOf$1(pools.map(({ area, head }) => product(area, head)));
	const fromPipe = pipe === void 0 || pipe.staysFull ? certain(0) : pipe.contents;
	return ok({
		stream,
		pools: behindLips,
		pipe: fromPipe,
		whole: add(add(stream, behindLips), fromPipe)
	});
}
// src/water/weather.ts
var dampOf = ({ humidity }) => {
	switch (humidity.kind) {
		case "extremes": return [humidity.most, humidity.least];
		case "mean": return [humidity.mean, humidity.mean];
		case "dew point": return [humidity.temperature, humidity.temperature];
		case "vapour pressure": return [humidity.pressure, humidity.pressure];
	}
};
var sunOf = ({ sun }) => sun.kind === "hours" ? sun.hours : sun.kind === "share" ? sun.share : sun.perDay;
function weatherFault(weather, [damp, dampLeast]) {
	const dampWanted = weather.humidity.kind === "dew point" ? [-40, 60] : weather.humidity.kind === "vapour pressure" ? "not negative" : [0, 100];
	return faultIn("weather", {
		highest: [weather.highest, [-40, 60]],
		lowest: [weather.lowest, [-40, 60]],
		highestLessLowest: [weather.highest.value - weather.lowest.value, "not negative"],
		humidity: [damp, dampWanted],
		leastHumidity: [dampLeast, dampWanted],
		wind: [weather.wind, "not negative"],
		windHeight: [weather.windHeight, [.1, 200]],
		latitude: [weather.latitude, [-66, 66]],
		elevation: [weather.elevation, [-450, 6e3]],
		dayOfYear: [weather.dayOfYear, [1, 366]],
		soilHeat: [weather.soilHeat, "finite"],
		sun: [sunOf(weather), weather.sun.kind === "share" ? [0, 1] : weather.sun.kind === "hours" ? [0, 24] : "not negative"]
	});
}
var valuesOf = ({ highest, lowest, wind, damp, dampLeast, sun }) => ({
	highest: highest.value,
	lowest: lowest.value,
	wind: wind.value,
	damp: damp.value,
	dampLeast: dampLeast.value,
	sun: sun.value
});
var upTo = (most, x) => Math.min(most, Math.max(0, x));
function vapourPressureOf(weather, { highest, lowest, damp, dampLeast }) {
	const saturation = meanSaturationVapourPressure(highest, lowest);
	switch (weather.humidity.kind) {
		case "extremes": return vapourPressureFromExtremes(highest, lowest, upTo(100, damp), upTo(100, dampLeast));
		case "mean": return vapourPressureFromMean(highest, lowest, upTo(100, damp));
		case "dew point": return saturationVapourPressure(damp);
		case "vapour pressure": return upTo(saturation, damp);
	}
}
function stepsOf(weather, figures) {
	const { windHeight, latitude, elevation, dayOfYear, soilHeat = 0 } = weather;
	const daylight = daylightHours(latitude * Math.PI / 180, dayOfYear);
	const sun = weather.sun.kind === "radiation" ? { solar: Math.max(0, figures.sun) } : { sunHours: weather.sun.kind === "hours" ? figures.sun : upTo(1, figures.sun) * daylight };
	const { highest, lowest } = figures;
	const wind = Math.max(0, figures.wind);
	return daySteps({
		highest,
		lowest,
		vapourPressure: vapourPressureOf(weather, figures),
		wind,
		windHeight,
		latitude,
		elevation,
		dayOfYear,
		soilHeat,
		...sun
	});
}
/**
* Evaporation of a day from typed weather: FAO-56 Penman-Monteith, then × 1.05 for open water under 2 m deep (FAO-56 Table 12, from
* memory), ± 30 % for what the model is worth in a garden (own). Never below zero. Refuses weather outside FAO-56's range.
*/
function evaporationOfDay(weather) {
	const [damp, dampLeast] = dampOf(weather);
	const fault = weatherFault(weather, [damp, dampLeast]);
	if (fault) return refused$1(fault);
	const inputs = {
		highest: weather.highest,
		lowest: weather.lowest,
		wind: weather.wind,
		damp,
		dampLeast,
		sun: sunOf(weather)
	};
	const grass = scale(throughSteps({ ...inputs }, (figures) => Math.max(0, stepsOf(weather, figures).evaporation)), .001);
	return ok({
		steps: stepsOf(weather, valuesOf(inputs)),
		grass,
		openWater: product(grass, ofFactor(waterFactors.openWater))
	});
}
// src/job/sheet-shape.ts
var words$1 = objectOf({
	en: text,
	"es?": text
});
var kind = among(...Object.keys(fixedUnits));
var texts = listOf(text);
var weighted = {
	weight: among("holds", "asked", "if you have it", "open"),
	"holds?": text,
	"switches?": objectOf({
		"on?": texts,
		"off?": texts
	}),
	"source?": text,
	"customerAccepts?": yesNo
};
var limit = eitherOf(integer, objectOf({
	function: among(...limitFunctions),
	"figure?": text,
	"item?": text,
	"items?": texts,
	"occasion?": among(...floatOccasions),
	"offset?": integer
}));
/** The shape of a tolerance sheet's file. */
var sheetShape = objectOf({
	format: among(1),
	id: text,
	version: notNegative,
	title: words$1,
	switches: listOf(objectOf({
		id: text,
		title: words$1,
		standard: yesNo
	})),
	"cureTable?": among(...Object.keys(cementTables)),
	figures: listOf(eitherOf(objectOf({
		id: text,
		title: words$1,
		kind,
		unit: text,
		from: among("design", "kit card")
	}), objectOf({
		id: text,
		title: words$1,
		kind: among("text"),
		from: among("design", "kit card")
	}))),
	instruments: listOf(objectOf({
		id: text,
		title: words$1,
		"permittedError?": notNegative,
		"exact?": yesNo,
		resolution: notNegative,
		"line?": among("laser", "string with line level", "spirit level"),
		"receiver?": among("fine", "coarse"),
		"turnedEndForEnd?": yesNo
	})),
	placings: listOf(objectOf({
		id: text,
		title: words$1,
		halfWidth: notNegative
	})),
	tagSets: listOf(objectOf({
		id: text,
		title: words$1,
		least: notNegative,
		coverings: texts
	})),
	coverings: listOf(objectOf({
		id: text,
		title: words$1,
		done: words$1,
		cautions: texts,
		"leavesOpen?": words$1
	})),
	cautions: listOf(objectOf({
		id: text,
		text: words$1
	})),
	steps: listOf(objectOf({
		id: text,
		number: notNegative,
		title: words$1,
		cautions: texts,
		"office?": yesNo,
		"note?": words$1,
		"signed?": yesNo
	})),
	"beforehand?": listOf(objectOf({
		id: text,
		title: words$1,
		steps: texts
	})),
	items: listOf(objectOf({
		...weighted,
		id: text,
		step: text,
		kind: among("picture", "reading", "answer"),
		title: words$1,
		"prompt?": words$1,
		"tags?": text,
		"whenNoTagOf?": text,
		"mayNotApply?": yesNo,
		"needsHidden?": text,
		"cautions?": texts,
		"apart?": yesNo,
		"marks?": among(...jobMoments),
		"wins?": objectOf({
			lower: notNegative,
			upper: notNegative
		}),
		"quantity?": kind,
		"unit?": objectOf({
			inch: text,
			metric: text
		}),
		"signed?": yesNo,
		"instrument?": text,
		"placing?": text,
		"placingAlso?": text,
		"inSetUp?": yesNo,
		"setOut?": among(...setOutPlaces, "finished grade"),
		"tonight?": among(...nightMatters),
		"buriedDepth?": yesNo,
		"onOnePlane?": yesNo,
		"heightMark?": yesNo,
		"fromMark?": yesNo,
		"locates?": words$1,
		"drawnAs?": among(...drawnAs),
		"choices?": listOf(objectOf({
			id: text,
			title: words$1,
			accepts: yesNo,
			"means?": listOf(among(...choiceMeanings)),
			"caution?": text
		}))
	})),
	oneOf: listOf(objectOf({
		id: text,
		step: text,
		title: words$1,
		holds: text,
		groups: listOf(objectOf({
			title: words$1,
			items: texts
		}))
	})),
	checks: listOf(objectOf({
		...weighted,
		id: text,
		step: text,
		title: words$1,
		function: among(...checkFunctions),
		items: texts,
		"minus?": texts,
		"way?": among("along", "across"),
		"places?": among("corners", "quarter points"),
		"until?": text,
		"before?": among(...passedBefore),
		"begins?": text,
		"apart?": notNegative,
		"leak?": among(...leakTests),
		"bucket?": texts,
		"conditions?": texts,
		"weather?": objectOf({
			highest: text,
			lowest: text,
			humidity: text,
			wind: text,
			sunshine: text,
			"radiation?": text
		}),
		"ways?": listOf(objectOf({
			by: among(...flowWays),
			items: texts
		})),
		kind,
		"aim?": limit,
		"lower?": limit,
		"upper?": limit,
		"rule?": among("guarded", "simple acceptance"),
		"stock?": notNegative,
		"costs?": among(...checkCosts),
		"asks?": among("electrician"),
		"shows?": among(...checkShows),
		"reason?": words$1
	})),
	"callbacks?": listOf(objectOf({
		symptom: among(...symptoms),
		cautions: texts,
		ask: listOf(words$1),
		look: listOf(objectOf({
			"check?": text,
			"item?": text,
			why: words$1
		}))
	}))
});
// src/job/sheet-reading.ts
/** Every fault of a sheet's shape, or else of its names; forms and limits are judged besides by `sheetFaults`. */
function shapeFaults(json) {
	const shape = sheetShape(json, "sheet");
	return shape.length > 0 ? shape : nameFaults(json);
}
var known$1 = /* @__PURE__ */ new WeakMap();
function read(json) {
	const [fault] = shapeFaults(json);
	return fault ? {
		ok: false,
		refusal: fault
	} : ok(json);
}
/** A tolerance sheet from its file: the sheet, or the first fault of shape or names. The same object is read once. */
function readSheet(json) {
	if (typeof json !== "object" || json === null) return read(json);
	const before = known$1.get(json);
	if (before) return before;
	const outcome = read(json);
	known$1.set(json, outcome);
	return outcome;
}
// src/job/state.ts
var counting = (facts, kind) => facts.filter((f) => f.kind === kind && f.standing === "counts");
/** The facts of one kind that count, in the order of the work. */
function factsOf(state, kind) {
	return state.byKind.get(kind) ?? [];
}
var isBefore = (fact, moment) => fact.position < moment.position && fact.at <= moment.at;
/** The design as it stood at a place in the order of the work: later changes lie over earlier ones, figure by figure. */
function designAt(state, position, at = Number.POSITIVE_INFINITY) {
	return designOf$1(state, factsOf(state, "design-set").filter((fact) => isBefore(fact, {
		position: position + 1,
		at
	})).map(({ id }) => id).join(" "));
}
/** The design that these entries make: one object however many coverings are judged by it, so that it is worked out once. */
var designOf$1 = oncePer((state, ids) => {
	const named = new Set(ids.split(" "));
	const set = factsOf(state, "design-set").filter(({ id }) => named.has(id));
	return {
		figures: Object.fromEntries(set.flatMap(({ what }) => Object.entries(what.figures ?? {}))),
		switches: Object.fromEntries(set.flatMap(({ what }) => Object.entries(what.switches ?? {})))
	};
});
/** The facts, and those that count by their kind and by the item that they name. */
function indexed(facts) {
	const byKind = /* @__PURE__ */ new Map();
	const byItem = /* @__PURE__ */ new Map();
	const add = (to, key, fact) => {
		const known = to.get(key);
		if (known) known.push(fact);
		else to.set(key, [fact]);
	};
	for (const fact of facts) {
		if (fact.standing !== "counts") continue;
		add(byKind, fact.kind, fact);
		if (typeof fact.what.item === "string") add(byItem, fact.what.item, fact);
	}
	return {
		facts,
		byKind,
		byItem
	};
}
function cutsOf(facts) {
	const cuts = [];
	for (const fact of facts) {
		if (fact.standing !== "counts") continue;
		if (fact.kind === "reworked") cuts.push({
			about: whatOf(fact, "reworked").about,
			position: fact.position,
			why: "reworked",
			entry: fact.id
		});
		if (fact.kind === "opened-up-again") {
			const { covering, exposed } = whatOf(fact, "opened-up-again");
			const cut = {
				position: fact.position,
				why: "opened up again",
				entry: fact.id
			};
			if (exposed === "all") cuts.push({
				...cut,
				about: {},
				covering
			});
			else for (const about of exposed) cuts.push({
				...cut,
				about
			});
		}
	}
	return cuts;
}
function isKitCard(content) {
	if (typeof content !== "object" || content === null || !("facts" in content)) return false;
	return typeof content.facts === "object" && content.facts !== null;
}
/** The newest version of each thing of the company. A sheet that is not attached, or does not read, is no sheet. */
function takenOver(facts, versions) {
	const newest = new Map(counting(facts, "version-taken-over").map((fact) => {
		const { thing, name, digest } = whatOf(fact, "version-taken-over");
		return [thing === "kit card" ? `${thing} ${name}` : thing, digest];
	}));
	const contentOf = (digest) => digest !== void 0 && Object.hasOwn(versions, digest) ? versions[digest] : void 0;
	const sheetDigest = newest.get("sheet");
	const sheetJson = contentOf(sheetDigest);
	const sheet = sheetJson === void 0 ? void 0 : readSheet(sheetJson);
	const settings = contentOf(newest.get("settings"));
	const cards = [...newest].filter(([thing]) => thing.startsWith("kit card ")).map(([, digest]) => contentOf(digest));
	return {
		...sheet?.ok && sheetDigest !== void 0 ? {
			sheet: sheet.value,
			sheetDigest
		} : {},
		kitCards: cards.filter(isKitCard),
		...settings === void 0 ? {} : { settings }
	};
}
/** Tags as last named. One that no covering of its set hides stands under the first of them: no tag escapes every covering. */
function tagsOf$1(facts, sheet) {
	const tags = /* @__PURE__ */ new Map();
	for (const fact of counting(facts, "tag-named")) {
		const { set, tag, hiddenBy, description } = whatOf(fact, "tag-named");
		const coverings = sheet?.tagSets.find((s) => s.id === set)?.coverings ?? [hiddenBy];
		const hides = coverings.includes(hiddenBy) ? hiddenBy : coverings[0] ?? hiddenBy;
		tags.set(`${set} ${tag}`, {
			set,
			tag,
			hiddenBy: hides,
			...description === void 0 ? {} : { description },
			entry: fact.id
		});
	}
	return [...tags.values()];
}
/** What the office changed of the particulars since the job was opened, the newest over the older ones. */
var changedSince = (facts) => Object.assign({}, ...counting(facts, "particulars-set").map((fact) => {
	const { reason: _, ...changed } = whatOf(fact, "particulars-set");
	return changed;
}));
/** State from a ledger. Total: an unknown kind, an unknown version or a withheld body takes nothing else with it. */
function jobState(ledger) {
	const facts = liveFacts(ledger.entries);
	const opened = counting(facts, "job-opened")[0];
	const taken = takenOver(facts, ledger.versions);
	const setUps = counting(facts, "set-up-made").map((fact) => [fact.id, {
		...whatOf(fact, "set-up-made"),
		id: fact.id,
		position: fact.position
	}]);
	return {
		ledger,
		...indexed(facts),
		...opened ? { opened: {
			...whatOf(opened, "job-opened"),
			...changedSince(facts)
		} } : {},
		...taken,
		tags: tagsOf$1(facts, taken.sheet),
		setUps: new Map(setUps),
		cuts: cutsOf(facts)
	};
}
/** The state as it stood before a place in the order of the work: for what counted before rework. */
var stateBefore = oncePer((state, position) => {
	const facts = state.facts.filter((fact) => fact.position < position);
	return {
		...state,
		...indexed(facts),
		cuts: state.cuts.filter((cut) => cut.position < position)
	};
});
// src/job/before-record.ts
/** The key of what is said of a finding whose step had been done before the record began. */
var BEFORE_RECORD = "before-record";
/** The steps that had been done before the record began, each with the entry that says so; empty unless the job was opened late. */
var stepsBefore = oncePer((state, _) => new Map(factsOf(state, "opened-late").flatMap(({ id, what }) => (what.steps ?? []).map((step) => [step, id]))));
/** That a covering had happened before the record began, where the office said so. */
var coveredBefore = (state, covering) => factsOf(state, "opened-late").find(({ what }) => what.coverings?.includes(covering));
function entryBefore(sheet, steps, finding) {
	const own = steps.get(finding.step);
	if (own !== void 0) return own;
	const stepOf = (about) => about.item === void 0 ? void 0 : itemNamed(sheet, about.item)?.step;
	const waits = (finding.missing ?? []).map((about) => steps.get(stepOf(about) ?? ""));
	return waits.length > 0 && waits.every((entry) => entry !== void 0) ? waits[0] : void 0;
}
/**
* A job that was opened late is not missing what came before: it reads 'before this record began' and holds nothing. What was
* entered of it all the same counts as it stands.
*/
function withoutWhatCameBefore(state, sheet, found) {
	const steps = stepsBefore(state, "");
	if (steps.size === 0) return found;
	return found.map((finding) => {
		const entry = finding.verdict === "not taken" && finding.by === void 0 ? entryBefore(sheet, steps, finding) : void 0;
		if (entry === void 0) return finding;
		const { missing: _, unknown: __, from: ___, ...rest } = finding;
		return {
			...rest,
			verdict: "does not apply",
			by: {
				way: "does not apply",
				entry
			},
			says: message(BEFORE_RECORD)
		};
	});
}
// src/job/series.ts
var aboutOf = ({ item, tag }) => tag === void 0 ? { item: item.id } : {
	item: item.id,
	tag
};
var oneOfHolding = oncePer((sheet, item) => sheet.oneOf.find((one) => one.groups.some((group) => group.items.includes(item))));
/** The covering that something can hold, for a tag where the sheet says 'by tag'. */
function coveringHeld(state, weighted, tagSet, tag) {
	if (weighted.holds !== "by tag") return weighted.holds;
	return state.tags.find((t) => t.set === tagSet && t.tag === tag)?.hiddenBy;
}
var entryKinds = {
	reading: ["reading-taken"],
	picture: ["picture-taken", "received-otherwise"],
	answer: ["answered"]
};
/** Whether a fact is the entry of an item: a reading, a picture or an answer. */
var entersItem = ({ kind }) => entering.has(kind);
var entering = new Set(Object.values(entryKinds).flat());
var readBy$2 = oncePer((sheet, item) => sheet.checks.filter((check) => check.items.includes(item)));
var checksReading = (sheet, item) => sheet ? readBy$2(sheet, item) : [];
/** Whether a fact about something is about this instance: itself, or a check that reads it. */
function concerns(state, about, { item, tag }) {
	if (about.tag !== void 0 && about.tag !== tag) return false;
	if (about.item !== void 0) return about.item === item.id;
	return about.check !== void 0 && checksReading(state.sheet, item.id).some((check) => check.id === about.check);
}
/** Whether a covering hides what an instance shows: it is held by it, or by a check that reads it. */
function isHiddenBy(state, { item, tag }, covering) {
	const one = state.sheet && oneOfHolding(state.sheet, item.id);
	const holding = [item, ...checksReading(state.sheet, item.id)].filter(({ weight }) => weight === "holds");
	return one?.holds === covering || holding.some((thing) => coveringHeld(state, thing, item.tags, tag) === covering);
}
function cutConcerns(state, cut, instance) {
	return cut.covering === void 0 ? concerns(state, cut.about, instance) : isHiddenBy(state, instance, cut.covering);
}
var seriesOfTags = oncePer((_, __) => /* @__PURE__ */ new Map());
function seriesOf(state, { item, tag }) {
	const known = seriesOfTags(state, item);
	const series = known.get(tag) ?? sortedOut(state, tag === void 0 ? { item } : {
		item,
		tag
	});
	known.set(tag, series);
	return series;
}
function sortedOut(state, instance) {
	const { item, tag } = instance;
	const all = (state.byItem.get(item.id) ?? []).filter((fact) => entryKinds[item.kind].includes(fact.kind) && fact.what.tag === tag);
	const cuts = state.cuts.filter((cut) => cutConcerns(state, cut, instance));
	const cut = cuts.at(-1);
	const rework = cuts.filter((c) => c.why === "reworked").at(-1);
	return {
		counting: all.filter((fact) => cut === void 0 || fact.position > cut.position),
		beforeRework: rework === void 0 ? [] : all.filter((fact) => fact.position < rework.position),
		...cut ? { cut } : {}
	};
}
var sameAbout = (about, own) => about.item === own.item && about.check === own.check && (about.tag === void 0 || about.tag === own.tag);
/** `itself` tells whether a fact's About is the thing asked for; `mayNotApply` whether anybody may say so, or only the office. */
function lastWord(state, itself, mayNotApply, after) {
	const words = [];
	for (const fact of factsOf(state, "does-not-apply")) if (fact.position > after && itself(fact.what.about) && (mayNotApply || fact.what.role !== "crew")) words.push({
		way: "does not apply",
		reason: fact.what.reason,
		fact
	});
	for (const fact of factsOf(state, "could-not-be-taken")) if (fact.position > after && itself(fact.what.about)) words.push({
		way: "could not be taken",
		reason: fact.what.reason,
		fact
	});
	return words.sort((a, b) => a.fact.position - b.fact.position).at(-1);
}
/** What such a word makes of the finding that it is about. */
var wordPart = ({ way, reason }) => ({
	verdict: way,
	says: message(way === "does not apply" ? "item.does-not-apply" : "item.could-not-be-taken", { reason })
});
// src/job/covered.ts
/** An entry made at the work. What was received otherwise is entered whenever the office files it, and proves no order. */
var tellsOrder = (fact) => entersItem(fact) && fact.kind !== "received-otherwise";
/** Place in the work at which a covering was last opened up again; -1 for never. */
var lastOpened = (state, covering) => factsOf(state, "opened-up-again").filter((f) => f.what.covering === covering).at(-1)?.position ?? -1;
/** When a covering happened: as first said since it was last open, else no later than the first entry that needs it hidden. */
var coveredOf = (state, covering) => covering === void 0 ? void 0 : happened(state, covering);
var happened = oncePer((state, covering) => {
	const since = lastOpened(state, covering);
	const said = factsOf(state, "covered").find((f) => f.what.covering === covering && f.position > since);
	if (said) return {
		fact: said,
		position: said.position,
		at: happenedAt(said),
		noLaterThan: false
	};
	const before = coveredBefore(state, covering);
	if (before && before.position > since) return {
		fact: before,
		position: before.position,
		at: before.at,
		noLaterThan: true,
		beforeRecord: true
	};
	const afterwards = new Set(state.sheet?.items.filter((item) => item.needsHidden === covering).map((item) => item.id));
	const first = state.facts.find((f) => f.standing === "counts" && f.position > since && tellsOrder(f) && afterwards.has(String(f.what.item)));
	return first && {
		fact: first,
		position: first.position,
		at: first.at,
		noLaterThan: true
	};
});
// src/reading/tokens.ts
var signKinds = new Map([
	["fraction", "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒↉"],
	["one-over", "⅟"],
	["slash", "/⁄∕／"],
	["hyphen", "-‐‑‒–﹣－"],
	["dash", "−—―"],
	["plus", "+＋"],
	["foot", "'’‘‛′´`ʹʼˈ＇"],
	["inch", "\"”“„‟″ʺ˝〃＂"],
	["point", "."],
	["comma", ","],
	["colon", ":"]
].flatMap(([kind, characters]) => [...characters].map((character) => [character, kind])));
/** Blanks of every width, and marks that show nothing: those part two tokens too, so that no two digits meet unseen. */
var blank = /^[\s\u180E\u200B-\u200F\u202A-\u202E\u2060-\u2069\p{Variation_Selector}]+/u;
var digits = /^[0-9]+(?:[.,][0-9]+)*/;
var word = /^[\p{L}\p{M}]+/u;
function tokens(typed) {
	const found = [];
	let at = 0;
	const take = (kind, length) => {
		const text = typed.slice(at, at + length).replace(/\p{Cs}/gu, "�");
		const last = found.at(-1);
		if (kind === "foot" && last?.kind === "foot" && last.end === at + 1) found[found.length - 1] = {
			kind: "inch",
			text: last.text + text,
			column: last.column,
			end: at + length + 1
		};
		else found.push({
			kind,
			text,
			column: at + 1,
			end: at + length + 1
		});
		at += length;
	};
	while (at < typed.length) {
		const rest = typed.slice(at);
		const character = String.fromCodePoint(rest.codePointAt(0) ?? 0);
		const sign = signKinds.get(character);
		const blanks = blank.exec(rest)?.[0];
		if (blanks !== void 0) at += blanks.length;
		else if (sign !== void 0) take(sign, character.length);
		else {
			const number = digits.exec(rest)?.[0];
			const letters = word.exec(rest)?.[0];
			if (number !== void 0) take("number", number.length);
			else if (letters !== void 0) take("word", wordLength(letters));
			else take("other", character.length);
		}
	}
	return found;
}
/** A prime that Unicode counts as a letter ends a word. */
function wordLength(letters) {
	let length = 0;
	for (const character of letters) {
		if (signKinds.has(character)) break;
		length += character.length;
	}
	return length;
}
/** Whether nothing at all stands between the two. */
var touch = (left, right) => left !== void 0 && right !== void 0 && left.end === right.column;
/** The text as it stands between two columns; what a message quotes. */
var quoted = (scan, from, to) => scan.typed.slice(from - 1, to - 1).trim().replace(/\p{Cs}/gu, "�");
/** Refuses at token `index` (past the end: at the column after the text), quoting from there up to token `last`, or that token alone. */
function refuseAt(scan, code, index, last = index, figures = {}) {
	const token = scan.tokens[index];
	const column = token?.column ?? scan.tokens.at(-1)?.end ?? 1;
	const found = token === void 0 ? "" : quoted(scan, token.column, scan.tokens[last]?.end ?? scan.typed.length + 1);
	return refuse(code, scan.place, {
		found,
		...figures
	}, column);
}
/** Like `refuseAt`, with all that stands from there to the end quoted. */
var refuseFrom = (scan, code, index, figures = {}) => refuseAt(scan, code, index, scan.tokens.length - 1, figures);
function scanned(typed, options) {
	const place = options.place ?? "typed";
	if (typed.length > 64) return refuse("reading-out-of-range", place, {
		length: typed.length,
		longest: 64
	}, 65);
	const cut = tokens(typed);
	if (cut.length === 0) return refuse("reading-empty", place, {}, 1);
	return {
		ok: true,
		value: {
			typed,
			place,
			tokens: cut
		}
	};
}
/** A sign at the start covers the whole reading. A dash that is no minus sign of a keyboard must touch what it covers. */
function signAt(scan, signed) {
	const first = scan.tokens[0];
	const second = scan.tokens[1];
	if (first === void 0 || !(first.kind === "hyphen" || first.kind === "dash" || first.kind === "plus")) return {
		ok: true,
		value: {
			negative: false,
			next: 0
		}
	};
	if (second === void 0) return refuseAt(scan, "reading-not-understood", 0);
	if (!(first.kind === "plus" || "-−﹣－".includes(first.text)) && (first.kind === "dash" || first.end !== second.column)) return refuseAt(scan, "reading-not-understood", 0);
	if (!signed) return refuseAt(scan, "reading-sign", 0);
	if (second.kind === "hyphen" || second.kind === "dash" || second.kind === "plus") return refuseAt(scan, "reading-sign", 1);
	return {
		ok: true,
		value: {
			negative: first.kind !== "plus",
			next: 1
		}
	};
}
// src/reading/number.ts
var fractionSigns = /* @__PURE__ */ new Map([
	["½", [1n, 2]],
	["¼", [1n, 4]],
	["¾", [3n, 4]],
	["⅛", [1n, 8]],
	["⅜", [3n, 8]],
	["⅝", [5n, 8]],
	["⅞", [7n, 8]]
]);
var isWhole = (token) => token?.kind === "number" && !/[.,]/.test(token.text);
/** Whether a fraction begins at the token: `½`, `⅟8`, `3/8`. */
function fractionBegins(scan, index) {
	const token = scan.tokens[index];
	if (token === void 0) return false;
	return token.kind === "fraction" || token.kind === "one-over" || token.kind === "number" && scan.tokens[index + 1]?.kind === "slash";
}
function closed(scan, from, fraction) {
	const after = scan.tokens[fraction.next];
	if (after?.kind === "slash") return refuseAt(scan, "reading-fraction", from, fraction.next + 1);
	if ((after?.kind === "number" || after?.kind === "fraction" || after?.kind === "one-over" || after?.kind === "point" || after?.kind === "comma") && touch(scan.tokens[fraction.next - 1], after)) return refuseAt(scan, "reading-fraction", fraction.next);
	return ok(fraction);
}
/** Improper fractions are refused: 11/2 is what is left of 1 1/2 when its blank gets lost. */
function fractionAt(scan, index) {
	const token = scan.tokens[index];
	if (token?.kind === "fraction") {
		const known = fractionSigns.get(token.text);
		if (known === void 0) return refuseAt(scan, "reading-denominator", index);
		return closed(scan, index, {
			numerator: known[0],
			marks: known[1],
			next: index + 1
		});
	}
	const bottomIndex = token?.kind === "one-over" ? index + 1 : index + 2;
	const bottom = scan.tokens[bottomIndex];
	const topIsWhole = token?.kind === "one-over" || isWhole(token);
	if (token === void 0 || !topIsWhole || !isWhole(bottom) || /^0+$/.test(bottom.text)) return refuseAt(scan, "reading-fraction", index, Math.min(bottomIndex, scan.tokens.length - 1));
	if (scan.tokens[bottomIndex + 1]?.kind === "slash") return refuseAt(scan, "reading-fraction", index, bottomIndex + 2);
	const marks = tapeMarks.find((known) => known.toString() === bottom.text);
	if (marks === void 0) return refuseAt(scan, "reading-denominator", index, bottomIndex);
	const numerator = token.kind === "one-over" ? 1n : BigInt(token.text);
	if (numerator >= BigInt(marks)) return refuseAt(scan, "reading-fraction", index, bottomIndex);
	return closed(scan, index, {
		numerator,
		marks,
		next: bottomIndex + 1
	});
}
/** `1,000` may be a thousand or one; a point together with a comma, and a second comma, leave it as open. */
function commaIsAmbiguous(text) {
	const commas = text.split(",").length - 1;
	if (commas === 0) return false;
	return commas > 1 || text.includes(".") || /^[1-9][0-9]{0,2},[0-9]{3}$/.test(text);
}
function decimalAt(scan, index) {
	const token = scan.tokens[index];
	const text = token?.text ?? "";
	if (token !== void 0 && commaIsAmbiguous(text)) {
		const column = token.column + text.indexOf(",");
		return {
			ok: false,
			refusal: {
				...refuseAt(scan, "reading-comma-ambiguous", index).refusal,
				column
			}
		};
	}
	const [whole = "", part = "", ...more] = text.split(/[.,]/);
	if (more.length > 0) return refuseAt(scan, "reading-not-understood", index);
	const per = 10n ** BigInt(part.length);
	const style = part === "" ? "whole" : "decimal";
	return ok({
		numerator: BigInt(whole) * per + BigInt(part || "0"),
		per,
		style,
		wholeDigits: whole.length,
		next: index + 1
	});
}
/** A decimal without its leading zero, only where nothing but a sign stands before it: `5 .3` may be a slip for 5.3. */
function bareDecimal(scan, index) {
	const part = scan.tokens[index + 1];
	if (!(index === 0 || index === 1 && scan.tokens[0]?.kind !== "number") || !isWhole(part) || !touch(scan.tokens[index], part)) return refuseFrom(scan, "reading-not-understood", index);
	return ok({
		numerator: BigInt(part.text),
		per: 10n ** BigInt(part.text.length),
		style: "decimal",
		wholeDigits: 0,
		next: index + 2
	});
}
/** After a number: the index where its fraction begins, or nothing, or why the hyphen leaves it open. */
function fractionAfter(scan, index) {
	const token = scan.tokens[index];
	if (token?.kind === "hyphen" || token?.kind === "dash") {
		const after = scan.tokens[index + 1];
		if (!(after?.kind === "number" || fractionBegins(scan, index + 1))) return ok(void 0);
		if (token.kind === "hyphen" && touch(scan.tokens[index - 1], token) && touch(token, after) && fractionBegins(scan, index + 1)) return ok(index + 1);
		return refuseFrom(scan, "reading-hyphen-ambiguous", index);
	}
	return ok(fractionBegins(scan, index) ? index : void 0);
}
/**
* Reads one number at the token: whole, decimal, fraction, or whole and fraction (`3 1/2`, `3-1/2`, `3½`). Refuses fractions that no
* tape has, commas that can be read in two ways, spaced hyphens. What stands after the number is the caller's.
*/
function numberAt$1(scan, index) {
	const token = scan.tokens[index];
	if (fractionBegins(scan, index)) {
		const fraction = fractionAt(scan, index);
		if (!fraction.ok) return fraction;
		const { numerator, marks, next } = fraction.value;
		return ok({
			numerator,
			per: BigInt(marks),
			marks,
			style: "fraction",
			wholeDigits: 0,
			next
		});
	}
	if (token?.kind === "point" || token?.kind === "comma") return bareDecimal(scan, index);
	if (token?.kind === "slash") return refuseFrom(scan, "reading-fraction", index);
	if (token?.kind !== "number") return refuseFrom(scan, "reading-not-understood", index);
	const number = decimalAt(scan, index);
	if (!number.ok) return number;
	const fractionIndex = fractionAfter(scan, index + 1);
	if (!fractionIndex.ok) return fractionIndex;
	if (fractionIndex.value === void 0) return number;
	if (number.value.style === "decimal") return refuseFrom(scan, "reading-fraction", index);
	const fraction = fractionAt(scan, fractionIndex.value);
	if (!fraction.ok) return fraction;
	const { numerator, marks, next } = fraction.value;
	const per = BigInt(marks);
	return ok({
		numerator: number.value.numerator * per + numerator,
		per,
		marks,
		style: "fraction",
		wholeDigits: number.value.wholeDigits,
		next
	});
}
// src/reading/unit-words.ts
/** How each unit may be typed, in English and Spanish. Closed: what is not here is refused by name. Compared without case. */
var spellings = {
	in: "in inch inches pulgada pulgadas pulg",
	ft: "ft feet foot pie pies",
	mm: "mm millimetre millimetres millimeter millimeters milímetro milímetros milimetro milimetros",
	cm: "cm centimetre centimetres centimeter centimeters centímetro centímetros centimetro centimetros",
	m: "m metre metres meter meters metro metros",
	"in²": "in² in2 sqin",
	"ft²": "ft² ft2 sqft",
	"cm²": "cm² cm2",
	"m²": "m² m2",
	gal: "gal gallon gallons galón galon galones",
	L: "l litre litres liter liters litro litros",
	ml: "ml",
	gpm: "gpm gal/min",
	gph: "gph gal/h gal/hr",
	"L/min": "l/min lpm",
	"L/h": "l/h lph",
	"L/s": "l/s lps",
	"m³/h": "m³/h m3/h",
	"gph/in": "gph/in gph/inch gal/h/in",
	"L/min/m": "l/min/m",
	"ft/s": "ft/s fps",
	"m/s": "m/s",
	mph: "mph mi/h",
	"km/h": "km/h kmh kph",
	"°": "° deg degree degrees grado grados",
	"MJ/m²": "mj/m² mj/m2",
	"kWh/m²": "kwh/m² kwh/m2",
	s: "s sec secs second seconds seg segundo segundos",
	min: "min mins minute minutes minuto minutos",
	h: "h hr hrs hour hours hora horas",
	d: "d day days día días dia dias",
	"°F": "°f f",
	"°C": "°c c",
	W: "w watt watts vatio vatios",
	kW: "kw",
	V: "v volt volts voltio voltios",
	A: "a amp amps ampere amperes amperio amperios",
	lb: "lb lbs pound pounds libra libras",
	kg: "kg kilo kilos",
	g: "g",
	"1": "1",
	"%": "%",
	ppm: "ppm"
};
var symbols = new Map(Object.keys(spellings).flatMap((symbol) => spellings[symbol].split(" ").map((spelling) => [spelling, symbol])));
/** The unit that a word or sign names, or nothing. `º` (the ordinal mark beside the degree sign on phones) counts as a degree. */
var namedUnit = (text) => symbols.get(text.normalize("NFC").toLowerCase().replace(/º/g, "°"));
var unitKind = (symbol) => tradeUnits[symbol].kind;
// src/reading/length.ts
/** Longest length that is taken: 1000 m. Own choice. */
var LONGEST = 1000000000n;
var isMetric = (unit) => unit === "mm" || unit === "cm" || unit === "m";
/** The unit at the token: a mark, a word of the closed list with or without its point, or none. */
function unitAt$1(scan, index) {
	const token = scan.tokens[index];
	if (token?.kind === "foot") return ok({
		unit: "ft",
		next: index + 1
	});
	if (token?.kind === "inch") return ok({
		unit: "in",
		next: index + 1
	});
	if (token?.kind === "other" && namedUnit(token.text) !== void 0) return refuseAt(scan, "reading-unit-kind", index);
	if (token?.kind !== "word") return ok({
		unit: void 0,
		next: index
	});
	const symbol = namedUnit(token.text);
	if (symbol === void 0) return refuseAt(scan, "reading-unit-unknown", index);
	if (unitKind(symbol) !== "length") return refuseAt(scan, "reading-unit-kind", index);
	const point = scan.tokens[index + 1];
	return ok({
		unit: symbol,
		next: index + (point?.kind === "point" && touch(token, point) && !touch(point, scan.tokens[index + 2]) ? 2 : 1)
	});
}
/** Why what stands after a whole reading can't belong to it. */
function refuseRest(scan, index) {
	const token = scan.tokens[index];
	if (token?.kind === "number" || token?.kind === "fraction" || token?.kind === "one-over") return refuseFrom(scan, "reading-two-readings", index);
	if (token?.kind === "hyphen" || token?.kind === "dash") return refuseFrom(scan, "reading-hyphen-ambiguous", index);
	if (token?.kind === "slash") return refuseFrom(scan, "reading-fraction", index);
	if (token?.kind === "comma") return refuseFrom(scan, "reading-comma-ambiguous", index);
	if (token?.kind === "word" && namedUnit(token.text) === void 0) return refuseAt(scan, "reading-unit-unknown", index);
	return refuseFrom(scan, "reading-not-understood", index);
}
/** `„5“`, a mark that the keyboard opened as a quotation: the same whether it means inches or nothing, if a bare number is in inches. */
function withoutOpeningMark(scan, expected) {
	return scan.tokens[0]?.kind === "inch" && scan.tokens.length > 2 && scan.tokens.at(-1)?.kind === "inch" && (expected === "in" || expected === "ft-in") ? {
		...scan,
		tokens: scan.tokens.slice(1)
	} : scan;
}
/** After the feet: where the inches begin. A hyphen there joins, spaced on both sides or none; ` -3` may be a sign. */
function inchesBegin(scan, index) {
	const token = scan.tokens[index];
	if (token?.kind === "dash") return refuseFrom(scan, "reading-hyphen-ambiguous", index);
	if (token?.kind !== "hyphen") return ok(index);
	if (!touch(scan.tokens[index - 1], token) && touch(token, scan.tokens[index + 1])) return refuseFrom(scan, "reading-hyphen-ambiguous", index);
	return ok(index + 1);
}
/** Inches beside feet: 0 up to, not including, 12, written with two whole digits at most (`1'000` is somebody's thousand). */
function inchesBesideFeet(scan, start, feet) {
	const begin = inchesBegin(scan, start);
	if (!begin.ok) return begin;
	const inches = numberAt$1(scan, begin.value);
	if (!inches.ok) return inches;
	const unit = unitAt$1(scan, inches.value.next);
	if (!unit.ok) return unit;
	if (unit.value.unit !== void 0 && unit.value.unit !== "in") return refuseFrom(scan, "reading-two-readings", begin.value);
	if (unit.value.next < scan.tokens.length) return refuseRest(scan, unit.value.next);
	if (inches.value.wholeDigits > 2 || inches.value.numerator >= 12n * inches.value.per) return refuseFrom(scan, "reading-inches-over-foot", begin.value);
	return ok({
		number: inches.value,
		feet: feet.numerator,
		unit: "in",
		called: "ft-in"
	});
}
function written(scan, start, expected) {
	const number = numberAt$1(scan, start);
	if (!number.ok) return number;
	const typedUnit = unitAt$1(scan, number.value.next);
	if (!typedUnit.ok) return typedUnit;
	const { unit: typed, next } = typedUnit.value;
	const unit = typed ?? (expected === "ft-in" ? "in" : expected);
	if (isMetric(unit) && number.value.style === "fraction") return refuseAt(scan, "reading-denominator", start, next - 1, { unit });
	if (next === scan.tokens.length) return ok({
		number: number.value,
		feet: 0n,
		unit,
		called: unit
	});
	const more = scan.tokens[next]?.kind;
	if (typed !== "ft" || more === "word" || more === "inch" || more === "foot") return refuseRest(scan, next);
	if (number.value.style !== "whole") return refuseAt(scan, "reading-fraction", start, number.value.next - 1);
	return inchesBesideFeet(scan, next, number.value);
}
/**
* Reads a tape: feet, inches, fractions, decimals, mm, cm, m, in any spelling that a phone makes of them. `expected` serves only
* where no unit was typed. Exact until rounded once, half away from zero, to the micrometre. Refuses with code, place, column and
* what it found whatever can be read in two ways; never reads only a part.
*/
function readLength(typed, expected, options = {}) {
	const scan = scanned(typed, options);
	if (!scan.ok) return scan;
	const text = withoutOpeningMark(scan.value, expected);
	const sign = signAt(text, options.signed === true);
	if (!sign.ok) return sign;
	const found = written(text, sign.value.next, expected);
	if (!found.ok) return found;
	const { number, feet, unit, called } = found.value;
	const factor = tradeUnits[unit].numerator;
	const magnitude = nearest(number.numerator * factor + feet * tradeUnits.ft.numerator * number.per, number.per);
	if (magnitude > LONGEST) return refuseFrom(text, "reading-out-of-range", 0, {
		largest: Number(LONGEST),
		kind: "length"
	});
	const step = nearest(factor, number.per);
	return ok({
		typed,
		micrometres: Number(sign.value.negative ? -magnitude : magnitude),
		resolution: step > 0n ? Number(step) : 1,
		unit: called,
		marks: unit === "in" ? number.style === "whole" ? 1 : number.marks : void 0
	});
}
// src/reading/duration.ts
var order = [
	"d",
	"h",
	"min",
	"s"
];
/** How many of a unit make one of the next larger. */
var fullAt = {
	d: 0n,
	h: 24n,
	min: 60n,
	s: 60n
};
var milliseconds = (unit) => tradeUnits[unit].numerator;
/**
* `1:30` is an hour and a half where hours or days are expected, `1:30:00` everywhere. Where minutes or seconds are expected `1:30`
* may be a minute and a half as well, so it is refused.
*/
function clockWritten(scan, start, expected) {
	const parts = scan.tokens.slice(start);
	const numbers = parts.filter((_, index) => index % 2 === 0);
	const tight = parts.every((token, index) => index === 0 || touch(parts[index - 1], token));
	const regular = parts.every((token, index) => index % 2 === 0 ? token.kind === "number" && /^[0-9]+$/.test(token.text) : token.kind === "colon");
	const [hours, minutes, seconds] = numbers.map((token) => token.text);
	const sixty = numbers.slice(1).every((token) => /^[0-5][0-9]$/.test(token.text));
	if (!(tight && regular && sixty && parts.length % 2 === 1 && numbers.length <= 3) || hours === void 0 || minutes === void 0) return refuseFrom(scan, "reading-not-understood", start);
	if (seconds === void 0 && (expected === "min" || expected === "s")) return refuseFrom(scan, "reading-not-understood", start, {
		hours: `${hours} h ${minutes} min`,
		minutes: `${hours} min ${minutes} s`
	});
	const total = (BigInt(hours) * 60n + BigInt(minutes)) * 60n + BigInt(seconds ?? "0");
	const unit = seconds === void 0 ? "min" : "s";
	return ok({
		numerator: total * 1000n,
		per: 1n,
		step: milliseconds(unit),
		unit
	});
}
function unitAt(scan, index, whenNone) {
	const token = scan.tokens[index];
	if (token === void 0 && whenNone !== void 0) return ok({
		unit: whenNone,
		next: index
	});
	if (token === void 0) return refuseFrom(scan, "reading-two-readings", index - 1);
	if (token.kind === "number" || token.kind === "fraction" || token.kind === "one-over") return refuseFrom(scan, "reading-two-readings", index);
	if (token.kind === "foot" || token.kind === "inch") return refuseAt(scan, "reading-unit-kind", index);
	if (token.kind === "hyphen" || token.kind === "dash") return refuseFrom(scan, "reading-hyphen-ambiguous", index);
	const symbol = namedUnit(token.text);
	if (symbol === void 0) return refuseFrom(scan, token.kind === "word" ? "reading-unit-unknown" : "reading-not-understood", index);
	if (unitKind(symbol) !== "duration") return refuseAt(scan, "reading-unit-kind", index);
	const point = scan.tokens[index + 1];
	return ok({
		unit: symbol,
		next: index + (point?.kind === "point" && touch(token, point) && !touch(point, scan.tokens[index + 2]) ? 2 : 1)
	});
}
/** Why a part can't follow a larger one: out of order, or so many that it holds the larger unit itself. */
function partFits(scan, index, unit, larger, number) {
	if (larger === void 0) return ok(true);
	if (order.indexOf(unit) <= order.indexOf(larger)) return refuseFrom(scan, "reading-two-readings", index);
	if (number.numerator >= fullAt[unit] * number.per) return refuseFrom(scan, "reading-out-of-range", index);
	return ok(true);
}
/** Days, hours, minutes and seconds, largest first, only the last with a fraction; `2 h 15` is 2 h 15 min. */
function durationAt(scan, start, expected) {
	if (scan.tokens.some((token) => token.kind === "colon")) return clockWritten(scan, start, expected);
	let whole = 0n;
	let larger;
	for (let index = start;;) {
		const number = numberAt$1(scan, index);
		if (!number.ok) return number;
		const bare = larger === void 0 ? expected : larger === "h" ? "min" : void 0;
		const unit = unitAt(scan, number.value.next, bare);
		if (!unit.ok) return unit;
		const fits = partFits(scan, index, unit.value.unit, larger, number.value);
		if (!fits.ok) return fits;
		const size = milliseconds(unit.value.unit);
		const { numerator, per } = number.value;
		if (unit.value.next >= scan.tokens.length) return ok({
			numerator: whole * per + numerator * size,
			per,
			step: size,
			unit: unit.value.unit
		});
		if (number.value.style !== "whole") return refuseFrom(scan, "reading-two-readings", unit.value.next);
		whole += numerator * size;
		larger = unit.value.unit;
		index = unit.value.next;
	}
}
// src/reading/instant.ts
var shape = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3}))?)?(Z|[+-]\d{2}:\d{2})?$/;
/** Minutes east of UTC. `-00:00` says that the offset is unknown (RFC 3339 4.3), so it is none. */
function zoneMinutes(zone) {
	if (zone === "Z") return 0;
	const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4, 6));
	if (zone === "-00:00" || minutes > 840 || Number(zone.slice(4, 6)) > 59) return void 0;
	return zone.startsWith("-") ? -minutes : minutes;
}
/** ISO 8601 date and time with its zone offset, from 1970 on. A time without zone, a day that no month has, hour 24, second 60: refused. */
function readInstant(typed, place) {
	const text = typed.trim();
	const found = text.replace(/\p{Cs}/gu, "�");
	const match = shape.exec(text);
	if (match === null) return refuse("reading-not-understood", place, { found }, 1);
	const start = typed.indexOf(text);
	const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match.slice(1, 7).map((part) => Number(part ?? 0));
	const fraction = match[7] ?? "";
	const zone = match[8];
	if (zone === void 0) return refuse("reading-not-understood", place, {
		found,
		missing: "zone"
	}, start + text.length + 1);
	const offset = zoneMinutes(zone);
	if (offset === void 0) return refuse("reading-out-of-range", place, { found: zone }, start + text.length - zone.length + 1);
	if (year < 1970 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return refuse("reading-out-of-range", place, { found: text.slice(0, 10) }, start + 1);
	if (hour > 23 || minute > 59 || second > 59) return refuse("reading-out-of-range", place, { found: text.slice(11) }, start + 12);
	const minutes = (dayNumber({
		year,
		month,
		day
	}) * 24 + hour) * 60 + minute - offset;
	const resolution = match[6] === void 0 ? 6e4 : 1e3 / 10 ** fraction.length;
	return ok({
		milliseconds: minutes * 6e4 + second * 1e3 + Number(fraction.padEnd(3, "0") || "0"),
		resolution
	});
}
// src/reading/quantity.ts
/** Largest magnitude that is taken, in the fixed unit: 1000 m, 100,000 m², 10,000 m³, 100 m³ a minute, 1000 L a minute per mm, 100 m/s, 360°, 100 MJ/m², 1000 days, 200 °C, 1 MW, 1000 V and A, 100 t, a million, 1000 %. Own. */
var largest$1 = {
	length: 1e9,
	area: 1e9,
	volume: 1e10,
	flow: 1e8,
	flowPerLength: 1e9,
	velocity: 1e5,
	angle: 36e7,
	radiation: 1e4,
	duration: 864e8,
	instant: Number.MAX_SAFE_INTEGER,
	temperature: 2e5,
	power: 1e9,
	voltage: 1e6,
	current: 1e6,
	mass: 1e8,
	count: 1e6,
	ratio: 1e7
};
var lengthUnits = [
	"in",
	"ft",
	"ft-in",
	"mm",
	"cm",
	"m"
];
var beginsNumber = (token) => token?.kind === "number" || token?.kind === "fraction" || token?.kind === "one-over";
/** All that stands after a number, written together without the points of abbreviations; nothing if a number stands apart in it. */
function unitText(rest) {
	let text = "";
	for (const [index, token] of rest.entries()) {
		const before = rest[index - 1];
		const afterWord = before?.kind === "word" && touch(before, token);
		if (beginsNumber(token) && !afterWord) return void 0;
		if (!(token.kind === "point" && afterWord)) text += token.text;
	}
	return text;
}
/** The unit named after the number (`ft²`, `sq. ft`, `° F`), or the expected one if nothing is, or only a degree sign. */
function unitAfter(scan, index, asked, expected) {
	if (index >= scan.tokens.length) return ok(expected);
	if (beginsNumber(scan.tokens[index])) return refuseFrom(scan, "reading-two-readings", index);
	const text = unitText(scan.tokens.slice(index));
	if (text === void 0) return refuseUnit(scan, index);
	if (asked.kind === "count" && text.toLowerCase() === asked.unit.toLowerCase()) return ok(expected);
	if (asked.kind === "temperature" && (text === "°" || text === "º")) return ok(expected);
	const symbol = namedUnit(text);
	if (symbol === void 0) return refuseUnit(scan, index);
	return unitKind(symbol) === asked.kind ? ok(symbol) : refuseFrom(scan, "reading-unit-kind", index);
}
function refuseUnit(scan, index) {
	const first = scan.tokens[index];
	const second = scan.tokens.slice(index).findIndex(beginsNumber);
	if (second > 0 && first !== void 0 && namedUnit(first.text) !== void 0) return refuseFrom(scan, "reading-two-readings", index + second);
	switch (first?.kind) {
		case "word": return refuseFrom(scan, "reading-unit-unknown", index);
		case "foot":
		case "inch": return refuseAt(scan, "reading-unit-kind", index);
		case "hyphen":
		case "dash": return refuseFrom(scan, "reading-hyphen-ambiguous", index);
		case "comma": return refuseFrom(scan, "reading-comma-ambiguous", index);
		case "slash": return refuseFrom(scan, "reading-fraction", index);
		default: return refuseFrom(scan, "reading-not-understood", index);
	}
}
function exactAt(scan, start, negative, asked, expected) {
	if (asked.kind === "duration") {
		const duration = durationAt(scan, start, expected);
		return duration.ok && negative ? ok({
			...duration.value,
			numerator: -duration.value.numerator
		}) : duration;
	}
	const number = numberAt$1(scan, start);
	if (!number.ok) return number;
	if (asked.kind === "count" && number.value.style !== "whole") return refuseAt(scan, "reading-fraction", start, number.value.next - 1);
	const unit = unitAfter(scan, number.value.next, asked, expected);
	if (!unit.ok) return unit;
	const { numerator: times, denominator, shift } = tradeUnits[unit.value];
	const signed = negative ? -number.value.numerator : number.value.numerator;
	const { per } = number.value;
	return ok({
		numerator: (signed + shift * per) * times,
		per: per * denominator,
		step: times,
		unit: unit.value
	});
}
function readLengthQuantity(typed, asked, place) {
	if (!lengthUnits.includes(asked.unit)) return refuse("reading-unit-unknown", place, { found: asked.unit });
	const reading = readLength(typed, asked.unit, asked);
	if (!reading.ok) return reading;
	const { micrometres, resolution, unit, marks } = reading.value;
	return ok({
		kind: "length",
		value: micrometres,
		resolution,
		typed,
		unit,
		...marks === void 0 ? {} : { marks }
	});
}
/**
* Reads a typed quantity of the kind that an item asks for. The unit asked serves only where none is typed. A sign is taken where
* `signed` says so; in temperatures it is unless `signed` is false. Exact until rounded once. Refusals as for `readLength`; a `unit`
* that the kind does not have is refused without a column, since it was not typed.
*/
function readQuantity(typed, asked) {
	const place = asked.place ?? "typed";
	if (asked.kind === "length") return readLengthQuantity(typed, asked, place);
	const scan = scanned(typed, asked);
	if (!scan.ok) return scan;
	if (asked.kind === "instant") {
		const instant = readInstant(typed, place);
		return instant.ok ? ok({
			kind: "instant",
			value: instant.value.milliseconds,
			resolution: instant.value.resolution,
			typed,
			unit: "ms"
		}) : instant;
	}
	const expected = asked.kind === "count" ? "1" : namedUnit(asked.unit);
	if (expected === void 0 || unitKind(expected) !== asked.kind) return refuse("reading-unit-unknown", place, { found: asked.unit });
	const sign = signAt(scan.value, asked.signed ?? asked.kind === "temperature");
	if (!sign.ok) return sign;
	const exact = exactAt(scan.value, sign.value.next, sign.value.negative, asked, expected);
	if (!exact.ok) return exact;
	const { numerator, per, step, unit } = exact.value;
	const value = Number(nearest(numerator, per));
	if (Math.abs(value) > largest$1[asked.kind]) return refuseFrom(scan.value, "reading-out-of-range", 0, {
		largest: largest$1[asked.kind],
		kind: asked.kind
	});
	return ok({
		kind: asked.kind,
		value,
		resolution: Math.max(1, Number(nearest(step, per))),
		typed,
		unit
	});
}
// src/job/measured.ts
/** Length of a spirit level where nothing else is known, metres: a 4 ft level (own). */
var SPIRIT_LEVEL_LENGTH = 1.2192;
/** The phone's typed instants are to the minute. */
var MINUTE_MS$4 = 6e4;
/** Metres. One distance stands for all readings of a set-up. */
var lengthIn = oncePer(({ typed, unit }, _) => {
	const read = readQuantity(typed, {
		kind: "length",
		unit
	});
	return read.ok ? read.value.value / fixedPerSi("length") : void 0;
});
/** How a typed reading of an item is read: a temperature may stand below zero without saying so in the sheet. */
function askedOf(item, unit) {
	const kind = item.quantity ?? "length";
	return {
		kind,
		unit,
		signed: item.signed ?? kind === "temperature"
	};
}
var thingNamed = oncePer((things, id) => things.find((thing) => thing.id === id));
/** A name that the sheet does not know never takes doubt away: the next one that it knows stands. */
function firstKnown(things, ...ids) {
	if (things === void 0) return void 0;
	for (const id of ids) {
		const thing = id === void 0 ? void 0 : thingNamed(things, id);
		if (thing !== void 0) return thing;
	}
}
var heightMarks = oncePer((sheet, _) => sheet.items.filter((item) => item.heightMark === true));
function circumstancesOf(state, item, fact) {
	const what = whatOf(fact, "reading-taken");
	const setUp = what.setUp === void 0 ? void 0 : state.setUps.get(what.setUp);
	return {
		what,
		setUp,
		instrument: firstKnown(state.sheet?.instruments, what.instrument, setUp?.instrument, item.instrument)
	};
}
function lineOf$1({ what, setUp, instrument }, arranged) {
	const typed = what.distance ?? setUp?.distance;
	const distance = typed && lengthIn(typed, "length");
	const far = distance === void 0 ? {} : { distance };
	if (instrument?.line === "laser") return {
		kind: "laser",
		receiver: what.receiver ?? setUp?.receiver ?? "coarse",
		...far
	};
	if (instrument?.line === "string with line level") return {
		kind: "string with line level",
		...far
	};
	if (instrument?.line !== "spirit level") return void 0;
	const lay = arranged?.lay ?? (instrument.turnedEndForEnd ? "both ways" : "first");
	return {
		kind: "spirit level",
		distance: distance ?? SPIRIT_LEVEL_LENGTH,
		lay
	};
}
function permittedErrorOf(instrument) {
	if (instrument?.exact) return { permittedErrorHalfWidth: 0 };
	if (instrument?.permittedError === void 0) return void 0;
	return { permittedErrorHalfWidth: instrument.permittedError / fixedPerSi("length") };
}
/** A length read with an instrument from a place, metres. */
function measuredLength(state, item, fact, read, arranged) {
	const found = circumstancesOf(state, item, fact);
	const halfWidth = (...ids) => (firstKnown(state.sheet?.placings, ...ids)?.halfWidth ?? 0) / fixedPerSi("length");
	const line = lineOf$1(found, arranged);
	const permitted = permittedErrorOf(found.instrument);
	const shared = arranged?.setUp ?? found.what.setUp;
	const doubtful = readingUncertainty({
		reading: fact.id,
		...shared === void 0 ? {} : { setUp: shared },
		...read,
		placingHalfWidth: halfWidth(found.what.placing, item.placing),
		...permitted === void 0 ? {} : { instrument: permitted },
		...line ? { line } : {}
	});
	if (!doubtful.ok) return void 0;
	const also = halfWidth(item.placingAlso);
	return also > 0 ? withSource(doubtful.value, `reading:${fact.id}-also/placing`, rectangular(also)) : doubtful.value;
}
var readTyped = ({ typed, unit }, item) => readQuantity(typed, askedOf(item, unit));
/** What an entry said when it was made, before any correction. */
var firstRead = oncePer((entry, item) => readTyped(entry.what, item));
/** A reading as it was typed, its last correction applied. */
var typedReading = (item, fact) => fact.correctedBy === void 0 ? firstRead(fact.entry, item) : readTyped(whatOf(fact, "reading-taken"), item);
/** A fact is one state's and that of how the state stood earlier: its sheet and its set-ups are the same. */
var measuredOf = oncePer((_, __) => ({}));
/** One reading with its doubt, SI; undefined where the text no longer reads (a sheet that changed the item's kind). */
function measured(state, item, fact, arranged) {
	if (arranged) return measuredAnew(state, item, fact, arranged);
	const own = measuredOf(fact, item);
	if (!("value" in own)) own.value = measuredAnew(state, item, fact);
	return own.value;
}
function measuredAnew(state, item, fact, arranged) {
	const { kind } = askedOf(item, "");
	const read = typedReading(item, fact);
	if (!read.ok) return void 0;
	const value = read.value.value / fixedPerSi(kind);
	const resolution = (kind === "instant" ? MINUTE_MS$4 : read.value.resolution) / fixedPerSi(kind);
	if (kind === "length") return measuredLength(state, item, fact, {
		value,
		resolution
	}, arranged);
	return withSource(certain(value), `reading:${fact.id}/resolution`, resolutionUncertainty(resolution));
}
var readingsOfTags = oncePer((_, __) => /* @__PURE__ */ new Map());
/** Every reading of an instance that counts. */
function readingsOf(state, instance, arranged) {
	if (arranged) return readAnew(state, instance, arranged);
	const known = readingsOfTags(state, instance.item);
	const readings = known.get(instance.tag) ?? readAnew(state, instance);
	known.set(instance.tag, readings);
	return readings;
}
function readAnew(state, instance, arranged) {
	return seriesOf(state, instance).counting.flatMap((fact) => {
		const value = measured(state, instance.item, fact, arranged);
		const setUp = whatOf(fact, "reading-taken").setUp;
		return value === void 0 ? [] : [{
			fact,
			value,
			...setUp === void 0 ? {} : { setUp }
		}];
	});
}
/** The height mark of a set-up, read first and last: whether the line stood still in between. */
var closingOf = oncePer((state, setUp) => {
	const marks = state.sheet ? heightMarks(state.sheet, "all") : [];
	if (marks.length === 0) return {
		state: "closed",
		reads: []
	};
	const read = marks.flatMap((item) => readingsOf(state, { item })).filter((reading) => reading.setUp === setUp).sort((a, b) => a.fact.position - b.fact.position);
	const reads = read.map((r) => r.fact);
	const [first, ...later] = read;
	const last = later.at(-1);
	if (first === void 0) return {
		state: "so far",
		reads
	};
	if (last === void 0) return {
		state: "so far",
		mark: first.value,
		reads
	};
	const made = state.setUps.get(setUp);
	const receiver = firstKnown(state.sheet?.instruments, made?.instrument, marks[0]?.instrument)?.line === "laser" ? made?.receiver ?? "coarse" : void 0;
	const { agrees, difference, allowed } = setUpCloses(first.value, last.value, receiver);
	const mark = repeated([first.value, ...later.map((r) => r.value)]).mean;
	return {
		state: agrees ? "closed" : "does not close",
		difference,
		allowed,
		mark,
		reads
	};
});
// src/job/evaluation.ts
/** The item as a check for `tag` reads it: for that tag, where the item repeats. */
var instanceFor = (item, tag) => item.tags === void 0 || tag === void 0 ? { item } : {
	item,
	tag
};
function instancesOf({ state, tag }, ids) {
	return ids.flatMap((id) => {
		const item = state.sheet && itemNamed(state.sheet, id);
		return item === void 0 ? [] : [instanceFor(item, tag)];
	});
}
var lacking = (instances, entries = []) => ({
	state: "lacking",
	missing: instances.map(aboutOf),
	entries
});
function readAll(context, ids, arrange) {
	return new Map(instancesOf(context, ids).map((instance, i) => [instance.item.id, readingsOf(context.state, instance, arrange?.(i))]));
}
var entriesOf = (readings) => [...readings.values()].flat().map((r) => r.fact);
function missingOf(context, ids, readings) {
	return instancesOf(context, ids).filter(({ item }) => (readings.get(item.id) ?? []).length === 0);
}
/** Several readings of one point as one. */
function pointOf$1(readings) {
	const [first, ...rest] = readings.map((r) => r.value);
	if (first === void 0) return void 0;
	if (rest.length === 0) return {
		value: first,
		agrees: true
	};
	const { mean: value, asksForThird } = repeated([first, ...rest]);
	return {
		value,
		agrees: !asksForThird
	};
}
/** The value that `of` makes of the points of all items, where each has been read. */
function compute(ids, readings, of) {
	const points = /* @__PURE__ */ new Map();
	let agrees = true;
	for (const id of ids) {
		const point = pointOf$1(readings.get(id) ?? []);
		if (point === void 0) return void 0;
		points.set(id, point.value);
		agrees &&= point.agrees;
	}
	const value = of(points);
	return value === void 0 ? void 0 : {
		value,
		agrees
	};
}
var disagree = {
	key: "reason.readings-disagree",
	figures: {}
};
/** A value from readings that stand by themselves. */
function plain$1(context, ids, readings, of) {
	const entries = entriesOf(readings);
	const result = compute(ids, readings, of);
	if (result === void 0) return lacking(missingOf(context, ids, readings), entries);
	return {
		state: "value",
		value: result.value,
		entries,
		...result.agrees ? {} : { unsettled: disagree }
	};
}
var pick$1 = (points, ids) => {
	const [first, ...rest] = ids.map((id) => points.get(id)).filter((p) => p !== void 0);
	return first === void 0 ? void 0 : [first, ...rest];
};
/** The mean of the check's items, less the mean of those that are taken off. */
var meanLess = ({ items, minus = [] }) => (points) => {
	const [of, off] = [pick$1(points, items), pick$1(points, minus)];
	if (of === void 0) return void 0;
	return off === void 0 ? mean(of) : subtract(mean(of), mean(off));
};
// src/job/figures.ts
var isTyped$1 = (figure) => typeof figure === "object" && figure !== null && "typed" in figure && "unit" in figure ? typeof figure.typed === "string" && typeof figure.unit === "string" : false;
/** As somebody typed it: a design and a card are read for every check that rests on them. */
var readFigure = oncePer(({ typed, unit }, kind) => readQuantity(typed, {
	kind,
	unit,
	signed: true
}));
/**
* A figure of the design or, where the design is silent, of a kit card, as an integer in the fixed unit of `kind`.
* `undefined` where nobody said it, or where it is named as unknown.
*/
function figureValue(source, key, kind) {
	const typed = [source.design.figures, ...source.kitCards.map((card) => card.facts)].find((figures) => Object.hasOwn(figures, key))?.[key];
	if (!isTyped$1(typed)) return void 0;
	const read = readFigure(typed, kind);
	return read.ok ? read.value.value : void 0;
}
function switchOn(sheet, design, id) {
	return (Object.hasOwn(design.switches, id) ? design.switches[id] : void 0) ?? sheet.switches.find((s) => s.id === id)?.standard ?? false;
}
/** Whether an item or check is asked under this design. */
function isAsked(sheet, design, switches) {
	if (switches === void 0) return true;
	return (switches.on ?? []).every((id) => switchOn(sheet, design, id)) && (switches.off ?? []).every((id) => !switchOn(sheet, design, id));
}
// src/job/instances.ts
/** The design that something is judged by: the one in force when it was covered, else the newest. */
var designFor = oncePer((state, covering) => {
	const covered = coveredOf(state, covering);
	return designAt(state, covered?.position ?? Number.POSITIVE_INFINITY, covered?.at);
});
var tagsOf = (state, set) => set === void 0 ? [void 0] : state.tags.filter((t) => t.set === set).map((t) => t.tag);
var withTag = (thing, tag) => tag === void 0 ? thing : {
	...thing,
	tag
};
/** Whether something is asked under the design that it is judged by, for a tag of its set where it repeats. */
var isAskedNow = (state, sheet, asked, set, tag) => asked.switches === void 0 || isAsked(sheet, designFor(state, coveringHeld(state, asked, set, tag)), asked.switches);
/** Every item that the sheet asks under this design, once for each tag where it repeats. */
function askedItems(state, sheet) {
	return sheet.items.flatMap((item) => {
		if (item.whenNoTagOf !== void 0 && state.tags.some((t) => t.set === item.whenNoTagOf)) return [];
		return tagsOf(state, item.tags).map((tag) => withTag({ item }, tag)).filter(({ tag }) => isAskedNow(state, sheet, item, item.tags, tag));
	});
}
function askedChecks(state, sheet) {
	return sheet.checks.flatMap((check) => {
		const set = tagSetOf(sheet.items, check);
		return tagsOf(state, set).map((tag) => withTag({ check }, tag)).filter(({ tag }) => isAskedNow(state, sheet, check, set, tag));
	});
}
// src/tolerance/limits.ts
/** Limits that can be judged by: at least one, all finite, lower <= aim <= upper. Otherwise a refusal that names them. */
function checkLimits(limits, place) {
	const { aim, lower, upper } = limits;
	const isUnfit = (limit) => limit !== void 0 && !Number.isFinite(limit);
	if (isUnfit(aim)) return refuse("number-not-finite", `${place}/aim`);
	if (isUnfit(lower)) return refuse("number-not-finite", `${place}/lower`);
	if (isUnfit(upper)) return refuse("number-not-finite", `${place}/upper`);
	if (lower === void 0 && upper === void 0) return refuse("limits-missing", place);
	if (lower !== void 0 && upper !== void 0 && lower > upper) return refuse("limits-crossed", place, {
		lower,
		upper
	});
	if (aim !== void 0 && lower !== void 0 && aim < lower) return refuse("limits-crossed", `${place}/aim`, {
		lower,
		upper: aim
	});
	if (aim !== void 0 && upper !== void 0 && aim > upper) return refuse("limits-crossed", `${place}/aim`, {
		lower: aim,
		upper
	});
	return ok(limits);
}
// src/tolerance/judge.ts
/** Signed room to the nearest limit: negative when the value is past it. */
function nearestLimit(value, { lower, upper }) {
	const above = upper === void 0 ? Number.POSITIVE_INFINITY : upper - value;
	const below = lower === void 0 ? Number.POSITIVE_INFINITY : value - lower;
	return above <= below ? {
		room: above,
		nearest: "upper"
	} : {
		room: below,
		nearest: "lower"
	};
}
function verdictOf(room, U) {
	if (room >= U) return "within";
	return -room > U ? "outside" : "too close to call";
}
/** Integers are what a verdict is taken from; anything else that is finite comes from a caller who forgot `leaveCore`. */
function assertWhole(name, figure) {
	if (figure !== void 0 && !Number.isSafeInteger(figure)) throw new TypeError(`${name} must be a whole number of fixed units`);
}
/**
* The verdict on one measured value. Guarded: value ± U wholly inside the limits is `within`, wholly outside is `outside`,
* else `too close to call`; a band that just touches its limit from inside is within. Simple: inside or on the limit is
* `within`, else `outside`. Refuses figures that are not finite, a negative U, crossed limits, an aim outside them, no limit.
*/
function judge$1({ value, expanded, rule, aim, lower, upper }) {
	if (!Number.isFinite(value)) return refuse("number-not-finite", "value");
	if (!Number.isFinite(expanded)) return refuse("number-not-finite", "expanded");
	if (expanded < 0) return refuse("number-not-positive", "expanded");
	const limits = checkLimits({
		aim,
		lower,
		upper
	}, "limits");
	if (!limits.ok) return limits;
	assertWhole("value", value);
	assertWhole("expanded", expanded);
	assertWhole("aim", aim);
	assertWhole("lower", lower);
	assertWhole("upper", upper);
	const { room, nearest } = nearestLimit(value, limits.value);
	const verdict = verdictOf(room, rule === "simple" ? 0 : expanded);
	const side = room >= 0 ? "inside" : "outside";
	const by = Math.abs(room);
	const needed = side === "inside" ? by : by - 1;
	return ok(verdict === "too close to call" ? {
		verdict,
		side,
		nearest,
		by,
		needed
	} : {
		verdict,
		side,
		nearest,
		by
	});
}
// src/tolerance/leave-core.ts
/** Nearest whole number, half away from zero, so that a value and its mirror round alike. */
var toInteger = (x) => {
	const size = Math.round(Math.abs(x));
	return x < 0 && size !== 0 ? -size : size;
};
/** Fixed units per SI unit: micrometres for lengths (the default), millilitres for volumes. */
var MICROMETRES_PER_METRE = 1e6;
/** The one place where a finding leaves floats: value and U, each rounded once to the fixed unit. */
function leaveCore(x, perUnit = MICROMETRES_PER_METRE) {
	return {
		value: toInteger(x.value * perUnit),
		expanded: toInteger(expanded(x) * perUnit)
	};
}
// src/job/as-typed.ts
/** A letter or a mark of feet, inches or degrees: the unit was typed with the number. */
var hasUnit = /[\p{L}°%'"‘’“”′″]/u;
/** A reading as it was typed; the unit beside it only where none was typed. */
function asTyped(typed, unit) {
	if (unit === "ft-in" && /(ft|feet|foot|pies?|['‘’′])\s*\d[\d\s/.]*$/i.test(typed)) return `${typed.trimEnd()} in`;
	if (hasUnit.test(typed) || unit === "" || unit === "1") return typed;
	return `${typed} ${unit === "ft-in" ? "in" : unit}`;
}
// src/job/passages.ts
/** A concession is for what was known when it was given: a newer entry, or rework, needs a new one. */
function concession(state, subject) {
	const given = factsOf(state, "concession").filter((f) => f.position > subject.newest && subject.names(f.what.about)).at(-1);
	return given && {
		way: "concession",
		entry: given.id
	};
}
/** A departure must have been agreed before the covering, and the value with its doubt must lie inside it. */
function departure(state, subject) {
	const { value, doubt, holds } = subject;
	if (value === void 0) return void 0;
	const covered = coveredOf(state, holds);
	const agreed = factsOf(state, "departure-agreed").filter((f) => (covered === void 0 || isBefore(f, covered)) && subject.names(f.what.about)).at(-1);
	if (agreed === void 0) return void 0;
	const { lower, upper } = agreed.what;
	const judged = judge$1({
		value,
		expanded: doubt ?? 0,
		rule: "guarded",
		...lower === void 0 ? {} : { lower },
		...upper === void 0 ? {} : { upper }
	});
	return judged.ok && judged.value.verdict === "within" ? {
		way: "departure",
		entry: agreed.id
	} : void 0;
}
/** A go-ahead covers what was open when it was given: everything that holds, or what it names. The office's own is confirmed. */
function goAhead(state, { holds, names, newest }) {
	const all = factsOf(state, "go-ahead");
	const denied = new Set(factsOf(state, "go-ahead-denied").map(({ what }) => what.goAhead));
	const given = all.filter(({ id }) => !denied.has(id)).filter(({ what, position }) => what.confirms === void 0 && position > newest && (holds === void 0 || what.covering === holds)).filter(({ what }) => what.about === void 0 ? holds !== void 0 : what.about.some(names)).at(-1);
	if (given === void 0) return void 0;
	const confirmed = given.what.role !== "crew" || all.some((f) => f.what.confirms === given.id && f.what.role !== "crew");
	return {
		way: "go-ahead",
		entry: given.id,
		confirmed
	};
}
/** What lets something pass in spite of its verdict, the firmest first. */
function passageOf(state, subject) {
	return concession(state, subject) ?? departure(state, subject) ?? goAhead(state, subject);
}
// src/photo/taken.ts
var MINUTE_MS$3 = 6e4;
/** The camera drops the fractions of a second. */
var REST_OF_SECOND_MS = 999;
/** Minutes east of UTC between which every offset of the world lies. */
var WORLD = [-720, 840];
/** When a picture was taken. A wall clock whose zone is unknown spans every zone of the world: 26 hours. */
function momentOf$1(taken) {
	const { offset, offsetFrom = "tag" } = taken;
	return offset === void 0 ? spanning(taken, WORLD, "nothing") : spanning(taken, [minutesOf(offset)], offsetFrom);
}
/**
* The same for a picture of a site whose possible offsets are known, in minutes east of UTC (two in the hour that happens
* twice). What the camera itself says about its zone comes first.
*/
function momentAt(taken, siteOffsets) {
	return taken.offset !== void 0 || siteOffsets.length === 0 ? momentOf$1(taken) : spanning(taken, siteOffsets, "site");
}
function spanning({ text }, offsets, settledBy) {
	const asUtc = Date.parse(`${text}Z`);
	return {
		earliest: asUtc - Math.max(...offsets) * MINUTE_MS$3,
		latest: asUtc - Math.min(...offsets) * MINUTE_MS$3 + REST_OF_SECOND_MS,
		settledBy
	};
}
function minutesOf(offset) {
	const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
	return offset.startsWith("-") ? -minutes : minutes;
}
// src/job/picture-facts/photo-read.ts
var DAY_MS$1 = 864e5;
var MINUTE_MS$2 = 6e4;
/** A radius beyond this tells nothing: the earth is no larger. */
var EARTH_MM = 201e8;
var fields = (value) => typeof value === "object" && value !== null && !Array.isArray(value) ? value : {};
var whole = (value, least, most) => typeof value === "number" && Number.isSafeInteger(value) && value >= least && value <= most ? value : void 0;
/** A fix, alone or under `position`; undefined where it is none. */
function fixOf(where) {
	const given = fields(fields(where).position ?? where);
	const latitude = whole(given.latitude, -9e8, 9e8);
	const longitude = whole(given.longitude, -18e8, 18e8);
	if (latitude === void 0 || longitude === void 0) return void 0;
	const accuracy = whole(given.accuracy, 0, EARTH_MM);
	const age = whole(given.age, 0, Number.MAX_SAFE_INTEGER);
	return {
		latitude,
		longitude,
		...accuracy === void 0 ? {} : { accuracy },
		...age === void 0 ? {} : { age }
	};
}
/** A wall clock's milliseconds as if it were UTC; undefined where it is no date. */
function wallClock(text) {
	const parts = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})$/.exec(text);
	if (parts === null) return void 0;
	const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts.slice(1).map(Number);
	if (month < 1 || day < 1 || day > daysInMonth(year, month) || hour > 23 || minute > 59 || second > 59) return void 0;
	return dayNumber({
		year,
		month,
		day
	}) * DAY_MS$1 + (hour * 60 + minute) * MINUTE_MS$2 + second * 1e3;
}
/** The camera's date as the ledger has it; one that is not in its shape is none. */
function takenOf(json) {
	const { text, offset, offsetFrom, source } = fields(json);
	if (typeof text !== "string" || wallClock(text) === void 0) return void 0;
	const known = typeof offset === "string" && /^[+-]\d{2}:\d{2}$/.test(offset);
	return {
		text,
		source: source === "digitized" ? "digitized" : "original",
		...known ? {
			offset,
			offsetFrom: offsetFrom === "satellite" ? "satellite" : "tag"
		} : {}
	};
}
var satelliteOf = (text) => typeof text === "string" && text.endsWith("Z") ? wallClock(text.slice(0, -1)) : void 0;
/** Four codes of one card say the same and count once. */
function cardsOf(json) {
	const all = (Array.isArray(json) ? json : []).map((card) => {
		const { of, job, step } = fields(fields(card).says);
		const said = {
			of: of === "this job" || of === "another job" ? of : "nothing",
			...typeof step === "string" ? { step } : {}
		};
		return [said.of === "nothing" ? "" : JSON.stringify([
			of,
			job,
			step
		]), said];
	});
	return [...new Map(all).values()];
}
var isPixel = (json) => Array.isArray(json) && json.length === 2 && json.every(Number.isSafeInteger);
function cornersOf(json) {
	return (Array.isArray(json) ? json : []).flatMap((card) => {
		const { corners } = fields(card);
		return Array.isArray(corners) && corners.length === 4 && corners.every(isPixel) ? [corners] : [];
	});
}
/** What the ledger has of each photo that media read, by its hash. */
var photosRead = oncePer((state, _) => {
	const read = factsOf(state, "picture-read").map(({ what, entry }) => {
		const facts = fields(what.facts);
		const taken = takenOf(facts.taken);
		const position = fixOf(entry.where);
		const notes = Array.isArray(facts.notes) ? facts.notes.filter((note) => typeof note === "string") : [];
		const satellite = notes.includes("satellite-date-missing") ? void 0 : satelliteOf(facts.satelliteTime);
		const found = {
			...taken === void 0 ? {} : { taken },
			...position === void 0 ? {} : { position },
			...satellite === void 0 ? {} : { satellite },
			notes,
			placeWithheld: position === void 0 && facts.position !== void 0 && !notes.some((note) => /^(position|metadata)-/.test(note)),
			unreadable: Boolean(facts.unreadable),
			cards: cardsOf(facts.cards),
			...Array.isArray(facts.cards) ? { corners: cornersOf(facts.cards) } : {}
		};
		return [what.photo, found];
	});
	return new Map(read);
});
// src/job/picture-facts/site-zone.ts
var MINUTE_MS$1 = 6e4;
var DAY_MS = 864e5;
/** Minutes that a zone lies east of UTC at an instant; undefined for a zone that this machine does not know. */
function offsetAt(instant, zone) {
	try {
		const name = new Intl.DateTimeFormat("en-US", {
			timeZone: zone,
			timeZoneName: "longOffset"
		}).formatToParts(instant).find(({ type }) => type === "timeZoneName")?.value ?? "";
		const match = /^GMT(?:([+-])(\d{2}):(\d{2}))?$/.exec(name);
		if (match === null) return void 0;
		return (match[1] === "-" ? -1 : 1) * (Number(match[2] ?? 0) * 60 + Number(match[3] ?? 0));
	} catch {
		return;
	}
}
/**
* Minutes east of UTC that a clock of the zone may have stood at when it read this wall clock (given as if it were UTC, ms): one,
* two in the hour that comes twice, none in the hour that is left out or where the zone is not known. It goes by the day of the
* wall clock alone.
*/
function offsetsWhenRead(wallClock, zone) {
	const read = [offsetAt(wallClock - DAY_MS, zone), offsetAt(wallClock + DAY_MS, zone)].filter((offset) => offset !== void 0 && offsetAt(wallClock - offset * MINUTE_MS$1, zone) === offset);
	return [...new Set(read)].sort((a, b) => b - a);
}
// src/job/picture-facts/picture-time.ts
/** How far a camera's clock may be off without anybody noticing (own). A phone's clock is set by its network, a camera's by hand. */
var CAMERA_DOUBT_MS = 3e5;
var doubtOf = ({ doubt }) => Math.ceil(2 * doubt);
var about = (at, doubt) => ({
	earliest: at - doubt,
	latest: at + doubt
});
/** The middle of a stretch and half of its length, whole ms. */
var middle = ({ earliest, latest }) => Math.round((earliest + latest) / 2);
var halfOf = ({ earliest, latest }) => Math.ceil((latest - earliest) / 2);
var meet = (one, other) => one.earliest <= other.latest && other.earliest <= one.latest;
/** The app's own moment; no picture was taken after its entry was made. */
function appMoment(fact) {
	const { taken } = fact.what;
	if (fact.kind !== "picture-taken" || !isInstant(taken)) return void 0;
	return about(Math.min(fact.at, fact.at + (taken - fact.entry.made)), doubtOf(fact));
}
/** The camera may be the phone's own, whose clock is off by as much as the phone's, or another: both are allowed for. */
function widened({ earliest, latest }, { kind, at, entry }) {
	const off = kind === "picture-taken" ? at - entry.made : 0;
	return {
		earliest: earliest + Math.min(0, off) - CAMERA_DOUBT_MS,
		latest: latest + Math.max(0, off) + CAMERA_DOUBT_MS
	};
}
/** The stretches that a clock of unknown zone means if it stood in the site's, the earlier first: two in the hour that comes twice. */
function inSiteZone(state, taken) {
	const asUtc = wallClock(taken.text);
	if (taken.offset !== void 0 || asUtc === void 0 || state.opened === void 0) return [];
	return offsetsWhenRead(asUtc, state.opened.zone).map((offset) => momentAt(taken, [offset]));
}
function besideApp(state, fact, taken, app) {
	const camera = widened(momentOf$1(taken), fact);
	const ownTime = {
		...app,
		from: "app",
		app,
		taken
	};
	if (camera.earliest > app.latest) return {
		...ownTime,
		camera: "later"
	};
	if (camera.latest < app.earliest) return {
		...camera,
		from: "camera",
		camera: "earlier",
		app,
		taken
	};
	if (taken.offset !== void 0 || inSiteZone(state, taken).some((stretch) => meet(widened(stretch, fact), app))) return {
		...ownTime,
		camera: "agrees"
	};
	return {
		earliest: camera.earliest,
		latest: app.latest,
		from: "camera",
		camera: "either",
		app,
		taken
	};
}
/**
* When a picture was taken: the app's own moment where the camera's clock bears it out or says nothing; the camera's where that
* is earlier, for a picture may be older than the moment at which it was put in. A camera's time after it was put in is a
* clock that is off, and counts for nothing.
*/
function pictureTime(state, fact) {
	const taken = photosRead(state, "all").get(String(fact.what.photo))?.taken;
	const app = appMoment(fact);
	if (taken && app) return besideApp(state, fact, taken, app);
	if (app) return {
		...app,
		from: "app",
		camera: "silent",
		app
	};
	const there = fact.at + doubtOf(fact);
	const nothing = {
		earliest: Number.NEGATIVE_INFINITY,
		latest: there,
		from: "entry"
	};
	if (taken === void 0) return {
		...nothing,
		camera: "silent"
	};
	const camera = widened(momentOf$1(taken), fact);
	if (camera.earliest > there) return {
		...nothing,
		camera: "later",
		taken
	};
	const latest = Math.min(camera.latest, there);
	return {
		earliest: camera.earliest,
		latest,
		from: "camera",
		camera: taken.offset === void 0 ? "either" : "agrees",
		taken
	};
}
// src/job/picture-facts/beside-covering.ts
/** What a time is worth that was said later than it happened (own). */
var SAID_LATER_MS = 9e5;
var MINUTE_MS = 6e4;
/** Clocks of two phones that never met the edge's, one of them at least, cannot be put beside each other. */
var areComparable = (one, other) => one.entry.author.phone === other.entry.author.phone || [one, other].every(({ entry }) => entry.sent !== void 0);
/** The covering that hides what an item shows: what it holds, or what the 'one of' that it stands in holds. */
function hiddenBy(state, { item, tag }) {
	return (state.sheet && oneOfHolding(state.sheet, item.id))?.holds ?? (item.weight === "holds" ? coveringHeld(state, item, item.tags, tag) : void 0);
}
function stretchOf({ fact, at }) {
	const saidLater = isInstant(fact.what.at) && Math.abs(fact.entry.made - fact.what.at) > MINUTE_MS;
	const doubt = doubtOf(fact) + (saidLater ? SAID_LATER_MS : 0);
	return {
		earliest: at - doubt,
		latest: at + doubt
	};
}
/**
* Whether a picture was taken before or after what it shows was hidden; undefined while nothing hides it. Only times that
* leave no doubt say so. A covering that is inferred happened no later than its entry, nobody knows when, and a picture
* received otherwise proves no order: neither is told.
*/
function besideCovering(state, instance, picture) {
	const covered = coveredOf(state, hiddenBy(state, instance));
	if (covered === void 0) return void 0;
	const [covering, time] = [stretchOf(covered), pictureTime(state, picture)];
	const order = () => {
		if (picture.kind === "received-otherwise") return "received otherwise";
		if (covered.noLaterThan) return "covering inferred";
		if (!areComparable(picture, covered.fact)) return "cannot be told";
		if (time.latest <= covering.earliest) return "before";
		return time.earliest > covering.latest ? "after" : "cannot be told";
	};
	return {
		order: order(),
		covered,
		covering,
		time
	};
}
/** Both times with their doubts, ms. A picture's stretch without a beginning has its end alone. */
function timesOf({ time, covering }) {
	return {
		...Number.isFinite(time.earliest) ? {
			takenInstant: middle(time),
			takenDoubtDuration: halfOf(time)
		} : { takenInstant: Math.round(time.latest) },
		coveredInstant: middle(covering),
		coveredDoubtDuration: halfOf(covering)
	};
}
// src/job/picture-facts/looks.ts
var looks = oncePer((state, _) => new Map(factsOf(state, "picture-looked-at").map((fact) => [fact.what.picture, fact])));
/** The last look of a person at a picture, by the picture's entry. */
var lookAt = (state, picture) => looks(state, "all").get(picture);
// src/job/picture-outcome.ts
/** Pictures that media could not open. */
var unreadablePhotos = oncePer((state, _) => {
	const facts = factsOf(state, "picture-read").filter(({ what }) => typeof what.facts === "object" && what.facts !== null && "unreadable" in what.facts && what.facts.unreadable);
	return new Set(facts.map((f) => f.what.photo));
});
/** What a person saw on it counts before what a machine made of it, but for its time, which nobody sees. */
function shown(state, instance, picture, unreadable) {
	const looked = lookAt(state, picture.id)?.what.says;
	if (looked === "does not show it") return looked;
	if (besideCovering(state, instance, picture)?.order === "after") return "after covering";
	if (looked === "shows it") return looked;
	if (picture.what.judged === "unreadable" || unreadable.has(String(picture.what.photo))) return "unreadable";
	return looked ?? "nobody looked yet";
}
var pictureOrder = [
	"shows it",
	"nobody looked yet",
	"cannot tell",
	"after covering",
	"unreadable",
	"does not show it"
];
/** The best of the pictures taken stands for all. */
function pictureOutcome(state, instance, pictures) {
	const unreadable = unreadablePhotos(state, "all");
	const [first] = pictures.map((picture) => ({
		picture,
		is: shown(state, instance, picture, unreadable)
	})).sort((a, b) => pictureOrder.indexOf(a.is) - pictureOrder.indexOf(b.is));
	const best = first?.is;
	const beside = best === "after covering" && first ? besideCovering(state, instance, first.picture) : void 0;
	if (beside) return {
		verdict: "too close to call",
		says: message("picture.after-covering", timesOf(beside))
	};
	if (best === "does not show it") return {
		verdict: "outside",
		says: message("picture.does-not-show")
	};
	if (best === "unreadable") return {
		verdict: "too close to call",
		says: message("picture.unreadable")
	};
	if (best === "shows it") return {
		verdict: "within",
		says: message("picture.shows")
	};
	return {
		verdict: "within",
		says: message(best === "cannot tell" ? "picture.cannot-tell" : "picture.not-looked-at")
	};
}
// src/job/plan-area.ts
/** Plan area of the basin, square metres: rectangular or round, from its figures under the design that holds; undefined where they are unknown. */
function planArea(state, holds) {
	const figures = {
		design: designFor(state, holds),
		kitCards: state.kitCards
	};
	const [length, width, diameter] = [
		"basinLength",
		"basinWidth",
		"basinDiameter"
	].map((key) => {
		const value = figureValue(figures, key, "length");
		return value === void 0 ? void 0 : value / fixedPerSi("length");
	});
	if (length !== void 0 && width !== void 0) return length * width;
	return diameter === void 0 ? void 0 : Math.PI / 4 * diameter * diameter;
}
// src/job/item-finding.ts
function answerOutcome(instance, answers) {
	const chosen = instance.item.choices?.find((c) => c.id === answers.at(-1)?.what.choice);
	const verdict = chosen?.accepts ? "within" : "outside";
	return {
		verdict,
		says: message(`answer.${verdict}`, { choice: chosen?.id ?? "" })
	};
}
var asTypedAll = (readings) => readings.map((r) => asTyped(String(r.what.typed), String(r.what.unit))).join("; ");
/** Set-ups of these readings, the newest last. */
var setUpsOf = (readings) => [...new Set(readings.flatMap(({ what }) => typeof what.setUp === "string" ? [what.setUp] : []).reverse())].reverse();
/** Of the height mark only the set-up that counts speaks: the newest that read the places and closed, if one did. */
function markOutcome(state, { item }, readings) {
	const used = mostRead(state, item.step);
	const read = setUpsOf(readings);
	const candidates = read.some((setUp) => used.has(setUp)) ? read.filter((setUp) => used.has(setUp)) : read;
	const standing = candidates.filter((setUp) => closingOf(state, setUp).state !== "does not close");
	const counting = standing.length > 0 ? standing : candidates;
	const setUp = counting.at(-1);
	if (setUp === void 0) return void 0;
	const closing = closingOf(state, setUp);
	const figures = {
		typed: asTypedAll(readings.filter(({ what }) => what.setUp === setUp)),
		difference: closing.difference ?? 0,
		allowed: closing.allowed ?? 0
	};
	const outside = readings.filter(({ what }) => !counting.includes(String(what.setUp))).map(({ id }) => id);
	const aside = outside.length > 0 ? { aside: outside } : {};
	if (closing.state === "does not close") return {
		verdict: "too close to call",
		says: message("mark.does-not-close", figures),
		...aside
	};
	if (closing.state === "closed") return {
		verdict: "within",
		says: message("mark.closed", figures),
		...aside
	};
	return {
		verdict: "within",
		says: message("mark.so-far", figures),
		soFar: true,
		...aside
	};
}
/** A reading without a check of its own is asked for, not judged; the height mark's last must close the set-up. */
function readingOutcome(state, instance, readings) {
	const mark = instance.item.heightMark === true ? markOutcome(state, instance, readings) : void 0;
	if (mark) return mark;
	const instant = instance.item.quantity === "instant" ? Date.parse(String(readings.at(-1)?.what.typed)) : NaN;
	if (Number.isSafeInteger(instant)) return {
		verdict: "within",
		says: message("reading.instant", { takenInstant: instant })
	};
	return {
		verdict: "within",
		says: message("reading.taken", { typed: asTypedAll(readings) })
	};
}
function entered(state, instance, counting) {
	if (instance.item.kind === "picture") return pictureOutcome(state, instance, counting);
	if (instance.item.kind === "answer") return answerOutcome(instance, counting);
	return readingOutcome(state, instance, counting);
}
/** The set-ups that read most places of a step that a height mark stands in. */
var mostRead = oncePer((state, step) => {
	const places = state.sheet?.items.filter((item) => item.step === step && item.inSetUp && !item.heightMark) ?? [];
	const read = /* @__PURE__ */ new Map();
	for (const place of places) {
		const setUps = new Set(seriesOf(state, { item: place }).counting.map((f) => f.what.setUp));
		for (const setUp of setUps) if (typeof setUp === "string") read.set(setUp, (read.get(setUp) ?? 0) + 1);
	}
	const most = Math.max(...read.values());
	return new Set([...read].filter(([, count]) => count === most).map(([setUp]) => setUp));
});
/** A height mark is owed where the set-ups that read most places of its step have all gone without it. */
function isMarkOwed(state, { item }, counting) {
	if (item.heightMark !== true || counting.length === 0) return false;
	const used = mostRead(state, item.step);
	return used.size > 0 && !counting.some((f) => used.has(String(f.what.setUp)));
}
/** What an item holds: itself, or through the 'one of' that it stands in. */
function weightOf(state, instance) {
	const one = state.sheet && oneOfHolding(state.sheet, instance.item.id);
	if (one) return {
		weight: "holds",
		holds: one.holds
	};
	const holds = instance.item.weight === "holds" ? coveringHeld(state, instance.item, instance.item.tags, instance.tag) : void 0;
	return {
		weight: instance.item.weight,
		...holds === void 0 ? {} : { holds }
	};
}
function outcomeOf(state, instance, series, word) {
	if (word) return wordPart(word);
	if (series.counting.length > 0 && !isMarkOwed(state, instance, series.counting)) return entered(state, instance, series.counting);
	return {
		verdict: "not taken",
		says: message(series.cut ? "item.not-taken-again" : "item.not-taken")
	};
}
/** Water that an item wins over the basin's plan area, millilitres. */
function winsOf(state, { wins }, holds) {
	const area = wins && planArea(state, holds);
	if (wins === void 0 || area === void 0) return {};
	const volume = (depth) => toInteger(area * depth / fixedPerSi("length") * fixedPerSi("volume"));
	return { wins: {
		kind: "volume",
		lower: volume(wins.lower),
		upper: volume(wins.upper)
	} };
}
/** The finding of one item, for one tag where it repeats. */
function itemFinding(state, instance) {
	const { item, tag } = instance;
	const own = aboutOf(instance);
	const names = (about) => sameAbout(about, own);
	const series = seriesOf(state, instance);
	const newest = Math.max(-1, series.counting.at(-1)?.position ?? -1, series.cut?.position ?? -1);
	const word = lastWord(state, names, item.mayNotApply === true, newest);
	const weight = weightOf(state, instance);
	const outcome = outcomeOf(state, instance, series, word);
	return {
		step: item.step,
		check: item.id,
		of: item.kind,
		...tag === void 0 ? {} : { tag },
		...weight,
		...outcome,
		entries: [...series.counting.map((f) => f.id), ...word ? [word.fact.id] : []],
		...outcome.verdict === "not taken" ? { missing: [own] } : {},
		...winsOf(state, item, weight.holds),
		...ruledBy(outcome)
	};
	function ruledBy({ verdict }) {
		if (verdict === "does not apply") return word ? { by: {
			way: "does not apply",
			entry: word.fact.id
		} } : {};
		if (verdict === "within") return series.beforeRework.length > 0 && series.cut ? { by: {
			way: "rework",
			entry: series.cut.entry
		} } : {};
		const by = passageOf(state, {
			names,
			holds: weight.holds,
			newest: Math.max(newest, word?.fact.position ?? -1)
		});
		return by ? { by } : {};
	}
}
// src/job/clears.ts
/**
* The one table of what clears. A finding that does not clear by its verdict may clear by what was decided about it.
*
* | finding | clears |
* |---|---|
* | within: in its limits, an accepting answer, a picture not judged unreadable, within after rework | yes |
* | does not apply: the sheet allows it, or the office said it | yes |
* | anything with a concession, or inside a departure agreed beforehand | yes |
* | anything with a go-ahead that the office confirmed | yes |
* | anything with a go-ahead by telephone | on word |
* | outside, too close to call, not taken, could not be taken; a limit that waits for an unknown figure | no |
* | met only from an instant that has not come | no |
*/
function standingOf(finding, now) {
	const { verdict, from = now, by } = finding;
	if (verdict === "does not apply" || verdict === "within" && from <= now) return "clears";
	if (by?.way === "concession" || by?.way === "departure") return "clears";
	if (by?.way === "go-ahead") return by.confirmed ? "clears" : "on word";
	return "holds";
}
var byTelephone = ["call the office", "go-ahead by telephone"];
/** The ways out of a line, nearest first. */
function waysOutOf(finding, mayNotApply) {
	if (finding.of === "tag set") return ["name it"];
	const isWaiting = finding.missing !== void 0 && finding.missing.length > 0;
	if (finding.unknown !== void 0) return [
		...isWaiting ? ["take it"] : [],
		"ask for the figure",
		...byTelephone
	];
	if (finding.verdict === "within") return ["wait", ...byTelephone];
	if (finding.verdict === "not taken") return [
		"take it",
		...mayNotApply ? ["does not apply"] : [],
		"could not be taken",
		...byTelephone
	];
	if (finding.verdict === "could not be taken") return ["take it", ...byTelephone];
	if (finding.verdict === "too close to call") return ["take it again", ...byTelephone];
	return [
		"rework it",
		"take it again",
		...byTelephone
	];
}
// src/job/lines.ts
/** What a finding is about, as a fact would name it. */
var aboutOfFinding = (finding) => ({
	...finding.of === "check" ? { check: finding.check } : { item: finding.check },
	...finding.tag === void 0 ? {} : { tag: finding.tag }
});
var lineKey = (about) => `${about.check ?? ""} ${about.item ?? ""} ${about.tag ?? ""}`;
function lineOf(sheet, finding, about, now) {
	const item = sheet.items.find((i) => i.id === about.item);
	return {
		about,
		step: item?.step ?? finding.step,
		verdict: finding.verdict,
		reason: finding.says,
		waysOut: waysOutOf(finding, item?.mayNotApply === true),
		...finding.from !== void 0 && finding.from > now ? { from: finding.from } : {}
	};
}
/** The lines of findings. A check that waits for items is shown as those items: each once, however many checks wait for it. */
function linesOf(sheet, found, now) {
	const lines = /* @__PURE__ */ new Map();
	for (const finding of found) {
		const waitsFor = finding.of === "check" && finding.missing !== void 0 && finding.missing.length > 0 ? finding.missing : [aboutOfFinding(finding)];
		for (const about of waitsFor) {
			const key = lineKey(about);
			if (!lines.has(key)) lines.set(key, lineOf(sheet, finding, about, now));
		}
	}
	return [...lines.values()];
}
// src/ledger/edition.ts
var isWithheld = (part) => "withheld" in part;
// src/job/between-instants.ts
/** The entry that was made or read first in a step. Rework undoes no beginning. */
function firstIn(state, step) {
	return (state.sheet?.items ?? []).filter((item) => item.step === step).flatMap((item) => (state.byItem.get(item.id) ?? []).filter(entersItem)).reduce((first, fact) => first === void 0 || happenedAt(fact) < happenedAt(first) ? fact : first, void 0);
}
/** How far a moment lies inside, below zero: outside. */
var inside = ({ from, until }, moment) => Math.min(moment - from, until - moment);
function instantsOf(context) {
	const readings = readAll(context, context.check.items);
	const entries = entriesOf(readings);
	const missing = lacking(missingOf(context, context.check.items, readings), entries);
	const [from, until] = context.check.items.map((id) => readings.get(id)?.at(-1)?.value.value);
	if (from === void 0 || until === void 0) return {
		entries,
		missing
	};
	return {
		entries,
		missing,
		found: {
			from: Math.round(from * 1e3),
			until: Math.round(until * 1e3)
		}
	};
}
/** How far inside two typed instants a step was begun; until it is, the check waits for what the step asks first. */
function betweenInstants(context) {
	const { state, check } = context;
	const { entries, missing, found } = instantsOf(context);
	if (found === void 0) return missing;
	const begun = firstIn(state, check.begins);
	if (begun === void 0) {
		const [first] = (state.sheet?.items ?? []).filter((item) => item.step === check.begins && item.tags === void 0 && !item.switches);
		return lacking(first === void 0 ? [] : [{ item: first }], entries);
	}
	return {
		state: "value",
		value: withSource(certain(inside(found, happenedAt(begun)) / 1e3), "clocks", begun.doubt / 1e3),
		entries: [...entries, begun]
	};
}
// src/job/design/known.ts
var once = (keys) => [...new Set(keys)];
var known = (value, assumes = []) => ({
	known: true,
	value,
	assumes
});
var waiting = (...needs) => ({
	known: false,
	needs,
	assumes: []
});
var refusedFor = (refusal) => ({
	known: false,
	needs: [],
	assumes: [],
	refusal
});
var fromOutcome = (outcome) => outcome.ok ? known(outcome.value) : refusedFor(outcome.refusal);
/** All of them, or everything that any of them waits for. */
function together(parts) {
	const list = Object.entries(parts);
	const assumes = once(list.flatMap(([, part]) => part.assumes));
	const needs = once(list.flatMap(([, part]) => part.known ? [] : part.needs));
	const refusal = list.map(([, part]) => part.known ? void 0 : part.refusal).find((one) => one !== void 0);
	if (list.some(([, part]) => !part.known)) return {
		known: false,
		needs,
		assumes,
		...refusal && { refusal }
	};
	return known(Object.fromEntries(list.map(([name, part]) => [name, part.known ? part.value : void 0])), assumes);
}
/** Goes on from what is known. */
function andThen(from, next) {
	if (!from.known) return from;
	const then = next(from.value);
	return {
		...then,
		assumes: once([...from.assumes, ...then.assumes])
	};
}
var work = (from, next) => andThen(from, (value) => fromOutcome(next(value)));
var pick = (from, next) => andThen(from, (value) => known(next(value)));
var settled = (one) => one.known || one.refusal !== void 0;
/** The first, or where its figures are missing the second; with neither, the first's are asked for. What cannot be read stands. */
function orElse(first, second) {
	if (settled(first)) return first;
	const other = second();
	return settled(other) ? other : first;
}
/** A figure that may be stated and is otherwise worked out: what is missing for that is asked for. */
var statedOr = (stated, worked) => settled(stated) ? stated : worked();
/** Where the figure `key` is missing: an own default, named. */
var orAssume = (first, key, value) => orElse(first, () => known(value, [key]));
/** The value where it is known; nothing else of it. */
var ifKnown = (from) => from.known ? from.value : void 0;
// src/job/design/pump-points.ts
var PLACE = "figures/pumpCurve";
/** What may stand between the two quantities of a point: after the unit of the first, before a digit of the second. */
var between$1 = /(?<=[\p{L}'"’”′″])[\s,:@]+(?:(?:at|a)\s+)?(?=\d)/giu;
function quantityOf({ text, start }, kind, place) {
	const read = readQuantity(text, {
		kind,
		unit: kind === "flow" ? "gpm" : "ft",
		place
	});
	if (read.ok) return ok(read.value.value / fixedPerSi(kind));
	const { column, ...refusal } = read.refusal;
	return {
		ok: false,
		refusal: column === void 0 ? refusal : {
			...refusal,
			column: column + start
		}
	};
}
/** The two halves as flow and head, in whichever order they stand. */
function pointFrom(left, right, place) {
	const [flowHalf, headHalf] = quantityOf(left, "flow", place).ok || quantityOf(right, "length", place).ok ? [left, right] : [right, left];
	const flow = quantityOf(flowHalf, "flow", place);
	if (!flow.ok) return flow;
	const head = quantityOf(headHalf, "length", place);
	return head.ok ? ok({
		flow: flow.value,
		head: head.value
	}) : head;
}
function pointOf(text, start, place) {
	const ways = [...text.matchAll(between$1)].map(({ 0: gap, index }) => pointFrom({
		text: text.slice(0, index),
		start
	}, {
		text: text.slice(index + gap.length),
		start: start + index + gap.length
	}, place));
	return ways.find((way) => way.ok) ?? ways[0] ?? refuse("pump-curve-text", place, { found: text }, start + 1);
}
/**
* The points of a pump's curve from the text of its kit card: `0 gpm 24 ft; 20 gpm 21 ft; 77 gpm 0 ft`, `0 L/min 7.3 m; ...`, flow
* or head first, each with its unit. m³/s and metres. Refuses a point that is no pair, and numbers and units that cannot be read, by
* the point and the column; how many points there must be is the curve's own matter (`pumpCurve`).
*/
function pumpPoints(text) {
	const points = [];
	let start = 0;
	for (const piece of text.split(/[;\n]/)) {
		if (piece.trim() !== "") {
			const point = pointOf(piece.trim(), start + piece.length - piece.trimStart().length, `${PLACE}/${points.length}`);
			if (!point.ok) return point;
			points.push(point.value);
		}
		start += piece.length + 1;
	}
	return ok(points);
}
// src/job/design/vocabulary.ts
var inch = {
	inch: "in",
	metric: "mm"
};
var foot = {
	inch: "ft",
	metric: "m"
};
var square = {
	inch: "ft²",
	metric: "m²"
};
var gallon = {
	inch: "gal",
	metric: "L"
};
var pound = {
	inch: "lb",
	metric: "kg"
};
var flow = {
	inch: "gpm",
	metric: "L/min"
};
var percent = {
	inch: "%",
	metric: "%"
};
var pieces = {
	inch: "1",
	metric: "1"
};
/** A size that a kit card or a drawing gives: ± 1/4 in. */
var size$1 = { halfWidth: inches(1 / 4) };
/** A length of pipe, cord or trench before it lies: ± 5 %. */
var run$1 = { share: .05 };
/** A length paced off or drawn by eye: ± 10 %. */
var byEye = { share: .1 };
var card = (kind, unit, doubt) => ({
	kind,
	from: "kit card",
	...unit && { unit },
	...doubt && { doubt }
});
var planned$1 = (kind, unit, doubt) => ({
	kind,
	from: "design",
	...unit && { unit },
	...doubt && { doubt }
});
var words = (from) => ({
	kind: "text",
	from
});
/**
* The keys of design and kit cards that the arithmetic uses. A figure is looked for in the design first and then on the kit cards,
* whatever `from` says; `from` and `unit` tell a tolerance sheet where to ask for it and how. The doubts are own: a design is
* drawn, not measured. Heights and depths positive; a static head from the basin's water while running up to the lip's.
*/
var designFigures = {
	basinLength: card("length", inch, size$1),
	basinWidth: card("length", inch, size$1),
	basinDiameter: card("length", inch, size$1),
	basinDepth: card("length", inch, size$1),
	/** Underside of the floor to the rim; taken from `basinDepth` where absent. */
	basinHeight: card("length", inch, size$1),
	/** The maker's rating; goes before the dimensions. */
	basinVolume: card("volume", gallon, { share: .05 }),
	basinWeight: card("mass", pound, { share: .05 }),
	displacedShare: card("ratio", percent, { halfWidth: .02 }),
	lidLoad: card("mass", pound),
	outOfLevel: planned$1("length", inch, { halfWidth: inches(1 / 16) }),
	reserveWanted: planned$1("ratio", percent),
	stoneDepth: planned$1("length", inch, { halfWidth: inches(1 / 2) }),
	/** Plan of the stone on the lid; the basin's plan where absent. */
	stoneArea: planned$1("area", square, byEye),
	boulderLength: planned$1("length", inch, size$1),
	boulderWidth: planned$1("length", inch, size$1),
	boulderHeight: planned$1("length", inch, size$1),
	intakeHeight: card("length", inch, size$1),
	/** Points of the card: `0 gpm 24 ft; 20 gpm 21 ft; 77 gpm 0 ft`, or in L/min and m. See `pumpPoints`. */
	pumpCurve: words("kit card"),
	pumpPower: card("power", {
		inch: "W",
		metric: "W"
	}, { share: .1 }),
	pumpCurrent: card("current", {
		inch: "A",
		metric: "A"
	}, { share: .1 }),
	cordLength: card("length", foot, { halfWidth: inches(2) }),
	staticHead: planned$1("length", foot, { halfWidth: inches(6) }),
	pipeRun: planned$1("length", foot, run$1),
	pipeSize: planned$1("length", inch),
	/** `rigid`, `flexible`, `ribbed`; rigid PVC where nothing is said. */
	pipeKind: words("design"),
	pipeBore: card("length", inch, { halfWidth: inches(1 / 32) }),
	/** Hazen-Williams C, from the pipe's own paper. */
	pipeCoefficient: card("count", pieces),
	elbows90: planned$1("count", pieces),
	elbows45: planned$1("count", pieces),
	teesRun: planned$1("count", pieces),
	teesBranch: planned$1("count", pieces),
	gateValves: planned$1("count", pieces),
	adapters: planned$1("count", pieces),
	/** What a part without length takes, from its paper, at `knownLossFlow`: a filter box, a strainer. */
	knownLoss: card("length", foot, { share: .1 }),
	knownLossFlow: card("flow", flow),
	checkValveDistance: planned$1("length", foot, run$1),
	/** The part of the run that lies below the basin's water at rest. */
	pipeBelowWater: planned$1("length", foot, run$1),
	spillwayWidth: planned$1("length", inch, size$1),
	/** Flow wanted per length of lip; or `flowWanted` for the whole lip, which goes before it. */
	flowPerInch: planned$1("flowPerLength", {
		inch: "gph/in",
		metric: "L/min/m"
	}),
	flowWanted: planned$1("flow", flow),
	lipOutOfLevel: planned$1("length", inch, { halfWidth: inches(1 / 16) }),
	streamLength: planned$1("length", foot, byEye),
	streamWidth: planned$1("length", inch, byEye),
	streamDepth: planned$1("length", inch, { share: .3 }),
	poolLength: planned$1("length", foot, byEye),
	poolWidth: planned$1("length", foot, byEye),
	/** Loss a day in all, or what evaporates a day from `openWaterArea`. */
	lossPerDay: planned$1("volume", gallon, { share: .3 }),
	evaporationPerDay: planned$1("length", inch, { share: .3 }),
	openWaterArea: planned$1("area", square, byEye),
	/** Of the site; north above zero. The weather of a leak test needs it. */
	latitude: planned$1("angle", {
		inch: "°",
		metric: "°"
	}),
	/** Above the sea. */
	elevation: planned$1("length", foot),
	rimBelowGrade: planned$1("length", inch, { halfWidth: inches(1 / 2) }),
	groundwaterDepth: planned$1("length", foot, { halfWidth: inches(6) }),
	waterInHole: planned$1("length", inch, { halfWidth: inches(1 / 2) }),
	/** Rain to be expected while the hole is open. */
	rainExpected: planned$1("length", inch, { share: .25 }),
	holeArea: planned$1("area", square, byEye),
	/** What drains into the hole, itself included; the hole alone where absent. */
	catchArea: planned$1("area", square, { share: .25 }),
	/** Top of the layer that is washed in, above the basin's underside. */
	layerTop: planned$1("length", inch, { halfWidth: inches(1) }),
	linedArea: planned$1("area", square, byEye),
	/** Water at rest to the place it leaves by. */
	freeboard: planned$1("length", inch, size$1),
	rainPerDay: planned$1("length", inch, { share: .25 }),
	/** The cord's way from outlet to pump. */
	cordRoute: planned$1("length", foot, run$1),
	voltage: planned$1("voltage", {
		inch: "V",
		metric: "V"
	}, { share: .05 }),
	/** American Wire Gauge: `14`, `12 AWG`. */
	wireSize: words("design"),
	wireRun: planned$1("length", foot, run$1),
	socketDepth: card("length", inch, { halfWidth: inches(1 / 32) }),
	bedThickness: planned$1("length", inch),
	fittingBelowRim: planned$1("length", inch),
	lipOverGrade: planned$1("length", inch),
	linerEdgeOverLip: planned$1("length", inch),
	/** The height mark above finished grade; below it, less than zero. A reading of both from one set-up goes before it. */
	markOverGrade: planned$1("length", inch)
};
/** Room to tamp all round a basin, metres: the hole's plan where `holeArea` is absent (own). */
var WORKING_ROOM = feet(1);
var WORKING_ROOM_HALF_WIDTH = inches(4);
/** Power over volts × amperes of a small pump's motor where the card gives no current (own). */
var POWER_FACTOR = .8;
var POWER_FACTOR_HALF_WIDTH = .15;
/** A flexible pipe's bore where its paper gives none: that of rigid pipe of its size, ± 3 % of it (own). */
var FLEXIBLE_BORE_SHARE = .03;
/** How many times the low end of a lip may run what its high end runs before customers see it (own). */
var LIP_RATIO_SEEN = 1.25;
// src/job/design/line-figures.ts
/** Words of a kit card or a design, in English and Spanish, by which a kind of pipe is known. A ribbed one is flexible too. */
var kindsByWord = [
	[/ribbed|corrugat|corrugad/i, "flexible, ribbed bore"],
	[/flex/i, "flexible PVC, smooth bore"],
	[/rigid|rígid|sch|cédula|cedula/i, "rigid PVC"]
];
function liningOf(text) {
	const found = kindsByWord.find(([word]) => word.test(text));
	return found ? ok(found[1]) : refuse("pipe-kind-unknown", "figures/pipeKind", { found: text });
}
var lining = (stated) => orAssume(work(stated.text("pipeKind"), liningOf), "pipeKind", "rigid PVC");
var size = (stated) => work(stated.number("pipeSize"), ({ value }) => pipeSizeOf(value));
/** Bore: as stated; else of rigid pipe of the size, with its own doubt more where the pipe is flexible. */
function bore(stated) {
	const bySize = () => andThen(together({
		size: size(stated),
		kind: lining(stated)
	}), ({ size: nominal, kind }) => {
		const rigid = fromOutcome(pipeBore(nominal));
		if (!rigid.known || kind === "rigid PVC") return rigid;
		return known(withSource(rigid.value, "own:flexible-bore", rectangular(FLEXIBLE_BORE_SHARE * rigid.value.value)), ["pipeBore"]);
	});
	return statedOr(stated.number("pipeBore"), bySize);
}
var coefficient = (stated) => andThen(lining(stated), (kind) => orElse(work(stated.number("pipeCoefficient"), ({ value }) => pipeCoefficient(kind, value)), () => fromOutcome(pipeCoefficient(kind))));
var fittingKeys = {
	elbows90: "90 ell",
	elbows45: "45 ell",
	teesRun: "tee, run",
	teesBranch: "tee, branch",
	gateValves: "gate valve",
	adapters: "adapter"
};
/** Pipe and fittings as one length of pipe, m. No bend counted: the run counts alone, and says so. A check valve counts as a swing one. */
function run(stated, checkValve) {
	const counts = Object.keys(fittingKeys).flatMap((key) => {
		const count = stated.number(key);
		return count.known ? [{
			kind: fittingKeys[key],
			count: count.value.value
		}] : [];
	});
	const parts = together({
		pipe: stated.number("pipeRun"),
		size: size(stated),
		bends: orAssume(stated.number("elbows90"), "elbows90", certain(0))
	});
	const valve = checkValve ? [{
		kind: "swing check valve",
		count: 1
	}] : [];
	return work(parts, ({ pipe, size: nominal }) => {
		const withValve = equivalentRun(pipe, [...counts, ...valve], nominal);
		return withValve.ok || !checkValve ? withValve : equivalentRun(pipe, counts, nominal);
	});
}
/** What the pump works against. */
function system(stated, checkValve) {
	const losses = together({
		head: stated.number("knownLoss"),
		flow: stated.number("knownLossFlow")
	});
	return pick(together({
		staticHead: stated.number("staticHead"),
		length: run(stated, checkValve),
		bore: bore(stated),
		coefficient: coefficient(stated)
	}), ({ staticHead, ...section }) => {
		const curve = {
			staticHead,
			sections: [section]
		};
		return losses.known ? {
			...curve,
			knownLosses: [{
				head: losses.value.head,
				flow: losses.value.flow.value
			}]
		} : curve;
	});
}
var curve = (stated) => work(stated.text("pumpCurve"), (text) => {
	const points = pumpPoints(text);
	return points.ok ? pumpCurve(points.value) : points;
});
var byCard = (flow, share) => withSource(certain(flow), "pump-curve/flow", rectangular(share * flow));
function goOnWith(outcome, along) {
	switch (outcome.kind) {
		case "one point": return outcome.point;
		case "several crossings": return outcome.points.find(({ stable }) => stable) ?? outcome.points[0] ?? {};
		case "on a vertical piece": return {
			flow: byCard(outcome.piece.flow, along),
			head: outcome.head
		};
		case "beyond the last point": return {
			flow: byCard(outcome.atLeast, along),
			head: outcome.headThere
		};
		case "curve below static head": return { flow: certain(0) };
		case "before the first point": return {};
	}
}
var working = (stated, checkValve) => work(together({
	curve: curve(stated),
	system: system(stated, checkValve)
}), ({ curve: card, system: against }) => {
	const outcome = operatingPoint(card, against);
	return outcome.ok ? ok({
		outcome: outcome.value,
		...goOnWith(outcome.value, card.tolerance.flow)
	}) : outcome;
});
/** Friction at a flow, m, by Hazen-Williams and known losses beside it. */
var friction = (stated, checkValve, flow) => work(system(stated, checkValve), ({ sections, knownLosses = [] }) => {
	const pipe = frictionInSeries(flow, sections);
	if (!pipe.ok) return pipe;
	return ok(knownLosses.reduce((sum, loss) => add(sum, scale(loss.head, (flow.value / loss.flow) ** 2)), pipe.value));
});
/** The pipe's friction by Darcy-Weisbach with Colebrook, m: the independent second, for smooth pipe. */
var frictionDarcy = (stated, checkValve, flow) => work(together({
	length: run(stated, checkValve),
	bore: bore(stated)
}), (pipe) => darcyLoss(flow, pipe));
var velocity = (stated, flow) => work(bore(stated), (across) => pipeVelocity(flow, across));
var contents = (stated) => work(together({
	bore: bore(stated),
	length: stated.number("pipeRun")
}), (pipe) => pipeContents(pipe.bore, pipe.length));
var drainage = (stated, toCheckValve) => {
	const line = together({
		bore: bore(stated),
		length: stated.number("pipeRun"),
		belowWater: orAssume(stated.number("pipeBelowWater"), "pipeBelowWater", certain(0))
	});
	if (toCheckValve === void 0) return work(line, drainBack);
	return work(together({
		line,
		toCheckValve
	}), ({ line: pipe, toCheckValve: valve }) => drainBack({
		...pipe,
		toCheckValve: valve
	}));
};
/** What runs back into the basin when the pump stops, m³. A check valve whose place nobody gave sits at the pump. */
function runsBack(stated, checkValve) {
	if (!checkValve) return pick(drainage(stated, void 0), ({ withoutCheckValve }) => withoutCheckValve);
	return pick(drainage(stated, orAssume(stated.number("checkValveDistance"), "checkValveDistance", certain(0))), ({ withCheckValve, withoutCheckValve }) => withCheckValve ?? withoutCheckValve);
}
// src/job/design/stated.ts
var isTyped = (figure) => typeof figure === "object" && figure !== null && "typed" in figure && typeof figure.typed === "string";
/** What design or kit cards say of a figure; the design goes first, even where it says that it is unknown. */
function statedAt({ design, kitCards }, key) {
	return [design.figures, ...kitCards.map(({ facts }) => facts)].find((figures) => Object.hasOwn(figures, key))?.[key];
}
/** Half-width of a figure on paper, SI: half the step it was typed in, or what its kind is worth, whichever is more. */
function halfWidthOf({ doubt }, value, step) {
	return Math.max(step / 2, doubt?.halfWidth ?? 0, (doubt?.share ?? 0) * Math.abs(value));
}
/** Wishes and names have no doubt: a wanted flow, a pipe's size, a count. */
var isExact = ({ kind, doubt }) => doubt === void 0 || kind === "count";
function numberAt(source, key) {
	const stated = statedAt(source, key);
	const asked = designFigures[key];
	if (asked.kind === "text" || stated === void 0 || stated === "unknown") return waiting(key);
	const unit = isTyped(stated) && typeof stated.unit === "string" ? stated.unit : asked.unit?.inch ?? "";
	const read = readQuantity(isTyped(stated) ? stated.typed : String(stated), {
		kind: asked.kind,
		unit,
		signed: true,
		place: `figures/${key}`
	});
	if (!read.ok) return refusedFor(read.refusal);
	const perSi = fixedPerSi(asked.kind);
	const value = read.value.value / perSi;
	if (isExact(asked)) return known(certain(value));
	const halfWidth = halfWidthOf(asked, value, read.value.resolution / perSi);
	return known(withSource(certain(value), `figure:${key}`, rectangular(halfWidth)));
}
function textAt(source, key) {
	const stated = statedAt(source, key);
	const text = isTyped(stated) ? stated.typed : stated;
	return typeof text === "string" && text !== "unknown" && text.trim() !== "" ? known(text) : waiting(key);
}
/** The figures of a design and its kit cards; `instead` goes before all of them. */
function statedBy(source, instead = {}, left = []) {
	return {
		number: (key) => {
			const other = instead[key];
			return other !== void 0 ? known(other) : left.includes(key) ? waiting(key) : numberAt(source, key);
		},
		text: (key) => textAt(source, key),
		instead: (figures) => statedBy(source, {
			...instead,
			...figures
		}, left),
		without: (key) => statedBy(source, Object.fromEntries(Object.entries(instead).filter(([name]) => name !== key)), [...left, key])
	};
}
// src/job/design/cure-times.ts
var kindOf = {
	"rigid PVC": "rigid PVC",
	"flexible PVC, smooth bore": "flexible PVC",
	"flexible, ribbed bore": "flexible PVC"
};
function temperature(coldest) {
	if ("parts" in coldest) return ok(coldest);
	const read = readQuantity(coldest.typed, {
		kind: "temperature",
		unit: coldest.unit,
		place: "cure/coldest"
	});
	if (!read.ok) return read;
	const perSi = fixedPerSi("temperature");
	return ok(withSource(certain(read.value.value / perSi), "reading:coldest/resolution", resolutionUncertainty(read.value.resolution / perSi)));
}
/**
* Times from the last joint of a session until it may be filled around (set) and until water (cure), milliseconds. The can's own
* times go before any table; without them flexible pipe has none. A pipe kind that neither session nor design gives is asked for:
* `cure-time-unknown`. Only + − × ÷ and a square root.
*/
function cureTimes(source, session) {
	const stated = statedBy(source);
	const nominal = size(stated);
	const pipe = lining(stated);
	if (!nominal.known) return nominal.refusal ? {
		ok: false,
		refusal: nominal.refusal
	} : refuse("cure-time-unknown", "figures/pipeSize");
	if (!pipe.known) return pipe.refusal ? {
		ok: false,
		refusal: pipe.refusal
	} : refuse("cure-time-unknown", "figures/pipeKind");
	const stands = pipe.assumes.includes("pipeKind") ? void 0 : kindOf[pipe.value];
	const kind = session.kind ?? stands;
	if (kind === void 0 && session.can === void 0) return refuse("cure-time-unknown", "figures/pipeKind");
	if (session.coldest === void 0 && session.can === void 0) return refuse("cure-time-unknown", "cure/coldest");
	const coldest = session.coldest === void 0 ? ok(certain(0)) : temperature(session.coldest);
	if (!coldest.ok) return coldest;
	return jointTimes({
		kind: kind ?? "flexible PVC",
		size: nominal.value,
		coldest: coldest.value,
		humidity: session.humidity ?? "not known",
		...session.can && { can: session.can },
		...session.table && { table: session.table }
	});
}
// src/power/caution.ts
/**
* Key of the caution that every figure of this room carries: electricity near water, power off before a hand goes in; local code
* and a licensed person decide; the figure is a prompt to ask the electrician, never a verdict.
*/
var WIRING_CAUTION = "ask-the-electrician";
/** The figures with their caution: nothing leaves this room without it. */
var cautioned$1 = (figures) => ({
	...figures,
	caution: WIRING_CAUTION
});
// src/power/conductors.ts
/** Copper conductor sizes that a pump's branch circuit comes in, American Wire Gauge. */
var wireSizes = [
	"16",
	"14",
	"12",
	"10",
	"8"
];
/**
* US National Electrical Code, chapter 9 table 8, as quoted. A page in circulation prints the solid values as stranded ones; the
* product of resistance and area tells them apart: about 12.9 for stranded, 12.6 for solid.
*/
var conductors = {
	"16": {
		area: 2580,
		resistance: { stranded: 4.99 },
		seen: "stranded seen in an electricians' course; area from memory"
	},
	"14": {
		area: 4110,
		resistance: {
			solid: 3.07,
			stranded: 3.14
		},
		seen: "area and solid seen, stranded from memory"
	},
	"12": {
		area: 6530,
		resistance: {
			solid: 1.93,
			stranded: 1.98
		},
		seen: "area, solid and stranded seen"
	},
	"10": {
		area: 10380,
		resistance: {
			solid: 1.21,
			stranded: 1.24
		},
		seen: "area and solid seen, stranded from memory"
	},
	"8": {
		area: 16510,
		resistance: {
			solid: .764,
			stranded: .778
		},
		seen: "area and solid seen, stranded from memory"
	}
};
// src/power/cord-reach.ts
/** Slack beyond the basin's depth, metres: enough to lift the pump out and set it down beside the hole (own). */
var SLACK_BEYOND_DEPTH = feet(3);
/**
* How far a pump's own cord reaches: its length against the way it really takes, leg by leg, with slack of basin depth + 3 ft.
* Metres throughout. No extension cord enters it. Refuses lengths that are not finite or not above zero; a leg may be zero.
*/
function cordReach(cord, legs, basinDepth) {
	const bad = unfit("power/cord", "positive", {
		cord,
		basinDepth
	}) ?? unfit("power/cord", "not negative", Object.fromEntries(legs.map((leg, i) => [`legs/${i}`, leg])));
	if (bad) return bad;
	const [first, ...others] = legs;
	const way = others.reduce(add, first);
	const slack = add(basinDepth, certain(SLACK_BEYOND_DEPTH));
	const needed = add(way, slack);
	return ok(cautioned$1({
		way,
		slack,
		needed,
		left: subtract(cord, needed)
	}));
}
// src/power/voltage-drop.ts
/** Shares of the nominal voltage that the code's informational notes name: branch circuit, and feeder with branch. Notes, not rules. */
var NOTED_SHARES = {
	branch: .03,
	total: .05
};
var FOOT = feet(1);
/** Drop of a run whose loop has `perFoot` ohms per foot one way: VD = 2 L R I. */
function dropOf(run, perFoot) {
	const { current, oneWay, nominal } = run;
	const bad = unfit("power/drop", "positive", {
		current,
		oneWay,
		nominal
	});
	if (bad) return bad;
	const perMetre = 2 * perFoot / FOOT;
	const drop = firstOrder(perMetre * oneWay.value * current.value, [{
		times: perMetre * current.value,
		of: oneWay
	}, {
		times: perMetre * oneWay.value,
		of: current
	}]);
	const share = quotient(drop, nominal);
	const run3 = NOTED_SHARES.branch * nominal.value / (perMetre * current.value);
	return ok(cautioned$1({
		drop,
		share,
		runAtNotedShare: firstOrder(run3, [{
			times: run3 / nominal.value,
			of: nominal
		}, {
			times: -run3 / current.value,
			of: current
		}])
	}));
}
/**
* Voltage drop of a single-phase run by the wire's resistance: VD = 2 L R I / 1000.
*
* L  one way, feet (`oneWay`, metres here)
* R  ohms per 1000 ft, chapter 9 table 8 at 75 °C (`conductors`)
* I  amperes, `current`
*
* Direct-current resistance, no reactance: right for these sizes. A cooler wire drops less (20 °C: about 82 %). Refuses figures that
* are not finite or not above zero, and a wire whose resistance the table lacks.
*/
function voltageDrop(run) {
	const resistance = conductors[run.wire].resistance[run.stranding ?? "stranded"];
	if (resistance === void 0) return refuse("wire-size-unknown", "power/wire", { wire: run.wire });
	return dropOf(run, resistance / 1e3);
}
// src/job/design/basin-figures.ts
var round = (stated) => work(stated.number("basinDiameter"), (diameter) => planArea$1({
	kind: "round",
	diameter
}));
var rectangle = (stated) => work(together({
	length: stated.number("basinLength"),
	width: stated.number("basinWidth")
}), ({ length, width }) => planArea$1({
	kind: "rectangle",
	length,
	width
}));
/** Plan of the basin, m²: by the shape that the design names, else by whichever sizes are there. */
var basinPlan = (stated, { roundBasin }) => roundBasin ? orElse(round(stated), () => rectangle(stated)) : orElse(rectangle(stated), () => round(stated));
/** Water when full and per depth: the maker's rating before the sizes. */
function basinFull(stated, switches) {
	const depth = stated.number("basinDepth");
	const byRating = work(together({
		volume: stated.number("basinVolume"),
		depth
	}), (of) => basinWater({
		kind: "rating",
		...of
	}));
	const bySizes = () => work(together({
		area: basinPlan(stated, switches),
		depth,
		displacedShare: orAssume(stated.number("displacedShare"), "displacedShare", certain(0))
	}), (of) => basinWater({
		kind: "dimensions",
		...of
	}));
	return orElse(byRating, bySizes).known ? orElse(byRating, bySizes) : bySizes();
}
/** What of it can be pumped. A tilt that nobody measured counts as none; the intake's height is asked for. */
function basinUsable(stated, switches) {
	return work(together({
		water: basinFull(stated, switches),
		intakeHeight: stated.number("intakeHeight"),
		outOfLevel: orElse(stated.number("outOfLevel"), () => known(certain(0)))
	}), ({ water, intakeHeight, outOfLevel }) => usableWater(water, {
		intakeHeight,
		outOfLevel
	}));
}
/** Underside to rim, m. */
var basinHeight = (stated) => statedOr(stated.number("basinHeight"), () => stated.number("basinDepth"));
/** The empty basin as it floats. */
function emptyBasin(stated, switches) {
	const rimHeight = ifKnown(basinHeight(stated));
	const displacedShare = ifKnown(stated.number("displacedShare"));
	return work(together({
		mass: stated.number("basinWeight"),
		area: basinPlan(stated, switches)
	}), ({ mass, area }) => ({
		ok: true,
		value: {
			mass,
			area,
			...displacedShare && { displacedShare },
			...rimHeight && { rimHeight }
		}
	}));
}
// src/job/design/spillway-figures.ts
/** The flow that the spillway wants, m³/s: for the whole lip, or its width times the flow per inch. */
var wanted = (stated) => statedOr(stated.number("flowWanted"), () => work(together({
	perLip: stated.number("flowPerInch"),
	width: stated.number("spillwayWidth")
}), ({ perLip, width }) => flowForLip(perLip, certain(width.value))));
/** The flow to reckon with, m³/s: where the pump works; without its curve, the flow that is wanted. */
function reckonedFlow(stated, checkValve) {
	return orElse(andThen(working(stated, checkValve), ({ flow }) => flow !== void 0 && flow.value > 0 ? known(flow) : waiting("pumpCurve")), () => andThen(wanted(stated), (flow) => known(flow, ["pumpCurve"])));
}
var onLip = (stated, checkValve) => together({
	flow: reckonedFlow(stated, checkValve),
	width: stated.number("spillwayWidth")
});
var perLip = (stated, checkValve) => work(onLip(stated, checkValve), ({ flow, width }) => flowPerLip(flow, width));
var sheet = (stated, checkValve) => work(onLip(stated, checkValve), ({ flow, width }) => sheetOverLip(flow, width));
/** Low end over high end at the tilt that the design or the tape gives. */
var lipFlow = (stated, checkValve) => work(together({
	water: sheet(stated, checkValve),
	tilt: stated.number("lipOutOfLevel")
}), ({ water, tilt }) => lipFlowRatio(water.head, tilt));
/** The tilt from which customers see it, m. */
var tiltSeen = (stated, checkValve) => work(sheet(stated, checkValve), ({ head }) => outOfLevelForRatio(head, LIP_RATIO_SEEN));
// src/job/design/budget-figures.ts
var stream = (stated) => together({
	length: stated.number("streamLength"),
	width: stated.number("streamWidth"),
	depth: stated.number("streamDepth")
});
var poolArea = (stated) => pick(together({
	length: stated.number("poolLength"),
	width: stated.number("poolWidth")
}), ({ length, width }) => product(length, width));
var pool = (stated, checkValve) => together({
	area: poolArea(stated),
	head: pick(sheet(stated, checkValve), ({ head }) => head)
});
var hasPool = (stated) => ifKnown(stated.number("poolLength")) !== void 0 || ifKnown(stated.number("poolWidth")) !== void 0;
/** Water in the stream or fall, m³. */
var inStream = (stated) => pick(work(stream(stated), (piece) => waterInTransit({
	pieces: [piece],
	pools: []
})), ({ stream: water }) => water);
/** Water that the pool behind the lip gains while it runs, m³. */
var inPools = (stated, checkValve) => pick(work(pool(stated, checkValve), (one) => waterInTransit({
	pieces: [],
	pools: [one]
})), ({ pools }) => pools);
/**
* Water in transit: the stream or fall, the pool behind the lip, what runs back out of the pipe. A design that names no pool is taken
* to have none, and says so; the stream is asked for, since every fall has a way down.
*/
function inTransit(stated, switches) {
	const checkValve = switches.checkValve === true;
	return work(together({
		stream: stream(stated),
		pools: hasPool(stated) ? pick(pool(stated, checkValve), (one) => [one]) : known([], ["poolLength"]),
		pipe: runsBack(stated, checkValve)
	}), ({ stream: piece, pools, pipe }) => waterInTransit({
		pieces: [piece],
		pools,
		pipe: {
			contents: pipe,
			staysFull: false
		}
	}));
}
var drawDown = (stated, switches) => work(together({
	away: inTransit(stated, switches),
	basin: basinFull(stated, switches)
}), ({ away, basin }) => expectedDrawDown(away.whole, basin.perDepth));
/** The reserve, with the two waters that it is made of, m³. */
var reserveOf = (stated, switches) => work(together({
	away: inTransit(stated, switches),
	basin: basinUsable(stated, switches)
}), ({ away, basin }) => {
	const found = reserve(basin.usable, away.whole);
	return found.ok ? ok({
		...found.value,
		usable: basin.usable,
		away: away.whole
	}) : found;
});
var filling = (stated, switches) => work(together({
	away: inTransit(stated, switches),
	flow: reckonedFlow(stated, switches.checkValve === true)
}), ({ away, flow }) => timeToFill(away.whole, flow));
/** Time until the intake draws air while nothing comes back: at start-up, or by a broken edge. */
var untilAir = (stated, switches) => work(together({
	basin: basinUsable(stated, switches),
	flow: reckonedFlow(stated, switches.checkValve === true)
}), ({ basin, flow }) => timeUntilAir(basin.usable, flow, certain(0)));
/** Loss a day, m³: as stated, else what evaporates from the open water. */
var lossPerDay = (stated) => orElse(stated.number("lossPerDay"), () => work(together({
	depth: stated.number("evaporationPerDay"),
	area: stated.number("openWaterArea")
}), ({ depth, area }) => ok(product(depth, area))));
var daysLeft = (stated, switches) => work(together({
	left: reserveOf(stated, switches),
	loss: lossPerDay(stated)
}), ({ left, loss }) => daysWithoutMakeUp(left.left, loss));
// src/job/design/stone-figures.ts
var boulderSizes = (stated) => together({
	length: stated.number("boulderLength"),
	width: stated.number("boulderWidth"),
	height: stated.number("boulderHeight")
});
/** Weight of the one boulder; the figure of the lifting caution. */
var boulder = (stated) => work(boulderSizes(stated), boulderWeight);
/** Plan of the stone, m²: as stated, else the basin's. */
var stoneArea = (stated, switches) => statedOr(stated.number("stoneArea"), () => andThen(basinPlan(stated, switches), (area) => known(area, ["stoneArea"])));
/** Stone on the lid against the load that its kit card states. No load stated: ask the maker. */
function stone(stated, switches) {
	const layer = together({
		depth: stated.number("stoneDepth"),
		area: stoneArea(stated, switches)
	});
	const one = ifKnown(boulderSizes(stated));
	const load = ifKnown(stated.number("lidLoad"));
	return andThen(pick(layer, (of) => ({
		layers: [of],
		boulders: one === void 0 ? [] : [one]
	})), (on) => fromOutcome(stoneAgainstLoad(on, load === void 0 ? void 0 : {
		kind: "in all",
		mass: load
	})));
}
/** The same with what was measured in the place of the design's figures. */
var stoneOnLid = (source, switches, instead) => stone(statedBy(source, instead), switches);
// src/job/design/float-figures.ts
/** Depth outside that lifts the empty basin. */
var lift = (stated, switches) => work(emptyBasin(stated, switches), (basin) => liftDepth(basin));
var workingRoom = withSource(certain(2 * WORKING_ROOM), "own:working-room", 2 * rectangular(WORKING_ROOM_HALF_WIDTH));
/** Plan of the hole, m²: as stated, else the basin with room to tamp all round. */
function holeArea(stated, switches) {
	const wider = together({
		length: stated.number("basinLength"),
		width: stated.number("basinWidth")
	});
	const rectangle = () => pick(wider, ({ length, width }) => product(add(length, workingRoom), add(width, workingRoom)));
	const round = () => pick(stated.number("basinDiameter"), (diameter) => {
		const across = add(diameter, workingRoom);
		return scale(product(across, across), Math.PI / 4);
	});
	const bySizes = switches.roundBasin ? orElse(round(), rectangle) : orElse(rectangle(), round);
	return statedOr(stated.number("holeArea"), () => andThen(bySizes, (area) => known(area, ["holeArea"])));
}
/** Rain in the open hole: what is expected, what drains in (the hole alone where nothing is said), and the hole. */
function rainFacts(stated, switches) {
	const hole = holeArea(stated, switches);
	const catchArea = statedOr(stated.number("catchArea"), () => andThen(hole, (area) => known(area, ["catchArea"])));
	return together({
		depth: stated.number("rainExpected"),
		catchArea,
		holeArea: hole
	});
}
/** Rain that gathers in the hole until the empty basin lifts, m. */
function rainThatFloats(stated, switches) {
	const hole = holeArea(stated, switches);
	return pick(together({
		hole,
		catchArea: statedOr(stated.number("catchArea"), () => andThen(hole, (area) => known(area, ["catchArea"]))),
		basin: emptyBasin(stated, switches),
		lifts: lift(stated, switches)
	}), ({ hole: area, catchArea: drained, basin, lifts }) => quotient(product(lifts.liftDepth, subtract(area, basin.area)), drained));
}
var told = (stated, switches, occasion, facts) => andThen(together({
	basin: emptyBasin(stated, switches),
	facts
}), ({ basin, facts: outside }) => andThen(work(known(basin), (of) => floatOn(occasion, of, outside)), (answer) => answer.answer === "not known" ? {
	known: false,
	needs: ["basinDepth"],
	assumes: []
} : known(answer)));
/** Ground water above the basin's underside, m: not known, up to the rim. */
function groundWater(stated) {
	return statedOr(pick(together({
		depth: stated.number("groundwaterDepth"),
		rim: stated.number("rimBelowGrade"),
		height: basinHeight(stated)
	}), ({ depth, rim, height }) => {
		const water = subtract(add(height, rim), depth);
		return { groundWater: water.value > 0 ? water : certain(0) };
	}), () => pick(basinHeight(stated), () => ({})));
}
/** How much water to leave inside on each of the four occasions. */
var leaveOn = (stated, switches) => ({
	seen: told(stated, switches, "water seen in the hole", pick(stated.number("waterInHole"), (waterSeen) => ({ waterSeen }))),
	rain: told(stated, switches, "rain before backfill", pick(rainFacts(stated, switches), (rain) => ({ rain }))),
	washingIn: told(stated, switches, "washing in", pick(stated.number("layerTop"), (layerTop) => ({ layerTop }))),
	winter: told(stated, switches, "winter emptying", groundWater(stated))
});
// src/job/design/power-figures.ts
/** How far the pump's cord reaches along its way; figures with their caution, never a verdict. */
var cord = (stated) => work(together({
	length: stated.number("cordLength"),
	way: stated.number("cordRoute"),
	depth: basinHeight(stated)
}), (of) => cordReach(of.length, [of.way], of.depth));
function wireOf(text) {
	const number = /\d+/.exec(text)?.[0];
	const wire = wireSizes.find((one) => one === number);
	return wire === void 0 ? refuse("wire-size-unknown", "figures/wireSize", { wire: text }) : ok(wire);
}
/** Amperes: from the card; else from power and volts with a motor's power factor (own). */
function current(stated) {
	const factor = withSource(certain(POWER_FACTOR), "own:power-factor", rectangular(POWER_FACTOR_HALF_WIDTH));
	const byPower = () => andThen(together({
		power: stated.number("pumpPower"),
		voltage: stated.number("voltage")
	}), ({ power, voltage }) => known(quotient(power, product(voltage, factor)), ["pumpCurrent"]));
	return orElse(stated.number("pumpCurrent"), byPower);
}
var drop = (stated) => work(together({
	current: current(stated),
	oneWay: stated.number("wireRun"),
	nominal: pick(stated.number("voltage"), ({ value }) => certain(value)),
	wire: work(stated.text("wireSize"), wireOf)
}), voltageDrop);
/** Share of the nominal voltage that a wire's run as it was measured (metres, one way) loses. */
var dropAlong = (source, wireRun) => pick(drop(statedBy(source, { wireRun })), ({ share }) => share);
// src/job/design/expectation.ts
/** Every figure that is derived from a design, in the order of the water's way. */
var expectationKinds = {
	basinGross: "volume",
	waterPerInch: "volume",
	waterPerCentimetre: "volume",
	waterBelowIntake: "volume",
	waterLostToTilt: "volume",
	basinUsable: "volume",
	floatsOn: "length",
	leaveForWaterSeen: "length",
	leaveForRain: "length",
	leaveForWashingIn: "length",
	leaveForWinter: "length",
	rainThatFloats: "length",
	stoneOnLid: "mass",
	boulderWeight: "mass",
	lidLoadLeft: "mass",
	pipeBore: "length",
	equivalentRun: "length",
	flow: "flow",
	pumpHead: "length",
	frictionHead: "length",
	frictionHeadDarcy: "length",
	velocity: "velocity",
	pipeContents: "volume",
	drainBack: "volume",
	flowWanted: "flow",
	flowPerInch: "flowPerLength",
	headOnLip: "length",
	lipFlowRatio: "ratio",
	lipOutOfLevelSeen: "length",
	waterInStream: "volume",
	waterInPools: "volume",
	waterInTransit: "volume",
	drawDown: "length",
	reserveRatio: "ratio",
	reserveLeft: "volume",
	timeToFill: "duration",
	timeUntilAir: "duration",
	daysWithoutMakeUp: "duration",
	witnessMark: "length",
	socketLeastSchedule40: "length",
	socketLeastSchedule80: "length",
	cordNeeded: "length",
	cordLeft: "length",
	voltageDrop: "voltage",
	voltageDropShare: "ratio",
	wireRunAtNotedShare: "length",
	roomForRain: "volume",
	rainToOverflow: "length",
	daysToOverflow: "duration",
	dugBottomOverGrade: "length",
	topOfBedOverGrade: "length",
	rimOverGrade: "length",
	wallFittingOverGrade: "length",
	spillwayLipOverGrade: "length",
	linerEdgeOverGrade: "length"
};
var expectationIds = Object.keys(expectationKinds);
// src/job/design/overflow-figures.ts
/** Room above the water at rest and the rain on the lined area that fills it. */
var room = (stated, switches) => work(together({
	perDepth: pick(basinFull(stated, switches), ({ perDepth }) => perDepth),
	freeboard: stated.number("freeboard"),
	linedArea: stated.number("linedArea")
}), overflow);
var rainToOverflow = (stated, switches) => andThen(room(stated, switches), (answer) => answer.answer === "room for rain" ? known(answer.rainToOverflow) : waiting("freeboard"));
var daysTo = (stated, switches) => work(together({
	room: room(stated, switches),
	linedArea: stated.number("linedArea"),
	rain: stated.number("rainPerDay")
}), ({ room: { room: above }, linedArea, rain }) => daysToOverflow(above, linedArea, rain));
// src/job/design/set-out-figures.ts
var figureOf = {
	rimBelowGrade: "rimBelowGrade",
	basinHeight: "basinHeight",
	bedThickness: "bedThickness",
	fittingBelowRim: "fittingBelowRim",
	lipOverGrade: "lipOverGrade",
	linerEdgeOverLip: "linerEdgeOverLip"
};
var keyOfSetOut = (figure) => figureOf[figure];
function designOf(stated) {
	const figures = Object.entries(figureOf).flatMap(([name, key]) => {
		const value = ifKnown(name === "basinHeight" ? basinHeight(stated) : stated.number(key))?.value;
		return value === void 0 ? [] : [[name, value]];
	});
	return Object.fromEntries(figures);
}
/** Heights over finished grade that the design leads to, with what each missing one waits for. */
var heights = (stated, limits) => fromOutcome(heightsFromDesign(designOf(stated), limits));
/** A figure of design or kit card with its doubt, SI; undefined where nobody said it or it does not read. */
var designFigure = (source, key) => ifKnown(statedBy(source).number(key));
// src/job/design/worked.ts
var of = (from) => pick(from, (value) => ({ value }));
var cautioned = (from) => pick(from, (value) => ({
	value,
	caution: WIRING_CAUTION
}));
var toLeave = (from) => pick(from, ({ answer, leaveAtLeast }) => ({
	answer,
	value: certain(leaveAtLeast)
}));
var days = (from) => scale(from, SECONDS_PER_DAY);
// src/job/design/worked-line.ts
function linePart(stated, checkValve) {
	const works = working(stated, checkValve);
	const flow = reckonedFlow(stated, checkValve);
	const smooth = andThen(lining(stated), (kind) => kind === "rigid PVC" ? known(true) : waiting("pipeKind"));
	const named = (kind) => kind === "one point" ? {} : { answer: kind };
	return {
		pipeBore: of(bore(stated)),
		equivalentRun: of(run(stated, checkValve)),
		flow: pick(works, ({ outcome, flow: value }) => ({
			...value && { value },
			...named(outcome.kind)
		})),
		pumpHead: pick(works, ({ outcome, head: value }) => ({
			...value && { value },
			...named(outcome.kind)
		})),
		frictionHead: of(andThen(flow, (q) => friction(stated, checkValve, q))),
		frictionHeadDarcy: of(andThen(together({
			flow,
			smooth
		}), ({ flow: q }) => pick(frictionDarcy(stated, checkValve, q), ({ head }) => head))),
		velocity: pick(andThen(flow, (q) => velocity(stated, q)), ({ velocity: value }) => value.value > VELOCITY_GUIDANCE ? {
			value,
			warning: "above the velocity guidance"
		} : { value }),
		pipeContents: of(contents(stated)),
		drainBack: of(runsBack(stated, checkValve))
	};
}
function spillwayPart(stated, checkValve) {
	const water = sheet(stated, checkValve);
	const ratio = lipFlow(stated, checkValve);
	return {
		flowWanted: of(wanted(stated)),
		flowPerInch: of(perLip(stated, checkValve)),
		headOnLip: pick(water, ({ head: value, warning }) => ({
			value,
			...warning && { warning }
		})),
		lipFlowRatio: pick(ratio, (lip) => lip.answer === "runs all along" ? { value: lip.ratio } : { answer: lip.answer }),
		lipOutOfLevelSeen: of(tiltSeen(stated, checkValve))
	};
}
function powerPart(stated) {
	const reach = cord(stated);
	const wire = drop(stated);
	return {
		cordNeeded: cautioned(pick(reach, ({ needed }) => needed)),
		cordLeft: cautioned(pick(reach, ({ left }) => left)),
		voltageDrop: cautioned(pick(wire, ({ drop: volts }) => volts)),
		voltageDropShare: cautioned(pick(wire, ({ share }) => share)),
		wireRunAtNotedShare: cautioned(pick(wire, ({ runAtNotedShare }) => runAtNotedShare))
	};
}
function groundPart(stated, switches) {
	const above = room(stated, switches);
	const socket = (schedule) => of(pick(size(stated), (nominal) => certain(inches(socketDimensions[nominal][schedule]))));
	const design = heights(stated);
	const height = (place) => andThen(design, ({ heights: all, missing }) => {
		const found = all.find((one) => one.place === place);
		if (found) return known({ value: certain(found.aim) });
		return waiting(...(missing.find((one) => one.place === place)?.figures ?? []).map(keyOfSetOut));
	});
	return {
		witnessMark: of(work(stated.number("socketDepth"), witnessMark)),
		socketLeastSchedule40: socket("leastDepth40"),
		socketLeastSchedule80: socket("leastDepth80"),
		roomForRain: pick(above, ({ room: value, answer }) => answer === "room for rain" ? { value } : {
			value,
			answer
		}),
		rainToOverflow: of(rainToOverflow(stated, switches)),
		daysToOverflow: pick(daysTo(stated, switches), (lasts) => lasts.answer === "overflows after" ? { value: days(lasts.days) } : { answer: lasts.answer }),
		dugBottomOverGrade: height("dug bottom"),
		topOfBedOverGrade: height("top of bed"),
		rimOverGrade: height("rim"),
		wallFittingOverGrade: height("wall fitting"),
		spillwayLipOverGrade: height("spillway lip"),
		linerEdgeOverGrade: height("liner edge")
	};
}
// src/job/design/worked-water.ts
function basinPart(stated, switches) {
	const full = basinFull(stated, switches);
	const usable = basinUsable(stated, switches);
	const over = (depth) => of(work(full, ({ perDepth }) => waterOverDepth(perDepth, metres(depth))));
	return {
		basinGross: of(pick(full, ({ gross }) => gross)),
		waterPerInch: over(inches(1)),
		waterPerCentimetre: over(.01),
		waterBelowIntake: of(pick(usable, ({ belowIntake }) => belowIntake)),
		waterLostToTilt: of(pick(together({
			usable,
			tilt: stated.number("outOfLevel")
		}), ({ usable: { lostToTilt } }) => lostToTilt)),
		basinUsable: pick(usable, ({ usable: value, answer }) => answer === "water above the intake" ? { value } : {
			value,
			answer
		})
	};
}
function floatPart(stated, switches) {
	const on = leaveOn(stated, switches);
	return {
		floatsOn: pick(lift(stated, switches), ({ liftDepth: value, answer }) => answer === "lifts" ? { value } : {
			value,
			answer
		}),
		leaveForWaterSeen: toLeave(on.seen),
		leaveForRain: toLeave(on.rain),
		leaveForWashingIn: toLeave(on.washingIn),
		leaveForWinter: toLeave(on.winter),
		rainThatFloats: of(rainThatFloats(stated, switches))
	};
}
function stonePart(stated, switches) {
	const on = stone(stated, switches);
	return {
		stoneOnLid: of(pick(on, ({ mass }) => mass)),
		boulderWeight: of(boulder(stated)),
		lidLoadLeft: pick(on, (answer) => answer.answer === "compared" ? { value: answer.room } : { answer: answer.answer })
	};
}
function budgetPart(stated, switches) {
	const away = inTransit(stated, switches);
	const left = reserveOf(stated, switches);
	return {
		waterInStream: of(inStream(stated)),
		waterInPools: of(inPools(stated, switches.checkValve === true)),
		waterInTransit: of(pick(away, ({ whole }) => whole)),
		drawDown: of(drawDown(stated, switches)),
		reserveRatio: of(pick(left, ({ ratio }) => ratio)),
		reserveLeft: pick(left, ({ left: value, answer }) => answer === "intake stays covered" ? { value } : {
			value,
			answer
		}),
		timeToFill: of(filling(stated, switches)),
		timeUntilAir: pick(untilAir(stated, switches), (air) => air.answer === "draws air after" ? { value: air.seconds } : { answer: air.answer }),
		daysWithoutMakeUp: pick(daysLeft(stated, switches), (lasts) => lasts.answer === "lasts" ? { value: days(lasts.days) } : { answer: lasts.answer })
	};
}
// src/job/design/expectations.ts
function leave(id, figure) {
	const kind = expectationKinds[id];
	const assumes = figure.assumes.length === 0 ? {} : { assumes: figure.assumes };
	if (!figure.known) return {
		id,
		kind,
		...figure.needs.length === 0 ? {} : { needs: figure.needs },
		...assumes,
		...figure.refusal && { refusal: figure.refusal }
	};
	const { value, ...named } = figure.value;
	if (value === void 0) return {
		id,
		kind,
		...named,
		...assumes
	};
	const perSi = fixedPerSi(kind);
	const { value: whole, expanded } = leaveCore(value, perSi);
	return {
		id,
		kind,
		value: whole,
		doubt: expanded,
		contributors: contributors$1(value).map(({ source, u }) => ({
			name: source,
			u: toInteger(u * perSi)
		})),
		...named,
		...assumes
	};
}
/**
* Every figure that a design leads to, in the order of `expectationIds`, each value ± U with its three largest contributors. What
* is missing is named and the rest still computes. `instead` puts other figures in the place of the design's: what was measured.
*/
function expectations(source, switches, instead = {}) {
	const stated = statedBy(source, instead);
	const checkValve = switches.checkValve === true;
	const figures = {
		...basinPart(stated, switches),
		...floatPart(stated, switches),
		...stonePart(stated, switches),
		...linePart(stated, checkValve),
		...spillwayPart(stated, checkValve),
		...budgetPart(stated, switches),
		...powerPart(stated),
		...groundPart(stated, switches)
	};
	return expectationIds.map((id) => leave(id, figures[id]));
}
// src/job/design/line-at-work.ts
/** What a measured flow is compared with, or the figures that it waits for. SI. */
function lineAtWork(source, switches) {
	const stated = statedBy(source);
	const checkValve = switches.checkValve === true;
	return pick(together({
		curve: curve(stated),
		system: system(stated, checkValve),
		works: working(stated, checkValve)
	}), ({ curve: card, system: against, works: { outcome, flow, head } }) => {
		const line = {
			curve: card,
			system: against,
			outcome: outcome.kind
		};
		if (outcome.kind === "one point") return {
			...line,
			point: outcome.point
		};
		return outcome.kind === "on a vertical piece" && flow && head ? {
			...line,
			point: {
				flow,
				head,
				stable: true
			}
		} : line;
	});
}
// src/job/design/site-plan.ts
var perMetre$1 = fixedPerSi("length");
var micrometres = (of) => toInteger(of * perMetre$1);
var rounded = ({ value }) => micrometres(value);
function onPlan(point) {
	const { semiMajor, semiMinor, direction } = errorEllipse(point);
	return {
		x: rounded(point.x),
		y: rounded(point.y),
		ellipse: {
			major: micrometres(ELLIPSE_95 * semiMajor),
			minor: micrometres(ELLIPSE_95 * semiMinor),
			along: {
				x: toInteger(direction.x * 1e6),
				y: toInteger(direction.y * 1e6)
			}
		}
	};
}
var placed$1 = ({ point, concerns, residuals, crossing: { first, second, degrees } }) => ({
	...onPlan(point),
	concerns,
	crossing: {
		first,
		second,
		degrees
	},
	residuals: residuals.map(({ mark, residual }) => ({
		mark,
		off: rounded(residual)
	}))
});
/**
* The plan of a site from the distances between its marks and the ties of its buried points. A point that two places fit stays
* two until somebody says the side; one whose ties cannot be used says why, and the others are placed. Refuses marks that cannot be placed.
*/
function sitePlan(marks, points) {
	const network = marksFromDistances(marks);
	if (!network.ok) return network;
	const known = network.value.marks;
	return ok({
		marks: known.map((mark) => ({
			name: mark.name,
			...onPlan(mark)
		})),
		concerns: network.value.concerns,
		points: points.map(({ name, ties, side }) => {
			const place = placeByTies(known, ties, side);
			if (!place.ok) return {
				name,
				state: "refused",
				refusal: place.refusal
			};
			if (place.value.kind === "placed") return {
				name,
				state: "placed",
				...placed$1(place.value)
			};
			const { ask, left, right } = place.value;
			return {
				name,
				state: "mirrored",
				ask,
				left: placed$1(left),
				right: placed$1(right)
			};
		})
	});
}
// src/job/design/switches.ts
var camel = (id) => id.replace(/-([a-z0-9])/g, (_, letter) => letter.toUpperCase());
/** Switches by the ids that a tolerance sheet gives them, each by its id in camelCase; other ids are let be. */
var switchesBySheetId = (switches) => Object.fromEntries(Object.entries(switches).map(([id, on]) => [camel(id), on]));
/** The switches of a tolerance sheet under a design. */
var designSwitches = (sheet, design) => switchesBySheetId(Object.fromEntries(sheet.switches.map(({ id }) => [id, switchOn(sheet, design, id)])));
// src/job/remembered.ts
/**
* A function of plain data (texts, numbers, yes and no), worked out once for each of the last few things that it was asked of: the
* same value, sooner. `most`: how many are remembered; the oldest goes first. `keyOf`: a text that differs wherever what is given does,
* for what JSON does not write.
*/
function remembered(most, compute, keyOf = JSON.stringify) {
	const kept = /* @__PURE__ */ new Map();
	return (...given) => {
		const key = keyOf(given);
		const value = kept.get(key) ?? compute(...given);
		kept.delete(key);
		kept.set(key, value);
		const [oldest] = kept.keys();
		if (kept.size > most && oldest !== void 0) kept.delete(oldest);
		return value;
	};
}
// src/job/expected.ts
/** Design and kit cards by which something is judged. */
var sourceFor = (state, covering) => ({
	design: designFor(state, covering),
	kitCards: state.kitCards
});
/** What that design says yes or no to, as far as the arithmetic asks. */
var switchesFor = (state, covering) => switchesOf(state, designFor(state, covering));
var switchesOf = oncePer((state, design) => state.sheet === void 0 ? {} : designSwitches(state.sheet, design));
/** A reading changes neither design nor kit cards: as many jobs as a phone has open keep theirs from one entry to the next. */
var worked = remembered(8, (source, switches) => {
	let line;
	return {
		all: new Map(expectations(source, switches).map((one) => [one.id, one])),
		line: () => {
			line ??= lineAtWork(source, switches);
			return line;
		}
	};
});
var workedFor = oncePer((state, design) => worked({
	design,
	kitCards: state.kitCards
}, switchesOf(state, design)));
/** The pump on its pipe under that design. */
var lineFor = (state, covering) => workedFor(state, designFor(state, covering)).line();
/** What the design leads to in one figure, under the design that something is judged by. */
function expectedOf(state, covering, id) {
	const found = workedFor(state, designFor(state, covering)).all.get(id);
	if (found === void 0) throw new Error(`no expectation ${id}`);
	return found;
}
// src/job/limit-context.ts
/** The figure that a refusal of the design's arithmetic is about: `figures/pumpCurve/2`. */
var figureAt = (place) => place.startsWith("figures/") ? place.split("/").slice(1, 2) : [];
/** A figure derived from the design, or the figures that it waits for. */
function derived({ value, doubt = 0, needs = [], refusal }) {
	if (value !== void 0) return {
		value,
		doubt: doubt / 2
	};
	return { unknown: [...needs, ...refusal ? figureAt(refusal.place) : []] };
}
// src/job/glue-limits.ts
var jointKinds = [
	"rigid PVC",
	"flexible PVC",
	"ABS to PVC transition"
];
/** What the items of a limit say was glued, as far as they say it. */
function gluedKind(context, items) {
	const means = context.meaning(items) ?? [];
	return jointKinds.find((one) => means.includes(one));
}
/** Set and cure by the company's table, for what the items say of the session. */
function byTable(context, items) {
	const kind = gluedKind(context, items);
	const coldest = context.coldest(items);
	return cureTimes(context.figures, {
		...kind && { kind },
		...coldest && { coldest },
		...context.meaning(items)?.includes("dry air") && { humidity: "dry" },
		...context.cureTable && { table: context.cureTable }
	});
}
/** What a time that no table gives waits for: the thermometer where only that is missing, else `otherwise`, with figures that the office owes. */
function waitsFor(context, items, place, otherwise) {
	const thermometers = place === "cure/coldest" && context.coldest(items) === void 0 ? context.reading(items, "temperature") : [];
	const unknown = figureAt(place);
	return {
		missing: thermometers.length > 0 ? thermometers : otherwise,
		...unknown.length > 0 ? { unknown } : {}
	};
}
var isTabled = (kind) => kind === void 0 || kind === "rigid PVC";
/**
* Milliseconds from the last joint until water: the can's own time, else the company's table. What no table covers (flexible pipe, a
* size or a temperature outside it) waits for the can; a figure that the office owes is named beside it.
*/
function cureTime(context, { item = "", items = [] }) {
	const can = context.typed(item);
	if (can !== void 0) return { value: can };
	if (!isTabled(gluedKind(context, items))) return { missing: [item] };
	const times = byTable(context, items);
	return times.ok ? { value: times.value.cure } : waitsFor(context, items, times.refusal.place, [item]);
}
/**
* Milliseconds from the last joint until it may be handled and filled around: the can's own time, else the company's table, but never
* longer than the can's cure. Where neither can nor table gives a set time, the cure time stands for it.
*/
function setTime(context, { item = "", items = [] }) {
	const can = context.typed(item);
	if (can !== void 0) return { value: can };
	const durations = context.reading(items, "duration");
	const cured = durations.map(context.typed).find((time) => time !== void 0);
	const otherwise = durations.length > 0 ? durations : [item];
	if (!isTabled(gluedKind(context, items))) return cured === void 0 ? { missing: otherwise } : { value: cured };
	const times = byTable(context, items);
	if (times.ok) return { value: Math.min(times.value.set, cured ?? times.value.set) };
	return cured === void 0 ? waitsFor(context, items, times.refusal.place, otherwise) : { value: cured };
}
// src/job/rain-of-a-day.ts
/** Rain of a wet day by the design, micrometres, with its own doubt. */
function rainOfADay({ figures }) {
	const rain = designFigure(figures, "rainPerDay");
	if (rain === void 0) return { unknown: ["rainPerDay"] };
	return {
		value: toInteger(rain.value * fixedPerSi("length")),
		doubt: standardUncertainty(rain) * fixedPerSi("length")
	};
}
// src/job/water-per-depth.ts
/** Water per depth of the basin, m³ per m (its area of water, m²), as the design has it; or the figures that it waits for. */
function waterPerDepth(state) {
	const water = derived(expectedOf(state, void 0, "waterPerInch"));
	if (!("value" in water)) return { unknown: water.unknown ?? [] };
	const perInch = fixedPerSi("volume") * inches(1);
	return { value: withSource({
		value: water.value / perInch,
		parts: /* @__PURE__ */ new Map()
	}, "design:water-per-depth", (water.doubt ?? 0) / perInch) };
}
// src/job/water-to-leave.ts
var expectationOn = {
	"water seen in the hole": "leaveForWaterSeen",
	"rain before backfill": "leaveForRain",
	"washing in": "leaveForWashingIn",
	"winter emptying": "leaveForWinter"
};
/** What the water is left in for: as the sheet says, else water outside where an answer says so, else rain; undefined while nobody answered. */
var occasionOf = ({ occasion }, means) => occasion ?? (means && (means.includes("water outside") ? "water seen in the hole" : "rain before backfill"));
/** How far down from the rim the water may stand inside, so that what is left holds the basin down: micrometres. */
function waterLeftInside(context, limit) {
	const { items = [] } = limit;
	const occasion = occasionOf(limit, context.meaning(items));
	if (occasion === void 0) return { missing: items };
	const leave = derived(context.expected(expectationOn[occasion]));
	const depth = figureValue(context.figures, "basinDepth", "length");
	const unknown = [..."value" in leave ? [] : leave.unknown ?? [], ...depth === void 0 ? ["basinDepth"] : []];
	if (!("value" in leave) || depth === void 0) return { unknown };
	return {
		value: depth - leave.value,
		doubt: rectangular(designFigures.basinDepth.doubt?.halfWidth ?? 0) * fixedPerSi("length")
	};
}
var answers = [
	"none needed",
	"leave water",
	"full is not enough"
];
/** How much that is by the design that something is judged by; undefined while the design does not say. */
function toLeaveOn(state, covering, occasion) {
	const { value: depth, answer } = expectedOf(state, covering, expectationOn[occasion]);
	const known = answers.find((one) => one === answer);
	if (depth === void 0 || known === void 0) return void 0;
	const area = waterPerDepth(state);
	const volume = "unknown" in area ? void 0 : toInteger(area.value.value * depth / fixedPerSi("length") * fixedPerSi("volume"));
	return {
		occasion,
		answer: known,
		depth,
		...volume === void 0 ? {} : { volume }
	};
}
// src/job/limits.ts
function sumOf(context, keys, of) {
	const values = keys.map((key) => figureValue(context.figures, key, "length"));
	const unknown = keys.filter((_, i) => values[i] === void 0);
	return unknown.length > 0 ? { unknown } : { value: of(values) };
}
/** The closed list of what a limit can be besides a number. */
var named$1 = {
	"design figure": (context, { figure = "" }) => {
		const value = figureValue(context.figures, figure, context.kind);
		return value === void 0 ? { unknown: [figure] } : { value };
	},
	"rim below finished grade": (context) => sumOf(context, ["rimBelowGrade"], ([below = 0]) => below),
	"cord reach": (context) => sumOf(context, ["cordLength", "basinDepth"], ([cord = 0, depth = 0]) => cord - depth),
	"as typed": (context, { item = "" }) => {
		const value = context.typed(item);
		return value === void 0 ? { missing: [item] } : { value };
	},
	"set time": setTime,
	"cure time": cureTime,
	"standard socket depth": ({ expected }) => derived(expected("socketLeastSchedule40")),
	"expected draw-down": ({ expected }) => derived(expected("drawDown")),
	"expected flow": ({ expected }) => derived(expected("flow")),
	"rain of a day": rainOfADay,
	"water left inside": waterLeftInside
};
function resolveLimit(limit, context) {
	if (typeof limit === "number") return { value: limit };
	const resolved = named$1[limit.function](context, limit);
	return "value" in resolved ? {
		...resolved,
		value: resolved.value + (limit.offset ?? 0)
	} : resolved;
}
// src/job/flow-as-measured.ts
/** A reading with the doubt that its way brings besides: the hand on the watch, the bin's mark. New at each reading. */
function asRead(way, { fact, value }, kind) {
	if (kind === "duration") {
		const u = rectangular(WATCH_HALF_WIDTH);
		return {
			fact,
			value: withSource(withSource(value, `reading:${fact.id}/watch-start`, u), `reading:${fact.id}/watch-stop`, u)
		};
	}
	return kind === "volume" && way.by === "bin" ? {
		fact,
		value: withSource(value, "bin/mark", rectangular(BIN_MARK_SHARE * value.value))
	} : {
		fact,
		value
	};
}
/** One way with its readings; undefined while one of them is missing. */
function takenBy(context, readings, way) {
	const points = /* @__PURE__ */ new Map();
	const entries = [];
	for (const { item } of instancesOf(context, way.items)) {
		const kind = item.quantity ?? "length";
		const read = readings.get(item.id) ?? [];
		const point = pointOf$1(read.map((reading) => asRead(way, reading, kind)));
		if (point === void 0) return void 0;
		points.set(kind, point);
		entries.push(...read.map(({ fact }) => fact));
	}
	return entries.length === 0 ? void 0 : {
		way,
		points,
		entries,
		newest: Math.max(...entries.map(({ position }) => position))
	};
}
/** The flow that the readings of one way come to; the basin's area is the design's. Undefined where the sheet pairs what cannot go together. */
function flowOf({ way, points }, area) {
	const of = (kind) => points.get(kind)?.value;
	const [volume, time, drop, shown] = [
		of("volume"),
		of("duration"),
		of("length"),
		of("flow")
	];
	if (way.by === "bin") return volume && time && flowFromBin(volume, time);
	if (way.by === "basin going down") return area && drop && time && flowFromDrawDown(area, drop, time);
	return shown ? flowByMeter(shown) : volume && time && flowByCounter(certain(0), volume, time);
}
var flowFigures = (measured) => {
	const { value, expanded: doubt } = leaveCore(measured, fixedPerSi("flow"));
	return {
		measuredFlow: value,
		doubtFlow: doubt
	};
};
/** A bin that was full too soon says how large it would have to be; anything else that cannot be worked with is taken again. */
function refusedFlow(context, { way, entries }, flow) {
	const { code, figures = {} } = flow.refusal;
	if (code !== "flow-bin-too-fast") return lacking(instancesOf(context, way.items), entries);
	const { milliseconds = 0, least = 0, enough = 0 } = figures;
	return {
		state: "does not count",
		says: message("flow.bin-too-fast", {
			tookDuration: milliseconds,
			leastDuration: least,
			enoughVolume: enough
		}),
		entries
	};
}
/** The measured flow beside what the design gives, or what stands in the way of comparing. */
function beside({ state }, taken, measured, entries, aside) {
	const line = lineFor(state, void 0);
	const figures = flowFigures(measured);
	if (!line.known) {
		const unknown = [...line.needs, ...line.refusal ? figureAt(line.refusal.place) : []];
		return {
			state: "does not count",
			says: message("flow.alone", figures),
			entries,
			unknown
		};
	}
	const { point } = line.value;
	if (point === void 0) return {
		state: "does not count",
		says: message(`flow.${line.value.outcome.replaceAll(" ", "-")}`, figures),
		entries
	};
	return {
		state: "value",
		value: measured,
		entries,
		flow: {
			line: line.value,
			point
		},
		...aside.length > 0 ? { aside } : {},
		...[...taken.points.values()].every(({ agrees }) => agrees) ? {} : { unsettled: disagree }
	};
}
/**
* Flow as it was measured, by whichever of the sheet's ways was taken; of several the newest counts. Bin: its volume and the time it
* took. Draw-down: how far the basin went down in a time while nothing came back. Meter: what it shows, or what it counted in a time.
*/
function flowAsMeasured(context) {
	const { check, state } = context;
	const ways = check.ways ?? [];
	const readings = readAll(context, check.items);
	const entries = entriesOf(readings);
	const [taken] = ways.flatMap((way) => takenBy(context, readings, way) ?? []).sort((a, b) => b.newest - a.newest);
	if (taken === void 0) return lacking(instancesOf(context, ways.find(({ items }) => items.some((id) => (readings.get(id) ?? []).length > 0))?.items ?? check.items).filter(({ item }) => (readings.get(item.id) ?? []).length === 0), entries);
	const area = taken.way.by === "basin going down" ? waterPerDepth(state) : void 0;
	if (area && "unknown" in area) return {
		state: "lacking",
		missing: [],
		entries: taken.entries,
		unknown: area.unknown
	};
	const flow = flowOf(taken, area?.value);
	if (flow === void 0) return lacking(instancesOf(context, taken.way.items), taken.entries);
	if (!flow.ok) return refusedFlow(context, taken, flow);
	return beside(context, taken, flow.value, entries, entries.filter((fact) => !taken.entries.includes(fact)));
}
// src/job/tied-things.ts
/** Ties of one point differ in the number at the end of their items' names, and in nothing else. */
var keyOf$1 = (item, tag) => `${stemOf(item, "-")} ${tag ?? ""}`;
var stemOf = oncePer(({ id }, _) => id.replace(/-\d+$/, ""));
var isMarkSaid = (fact) => {
	const { mark } = whatOf(fact, "reading-taken");
	return typeof mark === "string" && mark.trim() !== "";
};
var markOf = (fact) => String(whatOf(fact, "reading-taken").mark ?? "").trim();
function groupedBy(things, key) {
	const groups = /* @__PURE__ */ new Map();
	for (const thing of things) {
		const own = key(thing);
		const known = groups.get(own);
		if (known) known.push(thing);
		else groups.set(own, [thing]);
	}
	return groups;
}
function tieOf(mark, readings) {
	const point = pointOf$1(readings);
	return point === void 0 ? [] : [{
		mark,
		facts: readings.map(({ fact }) => fact),
		distance: point.value,
		disagree: !point.agrees
	}];
}
function sideOf(readings, [first, second]) {
	const said = readings.map(({ fact }) => whatOf(fact, "reading-taken").side).findLast((side) => side === "left" || side === "right");
	return said === void 0 || first === void 0 || second === void 0 ? void 0 : {
		from: first.mark,
		to: second.mark,
		side: said
	};
}
/** Everything that was tied to marks and still counts, each with its distances, in the order of the tolerance sheet. */
function tiedThings(state) {
	const items = (state.sheet?.items ?? []).filter((item) => item.fromMark === true);
	const tagsOf = (item) => item.tags === void 0 ? [void 0] : state.tags.filter((tag) => tag.set === item.tags);
	return [...groupedBy(items.flatMap((item) => tagsOf(item).flatMap((tag) => readingsOf(state, tag === void 0 ? { item } : {
		item,
		tag: tag.tag
	}).filter(({ fact }) => isMarkSaid(fact)).map((reading) => ({
		item,
		tag,
		reading
	})))), ({ item, tag }) => keyOf$1(item, tag?.tag))].flatMap(([key, all]) => {
		const [first] = all;
		if (first === void 0) return [];
		const readings = all.map(({ reading }) => reading);
		const ties = [...groupedBy(readings, ({ fact }) => markOf(fact))].flatMap(([mark, of]) => tieOf(mark, of));
		const side = sideOf(readings, ties);
		return [{
			key,
			item: first.item,
			ties,
			...first.tag ? { tag: first.tag } : {},
			...side ? { side } : {}
		}];
	});
}
/** The key of the point that these items tie, for a tag where they repeat. */
var keyOfTies = (items, tag) => {
	const [first] = items;
	return first && keyOf$1(first, tag);
};
// src/job/site-placed.ts
var plain = (text) => text.trim().toLowerCase();
/** The ways in which a tie may call a tag that is a mark. */
var namesOf = ({ tag, description }) => (description === void 0 ? [tag] : [
	tag,
	description,
	`${tag}, ${description}`,
	`${tag}: ${description}`
]).map(plain);
/** The tags that can be a mark: their own set is tied. One of another set may bear the same letter. */
function tiedTags({ sheet, tags }) {
	const sets = new Set((sheet?.items ?? []).flatMap((item) => item.fromMark === true && item.tags !== void 0 ? [item.tags] : []));
	return tags.filter(({ set }) => sets.has(set));
}
/** One name for a mark however its ties spell it: as it was first called. */
function spelling(things, tags) {
	const called = [...new Set(things.flatMap(({ ties }) => ties.map(({ mark }) => mark)))];
	const keyOf = (mark) => {
		const found = tags.filter((tag) => namesOf(tag).includes(plain(mark)));
		const [only] = found;
		return only !== void 0 && found.length === 1 ? `${only.set}/${only.tag}` : plain(mark);
	};
	const firsts = /* @__PURE__ */ new Map();
	const spelt = /* @__PURE__ */ new Map();
	for (const mark of called) {
		const key = keyOf(mark);
		if (!firsts.has(key)) firsts.set(key, mark);
		spelt.set(mark, firsts.get(key) ?? mark);
	}
	return (mark) => spelt.get(mark) ?? mark;
}
/** Ties under one spelling of their marks. The better of two that then are to the same mark stands. */
function respelt(thing, spelt) {
	const ties = /* @__PURE__ */ new Map();
	for (const tie of thing.ties) {
		const mark = spelt(tie.mark);
		const known = ties.get(mark);
		if (known === void 0 || expanded(tie.distance) < expanded(known.distance)) ties.set(mark, {
			...tie,
			mark
		});
	}
	const { side } = thing;
	return {
		...thing,
		ties: [...ties.values()],
		...side ? { side: {
			...side,
			from: spelt(side.from),
			to: spelt(side.to)
		} } : {}
	};
}
var isCalled = ({ tag }, mark) => tag !== void 0 && namesOf(tag).includes(plain(mark));
function marksOf(things, tags) {
	return [...new Set(things.flatMap(({ ties }) => ties.map(({ mark }) => mark)))].map((name) => {
		const own = things.filter((thing) => isCalled(thing, name));
		const called = tags.filter((tag) => namesOf(tag).includes(plain(name)));
		const [tied, tag] = [own.length === 1 ? own[0] : void 0, called.length === 1 ? called[0] : void 0];
		return {
			name,
			...tied ? { tied } : {},
			...tag ? { tag } : {}
		};
	});
}
var distancesOf = (marks) => marks.flatMap(({ name, tied }) => (tied?.ties ?? []).filter(({ mark }) => mark !== name).map((tie) => ({
	from: tie.mark,
	to: name,
	tie
})));
/** A side between two marks that are both there. */
var sideAmong = (side, without) => side === void 0 || without.has(side.from) || without.has(side.to) ? {} : { side };
/** The measured marks, from the first two that were measured to each other; undefined where no two were. */
function measuredMarks(marks, all, without) {
	const distances = all.filter(({ from, to }) => !without.has(from) && !without.has(to));
	const [base] = distances;
	if (base === void 0) return void 0;
	const between = (a, b) => distances.filter(({ from, to }) => from === a && to === b || from === b && to === a).map(({ tie }) => tie.distance).sort((one, other) => expanded(one) - expanded(other))[0];
	const further = marks.filter(({ name }) => name !== base.from && name !== base.to && !without.has(name)).map(({ name, tied }) => {
		return {
			name,
			ties: marks.flatMap((other) => {
				const distance = other.name === name ? void 0 : between(name, other.name);
				return distance ? [{
					mark: other.name,
					distance
				}] : [];
			}),
			...sideAmong(tied?.side, without)
		};
	});
	return {
		first: base.from,
		second: {
			name: base.to,
			distance: base.tie.distance
		},
		further
	};
}
/** A distance with its doubt as rows, which a text can hold. */
var inRows = ({ value, parts }) => [value, ...parts];
var tiesInRows = (ties) => ties.map(({ mark, distance }) => [mark, inRows(distance)]);
/** Most entries tie nothing: as many jobs as a phone has open, each with a few marks left out, keep their plan from one to the next. */
var planned = remembered(16, sitePlan, ([{ first, second, further = [] }, points]) => JSON.stringify([
	[
		first,
		second.name,
		inRows(second.distance)
	],
	further.map(({ name, ties, side }) => [
		name,
		tiesInRows(ties),
		side
	]),
	points.map(({ name, ties, side }) => [
		name,
		tiesInRows(ties),
		side
	])
]));
/** The plan of as many marks as can be placed: one that cannot is left out, with what it lacks. */
var sitePlaced = oncePer((state, _) => {
	const raw = tiedThings(state);
	const tags = tiedTags(state);
	const spelt = spelling(raw, tags);
	const things = raw.map((thing) => respelt(thing, spelt));
	const marks = marksOf(things, tags);
	const distances = distancesOf(marks);
	const points = things.filter((thing) => !marks.some(({ tied }) => tied === thing));
	const site = {
		marks,
		distances,
		points
	};
	const isTied = (name) => distances.some(({ from, to }) => from === name || to === name);
	const without = new Set(marks.map(({ name }) => name).filter((name) => !isTied(name)));
	const left = [];
	for (;;) {
		const measured = measuredMarks(marks, distances, without);
		if (measured === void 0) return {
			...site,
			left
		};
		const plan = planned(measured, points.map(({ key, ties, side }) => ({
			name: key,
			ties: ties.filter(({ mark }) => !without.has(mark)),
			...sideAmong(side, without)
		})));
		if (plan.ok) return {
			...site,
			plan: plan.value,
			left
		};
		const { refusal } = plan;
		const further = measured.further ?? [];
		const failing = further.find(({ name }) => refusal.figures.mark === name || refusal.place.endsWith(`/${name}`)) ?? further.at(-1);
		if (failing === void 0) return {
			...site,
			left,
			refusal
		};
		without.add(failing.name);
		left.push({
			mark: failing.name,
			refusal
		});
	}
});
// src/job/found-by-ties.ts
var perMetre = fixedPerSi("length");
var LEAST_TIES = 2;
/** What a refusal of its distances comes to, as a sentence of the finding. */
function refused({ code, figures }) {
	switch (code) {
		case "ties-cannot-meet": return message("ties.cannot-meet", figures);
		case "ties-side-missing": return message("ties.side-missing", figures);
		case "ties-in-line": return message("ties.in-line");
		case "ties-too-few":
		case "ties-mark-unknown": return message("ties.mark-apart");
		default: return message("ties.not-settled");
	}
}
/** What makes a place less good than its ellipse says, the worst first. */
function concernOf({ concerns, crossing, residuals }) {
	if (concerns.includes("ties disagree")) return message("ties.disagree", { off: Math.max(...residuals.map(({ off }) => Math.abs(off))) });
	if (concerns.includes("side differs")) return message("ties.side-differs");
	if (concerns.includes("mirrors overlap")) return message("ties.mirrors-overlap");
	if (!concerns.includes("poor crossing")) return void 0;
	return message("ties.poor-crossing", {
		first: crossing.first,
		second: crossing.second,
		angle: String(crossing.degrees)
	});
}
/** Half the larger axis of the ellipse that holds it in 95 cases of 100. */
var placed = ({ ellipse }, entries, unsettled) => ({
	state: "value",
	value: certain(ellipse.major / perMetre),
	entries,
	...unsettled ? { unsettled } : {}
});
function markFound({ plan, left }, name, entries) {
	const out = left.find(({ mark }) => mark === name);
	if (out) return {
		state: "does not count",
		says: refused(out.refusal),
		entries
	};
	const at = plan?.marks.findIndex((mark) => mark.name === name) ?? -1;
	const mark = plan?.marks[at];
	if (mark === void 0) return {
		state: "does not count",
		says: message("ties.no-distances"),
		entries
	};
	if (at < LEAST_TIES) return {
		state: "answered",
		met: true,
		entries
	};
	const concerns = plan?.concerns.find((one) => one.mark === name)?.concerns ?? [];
	return placed(mark, entries, concerns.includes("ties disagree") ? disagree : concerns.length > 0 ? message("ties.mark-poor") : void 0);
}
function pointFound({ plan, refusal }, { key, ties }, entries) {
	const says = (of) => ({
		state: "does not count",
		says: of,
		entries
	});
	if (plan === void 0) return says(refusal ? refused(refusal) : message("ties.no-distances"));
	const point = plan.points.find(({ name }) => name === key);
	if (point === void 0) return says(message("ties.not-settled"));
	if (point.state === "refused") return says(refused(point.refusal));
	if (point.state === "mirrored") return says(message("ties.side-missing", {
		first: point.ask.from,
		second: point.ask.to
	}));
	return placed(point, entries, ties.some((tie) => tie.disagree) ? disagree : concernOf(point));
}
/**
* How near a tied point is found again from its marks, metres: half the larger axis of its ellipse. A mark that others are placed from
* has none. Two places that fit are asked about, never chosen from; distances that cannot meet say by how much they miss.
*/
function foundByTies(context) {
	const { check, state, tag } = context;
	const instances = instancesOf(context, check.items);
	const key = keyOfTies(instances.map(({ item }) => item), tag);
	const site = sitePlaced(state, "all");
	const readings = readAll(context, check.items);
	const entries = [...readings.values()].flat().map(({ fact }) => fact);
	const isOwn = (thing) => thing?.key === key;
	const set = instances[0]?.item.tags;
	const mark = site.marks.find((one) => isOwn(one.tied) || one.tag !== void 0 && one.tag.set === set && one.tag.tag === tag);
	if (mark !== void 0 && (site.plan?.marks.some(({ name }) => name === mark.name) || entries.length > 0)) return markFound(site, mark.name, entries);
	const open = instances.filter(({ item }) => (readings.get(item.id) ?? []).length === 0);
	const missing = LEAST_TIES - (instances.length - open.length);
	if (missing > 0) return lacking(open.slice(0, missing), entries);
	const point = site.points.find(isOwn);
	if (point === void 0 || !entries.every(isMarkSaid)) return {
		state: "does not count",
		says: message("ties.mark-unsaid"),
		entries
	};
	return pointFound(site, point, entries);
}
// src/job/from-set-ups.ts
/** The set-ups that readings came from, the newest last. */
var setUpsIn = (readings) => {
	const newest = /* @__PURE__ */ new Map();
	for (const { setUp, fact } of [...readings.values()].flat()) if (setUp !== void 0) newest.set(setUp, Math.max(newest.get(setUp) ?? -1, fact.position));
	return [...newest].sort(([, a], [, b]) => a - b).map(([setUp]) => setUp);
};
/** What was read from one set-up; what needs none stands beside it. */
function inSetUp(context, readings, setUp) {
	const free = new Set(instancesOf(context, [...readings.keys()]).flatMap(({ item }) => item.inSetUp ? [] : [item.id]));
	return new Map([...readings].map(([id, list]) => [id, list.filter((r) => free.has(id) || r.setUp === setUp)]));
}
var notClosed = (closing) => ({
	key: "reason.mark-not-closed",
	figures: {
		difference: closing?.difference ?? 0,
		allowed: closing?.allowed ?? 0
	}
});
/** The value from each set-up that has read all places; one that did not close counts only while there is no better. */
function bySetUp(context, ids, readings, of) {
	const all = setUpsIn(readings).flatMap((setUp) => {
		const result = compute(ids, inSetUp(context, readings, setUp), of);
		return result === void 0 ? [] : [{
			...result,
			setUp,
			closing: closingOf(context.state, setUp)
		}];
	});
	const standing = all.filter(({ closing }) => closing.state !== "does not close");
	return standing.length > 0 ? standing : all;
}
/**
* The same value from several set-ups as one. As with readings of one point, resolution and placing go down with √n and
* the rest stays whole; but within each value the places' parts stand in quadrature, as they did.
*/
function meanOfSetUps([first, ...rest]) {
	if (first === void 0) return void 0;
	const [second, third] = rest;
	if (second === void 0) return {
		value: first,
		agrees: true
	};
	const values = [first, ...rest];
	const byChance = (source) => ["resolution", "placing"].includes(roleOfSource(source) ?? "");
	const parts = new Map([...mean(values).parts].filter(([source]) => byChance(source)));
	for (const role of sourceRoles.filter((r) => !byChance(`/${r}`))) {
		const u = total(values.map((value) => total([...value.parts].flatMap(([source, part]) => roleOfSource(source) === role ? [part * part] : []))).map(Math.sqrt)) / values.length;
		if (u > 0) parts.set(ofSetUp("all", role), u);
	}
	return {
		value: {
			value: mean(values).value,
			parts
		},
		agrees: third !== void 0 || agreeWithinDoubt(first, second).agrees
	};
}
/** Readings off a level line from set-ups that do not count. */
function notFrom(context, readings, setUps) {
	return instancesOf(context, [...readings.keys()]).filter(({ item }) => item.inSetUp).flatMap(({ item }) => (readings.get(item.id) ?? []).filter((r) => !setUps.has(r.setUp)).map((r) => r.fact));
}
function fromSetUps(context, ids, readings, of) {
	const entries = entriesOf(readings);
	const values = bySetUp(context, ids, readings, of);
	const point = meanOfSetUps(values.map((v) => v.value));
	if (point === void 0) {
		const newest = setUpsIn(readings).at(-1);
		return lacking(missingOf(context, ids, newest === void 0 ? readings : inSetUp(context, readings, newest)), entries);
	}
	const open = values.find(({ closing }) => closing.state === "does not close");
	const agrees = point.agrees && values.every((v) => v.agrees);
	const unsettled = open ? notClosed(open.closing) : agrees ? void 0 : disagree;
	return {
		state: "value",
		value: point.value,
		entries,
		marks: values.flatMap(({ closing }) => closing.reads),
		aside: notFrom(context, readings, new Set(values.map(({ setUp }) => setUp))),
		...values.some(({ closing }) => closing.state === "so far") ? { soFar: true } : {},
		...unsettled ? { unsettled } : {}
	};
}
/** A value from readings of one set-up each, so that the line's own height drops out of it; else from plain readings. */
function computed(context, ids, of) {
	const readings = readAll(context, ids);
	return (instancesOf(context, ids).some(({ item }) => item.inSetUp === true) ? fromSetUps : plain$1)(context, ids, readings, of);
}
/** Height of one place over the height mark, from the newest set-up that closed, else the newest that read both. */
function overMark(context, readings) {
	const read = setUpsIn(/* @__PURE__ */ new Map([["", readings]])).map((setUp) => ({
		setUp,
		closing: closingOf(context.state, setUp)
	})).filter(({ closing }) => closing.mark !== void 0);
	const used = read.filter(({ closing }) => closing.state === "closed").at(-1) ?? read.at(-1);
	const point = used && pointOf$1(readings.filter((r) => r.setUp === used.setUp));
	if (point === void 0 || used?.closing.mark === void 0) return void 0;
	return {
		height: subtract(used.closing.mark, point.value),
		agrees: point.agrees,
		closing: used.closing,
		setUp: used.setUp
	};
}
/** The largest move stands for all places, so that one corner that sank is not averaged away. */
var largest = (moves) => moves.reduce((worst, move) => worst === void 0 || Math.abs(move.by.value) > Math.abs(worst.by.value) ? move : worst, void 0);
/** How far the place that moved most went up or down since it was first read, each time over the height mark. */
function movedOverMark(context) {
	const { items, minus: before = [] } = context.check;
	const readings = readAll(context, [...items, ...before]);
	const entries = entriesOf(readings);
	const pairs = items.flatMap((id, i) => {
		const now = overMark(context, readings.get(id) ?? []);
		const then = overMark(context, readings.get(before[i] ?? "") ?? []);
		return now && then ? [{
			place: { item: id },
			now,
			then,
			by: movedSince(then.height, now.height)
		}] : [];
	});
	const move = largest(pairs);
	if (pairs.length < items.length || move === void 0) return lacking(missingOf(context, [...items, ...before], readings), entries);
	const closings = pairs.flatMap(({ now, then }) => [now.closing, then.closing]);
	const open = closings.find((closing) => closing.state === "does not close");
	const marks = new Map(closings.flatMap(({ reads }) => reads.map((fact) => [fact.id, fact])));
	return {
		state: "value",
		value: move.by,
		place: move.place,
		entries,
		aside: pairs.flatMap(({ place, now, then }, i) => [...(readings.get(place.item ?? "") ?? []).filter((r) => r.setUp !== now.setUp), ...(readings.get(before[i] ?? "") ?? []).filter((r) => r.setUp !== then.setUp)]).map((r) => r.fact),
		marks: [...marks.values()],
		...closings.some((closing) => closing.state === "so far") ? { soFar: true } : {},
		...open ? { unsettled: notClosed(open) } : pairs.every(({ now, then }) => now.agrees && then.agrees) ? {} : { unsettled: disagree }
	};
}
// src/job/test-weather.ts
/** How far a forecast or a station down the road lies from the garden, half-widths: all own. °C, share of 1, share of the wind, hours, share of the sun. */
var fromGarden = {
	temperature: 2,
	humidity: 10,
	wind: .4,
	sunshine: 1,
	radiation: .15
};
/** Forecasts and stations give the wind at this height, m. */
var WIND_HEIGHT = 10;
var SECONDS_PER_HOUR = 3600;
var JOULES_PER_MEGAJOULE = 1e6;
var MS_PER_DAY = 1e3 * SECONDS_PER_DAY;
/** Days from 1 January 1970 to 1 January of a year. */
function firstDayOf(year) {
	const before = year - 1;
	return 365 * (year - 1970) + Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400) - 477;
}
/** Day of the year, 1 to 366, at an instant in ms; the site's own midnight makes no difference here. */
function dayOfYear(instant) {
	const days = Math.floor(instant / MS_PER_DAY);
	const near = 1970 + Math.floor(days / 365.2425);
	return days - firstDayOf([
		near + 1,
		near,
		near - 1
	].find((one) => firstDayOf(one) <= days) ?? near) + 1;
}
/** The typed weather as the water's arithmetic takes it, each with what it may be off besides. */
function readWeather(context, typed) {
	const roles = Object.keys(typed);
	const readings = readAll(context, Object.values(typed));
	const of = (role) => pointOf$1(readings.get(typed[role] ?? "") ?? [])?.value;
	const off = (value, role, halfWidth) => withSource(value, `weather:${role}`, rectangular(halfWidth));
	const [highest, lowest, humidity, wind, sunshine, radiation] = [
		of("highest"),
		of("lowest"),
		of("humidity"),
		of("wind"),
		of("sunshine"),
		of("radiation")
	];
	const hours = (value) => scale(value, 1 / SECONDS_PER_HOUR);
	const sun = radiation ? {
		kind: "radiation",
		perDay: off(scale(radiation, 1 / JOULES_PER_MEGAJOULE), "radiation", fromGarden.radiation * (radiation.value / JOULES_PER_MEGAJOULE))
	} : sunshine && {
		kind: "hours",
		hours: off(hours(sunshine), "sunshine", fromGarden.sunshine)
	};
	return {
		highest: highest && off(highest, "highest", fromGarden.temperature),
		lowest: lowest && off(lowest, "lowest", fromGarden.temperature),
		humidity: humidity && off(scale(humidity, 100), "humidity", fromGarden.humidity),
		wind: wind && off(wind, "wind", fromGarden.wind * wind.value),
		sun,
		missing: roles.filter((role) => role !== "radiation" && of(role) === void 0 && !(role === "sunshine" && sun)),
		begun: roles.some((role) => of(role) !== void 0),
		entries: [...readings.values()].flat().map(({ fact }) => fact)
	};
}
/**
* What evaporates a day by the typed weather of a test: FAO-56, open water. Latitude and elevation are figures of the design; the
* day of the year is that of the test. Half-widths of what is typed are own, and the model's own ± 30 % stands on top of them.
*/
function evaporationByWeather(context, typed, at) {
	const { highest, lowest, humidity, wind, sun, missing, begun, entries } = readWeather(context, typed);
	const source = sourceFor(context.state, void 0);
	const latitude = figureValue(source, "latitude", "angle");
	const elevation = figureValue(source, "elevation", "length");
	const unknown = [...latitude === void 0 ? ["latitude"] : [], ...elevation === void 0 ? ["elevation"] : []];
	if (!highest || !lowest || !humidity || !wind || !sun || latitude === void 0 || elevation === void 0) return {
		state: "missing",
		missing: instancesOf(context, missing.map((role) => typed[role] ?? "")).map(aboutOf),
		unknown,
		begun
	};
	const day = evaporationOfDay({
		highest,
		lowest,
		humidity: {
			kind: "mean",
			mean: humidity
		},
		wind,
		windHeight: WIND_HEIGHT,
		sun,
		latitude: latitude / fixedPerSi("angle"),
		elevation: elevation / fixedPerSi("length"),
		dayOfYear: dayOfYear(at)
	});
	return day.ok ? {
		state: "worked out",
		depthPerDay: day.value.openWater,
		entries
	} : {
		state: "does not hold together",
		entries
	};
}
/** Source of doubt: which part of a day's evaporation falls into a part of a day. */
var PART_OF_DAY = "own:part-of-day";
/**
* A day's evaporation as it counts over a test of so many seconds. Of the part f of the last day anything from 2 f - 1 (or nothing) to 2 f
* (or all) of it may have evaporated: the sun stands over half of it. The middle is f; the half-width the smaller of f and 1 - f (own).
*/
function overWholeDays(depthPerDay, seconds) {
	const days = seconds / SECONDS_PER_DAY;
	const part = days - Math.floor(days);
	const share = days > 0 ? Math.min(part, 1 - part) / days : 0;
	return share === 0 ? depthPerDay : withSource(depthPerDay, PART_OF_DAY, rectangular(share * depthPerDay.value));
}
// src/job/evaporated.ts
/**
* What evaporated a day in a test without a control bucket: by its typed weather, else by the design's figure. Weather that somebody
* began to type is waited for, and the design does not step in for it. `at`: the middle of the test, ms; `seconds`: how long it was.
*/
function evaporatedWithoutBucket(context, at, seconds) {
	const { weather } = context.check;
	const over = (depthPerDay) => ({
		by: "weather",
		depthPerDay: overWholeDays(depthPerDay, seconds)
	});
	const typed = weather && evaporationByWeather(context, weather, at);
	if (typed?.state === "worked out") return {
		state: "known",
		evaporated: over(typed.depthPerDay),
		entries: typed.entries
	};
	if (typed?.state === "does not hold together") return typed;
	if (typed?.begun) {
		const { missing, unknown } = typed;
		return {
			state: "waits",
			missing,
			unknown,
			...missing.length === 0 ? { says: "leak.site-unknown" } : {}
		};
	}
	const planned = designFigure(sourceFor(context.state, void 0), "evaporationPerDay");
	if (planned) return {
		state: "known",
		evaporated: over(planned),
		entries: []
	};
	const unknown = ["evaporationPerDay"];
	if (weather === void 0) return {
		state: "waits",
		missing: [],
		unknown
	};
	return {
		state: "waits",
		missing: instancesOf(context, [
			weather.highest,
			weather.lowest,
			weather.humidity,
			weather.wind,
			weather.sunshine
		]).map(aboutOf),
		unknown,
		says: "leak.no-evaporation"
	};
}
// src/job/meaning.ts
/** What the last answers of these instances mean together; undefined where none of them was answered. */
function meaningOf(state, instances) {
	const answers = instances.flatMap((instance) => {
		const fact = instance.item.kind === "answer" ? seriesOf(state, instance).counting.at(-1) : void 0;
		return fact === void 0 ? [] : [instance.item.choices?.find(({ id }) => id === fact.what.choice)?.means ?? []];
	});
	return answers.length === 0 ? void 0 : answers.flat();
}
// src/job/loss-a-day.ts
var MS_PER_SECOND$1 = 1e3;
var conditionsOf = (means) => {
	const says = (meaning) => means.includes(meaning);
	const pump = says("pump off") ? "off" : says("pump ran") ? "ran" : says("pump ran in part") ? "ran in part" : void 0;
	return {
		...says("make-up shut") ? { makeUpShut: true } : says("make-up open") ? { makeUpShut: false } : {},
		...says("rain") ? { rain: true } : says("no rain") ? { rain: false } : {},
		...pump && { pump }
	};
};
var sentences = {
	"make-up not shut": "leak.make-up",
	"make-up not stated": "leak.not-said",
	rain: "leak.rain",
	"rain not stated": "leak.not-said",
	"pump not off": "leak.pump-not-off",
	"pump not running": "leak.pump-not-running",
	"pump not stated": "leak.not-said"
};
/** The last reading of each of two items, water down from a mark. */
function pairOf(context, ids) {
	const readings = readAll(context, ids);
	const [first, last] = ids.map((id) => readings.get(id)?.at(-1));
	const both = [first, last].flatMap((reading) => reading ?? []);
	return {
		readings: both,
		missing: lacking(missingOf(context, ids, readings), both.map(({ fact }) => fact)),
		...first && last ? { levels: {
			first: first.value,
			last: last.value
		} } : {}
	};
}
/** Time between two readings, seconds: their instants as typed or entered. */
function between(first, last) {
	return withSource(certain((happenedAt(last) - happenedAt(first)) / MS_PER_SECOND$1), "clocks", Math.max(first.doubt, last.doubt) / MS_PER_SECOND$1);
}
var both = (a, b) => [...a, ...b];
/** What evaporated: in the bucket where it was read first and last, else by the weather of the test or the design. */
function evaporatedIn(context, levels, [first, last]) {
	if (levels) return {
		state: "known",
		evaporated: {
			by: "control bucket",
			level: levels
		},
		entries: []
	};
	const [from, to] = [happenedAt(first), happenedAt(last)];
	return evaporatedWithoutBucket(context, (from + to) / 2, Math.max(0, (to - from) / MS_PER_SECOND$1));
}
/** What a basin loses a day beyond what evaporates, m³, from the water's height first and last and the time between. */
function lossADay(context) {
	const { check, state } = context;
	const kind = check.leak ?? "basin, pump off";
	const level = pairOf(context, check.items);
	const [first, last] = level.readings.map(({ fact }) => fact);
	if (level.levels === void 0 || first === void 0 || last === void 0) return level.missing;
	const bucket = check.bucket === void 0 ? void 0 : pairOf(context, check.bucket);
	const answers = instancesOf(context, check.conditions ?? []);
	const read = [...level.readings, ...bucket?.readings ?? []].map(({ fact }) => fact);
	const means = meaningOf(state, answers);
	if (means === void 0) return lacking(answers, read);
	const conditions = conditionsOf(means);
	const [fault] = leakTestFaults(kind, conditions);
	if (fault) return {
		state: "does not count",
		says: message(sentences[fault]),
		entries: read
	};
	const water = waterPerDepth(state);
	const found = evaporatedIn(context, bucket?.levels, [first, last]);
	if (found.state === "does not hold together") return {
		state: "does not count",
		says: message("leak.weather-odd"),
		entries: both(read, found.entries)
	};
	if ("unknown" in water || found.state === "waits") {
		const { missing = [], unknown = [], says } = found.state === "waits" ? found : {};
		return {
			state: "lacking",
			missing,
			entries: read,
			unknown: [..."unknown" in water ? water.unknown : [], ...unknown],
			...says === void 0 ? {} : { says }
		};
	}
	const entries = both(read, found.entries);
	const open = kind === "running" ? designFigure(sourceFor(state, void 0), "openWaterArea") : void 0;
	if (kind === "running" && found.evaporated.by === "weather" && open === void 0) return {
		state: "lacking",
		missing: [],
		entries,
		unknown: ["openWaterArea"],
		says: "leak.area-unknown"
	};
	const tested = leakTest({
		kind,
		level: level.levels,
		duration: between(first, last),
		perDepth: water.value,
		...open && { evaporatingArea: open },
		evaporated: found.evaporated,
		conditions
	});
	if (!tested.ok || tested.value.answer !== "counts") return lacking(instancesOf(context, check.items.slice(1)), entries);
	return {
		state: "value",
		value: tested.value.lossPerDay,
		entries,
		leak: tested.value
	};
}
// src/job/room-for-rain.ts
/**
* Rain that the water at rest still has room for, metres over the lined area: freeboard × water per depth ÷ area. The place that the
* water leaves by is an answer besides; without it the room is not known, for nobody has said to what edge it was measured.
*/
function roomForRain(context) {
	const { check, state } = context;
	const read = [...readAll(context, check.items).values()].flat();
	const leaves = instancesOf(context, check.conditions ?? []);
	const answers = leaves.map((instance) => seriesOf(state, instance).counting.at(-1));
	const entries = [...read.map(({ fact }) => fact), ...answers.flatMap((fact) => fact ?? [])];
	const open = leaves.filter((_, i) => answers[i] === void 0);
	const point = pointOf$1(read);
	if (point === void 0) return lacking([...instancesOf(context, check.items), ...open], entries);
	if (open.length > 0) return lacking(open, entries);
	const [water, linedArea] = [waterPerDepth(state), designFigure(sourceFor(state, void 0), "linedArea")];
	const isArea = linedArea !== void 0 && linedArea.value > 0;
	if ("unknown" in water || !isArea) return {
		state: "lacking",
		missing: [],
		entries,
		unknown: [..."unknown" in water ? water.unknown : [], ...isArea ? [] : ["linedArea"]]
	};
	const room = overflow({
		perDepth: water.value,
		freeboard: point.value,
		linedArea
	});
	if (!room.ok || room.value.answer !== "room for rain") return lacking(instancesOf(context, check.items), entries);
	return {
		state: "value",
		value: room.value.rainToOverflow,
		entries,
		...point.agrees ? {} : { unsettled: disagree }
	};
}
var HOURS_PER_DAY = 24;
var MS_PER_HOUR = 1e3 * SECONDS_PER_DAY / HOURS_PER_DAY;
var keys = {
	within: "rain.within",
	outside: "rain.outside",
	"too close to call": "rain.too-close"
};
/** The sentence of a room for rain: how long it lasts at the rain of a day that it is compared with, in whole hours. Nothing taken off for what evaporates. */
function roomSays(verdict, value, perDay, by) {
	const lasts = perDay === void 0 || perDay <= 0 ? {} : {
		perDay,
		overflowDuration: Math.round(value / perDay * HOURS_PER_DAY) * MS_PER_HOUR
	};
	return message(keys[verdict], {
		by,
		...lasts
	});
}
// src/job/short-of-socket.ts
/**
* How much a pipe is short of the bottom of its socket, metres, from a witness mark that was drawn the measured depth and 2 in from
* the pipe's end. A mark farther off than that cannot be: it is taken again.
*/
function shortOfSocket(context) {
	const { items, minus = [] } = context.check;
	const ids = [...items, ...minus];
	const found = plain$1(context, ids, readAll(context, ids), (points) => {
		const [mark, depth] = ids.map((id) => points.get(id));
		const joint = mark && depth ? insertion(depth, mark) : void 0;
		return joint?.ok ? joint.value.short : void 0;
	});
	return found.state === "lacking" && found.missing.length === 0 ? lacking(instancesOf(context, items), found.entries) : found;
}
// src/job/stone-on-the-lid.ts
/** What the items read, in their order; each goes before the design's own figure. */
var figures = [
	"stoneDepth",
	"boulderLength",
	"boulderWidth",
	"boulderHeight"
];
/** Weight of the stone on the lid, kg, to be compared with the load that the lid's maker states. None stated: the maker is asked. */
function stoneOnTheLid(context) {
	const { check, state } = context;
	const readings = readAll(context, check.items);
	const entries = entriesOf(readings);
	const points = check.items.map((id) => pointOf$1(readings.get(id) ?? []));
	const measured = Object.fromEntries(figures.flatMap((key, i) => {
		const point = points[i];
		return point ? [[key, point.value]] : [];
	}));
	const on = stoneOnLid(sourceFor(state, void 0), switchesFor(state, void 0), measured);
	if (!on.known) {
		const needs = [...on.needs, ...on.refusal ? figureAt(on.refusal.place) : []];
		const depth = needs.includes("stoneDepth") ? instancesOf(context, check.items.slice(0, 1)) : [];
		const unknown = needs.filter((key) => key !== "stoneDepth");
		return {
			...lacking(depth, entries),
			...unknown.length > 0 ? { unknown } : {}
		};
	}
	const { mass, answer } = on.value;
	if (answer === "ask the maker") {
		const { value, expanded } = leaveCore(mass, fixedPerSi("mass"));
		return {
			state: "does not count",
			says: message("load.ask-the-maker", {
				weightMass: value,
				doubtMass: expanded
			}),
			entries,
			unknown: ["lidLoad"]
		};
	}
	return {
		state: "value",
		value: mass,
		entries,
		...points.every((point) => point?.agrees !== false) ? {} : { unsettled: disagree }
	};
}
// src/job/moments.ts
/** A moment that the sheet names by an item: the first entry of it that counts, in the order of the work. */
function momentOf(state, moment) {
	const first = (state.sheet?.items ?? []).filter((item) => item.marks === moment).map((item) => item.id).flatMap((id) => (state.byItem.get(id) ?? []).filter(entersItem)).sort((a, b) => a.position - b.position)[0];
	return first && {
		at: happenedAt(first),
		entry: first.id
	};
}
// src/job/time-passed.ts
/** The entry of the item that must come after. */
function untilItem(context, id) {
	const [instance] = instancesOf(context, [id]);
	const fact = instance && seriesOf(context.state, instance).counting.at(-1);
	return fact && {
		fact,
		at: happenedAt(fact)
	};
}
/** The covering that is held, where somebody said that it happened: what is only inferred accuses nobody. */
function untilCovered({ state, check, tag }) {
	const covered = coveredOf(state, coveringHeld(state, check, state.sheet && tagSetOf(state.sheet.items, check), tag));
	return covered === void 0 || covered.noLaterThan ? void 0 : {
		fact: covered.fact,
		at: covered.at
	};
}
/** The moment of the job, where it did not come before the instant: mending what the water ran over is waited for anew. */
function untilMoment({ state }, since) {
	const moment = momentOf(state, "first running");
	const fact = moment && state.facts.find(({ id }) => id === moment.entry);
	return moment === void 0 || fact === void 0 || moment.at < since ? void 0 : {
		fact,
		at: moment.at
	};
}
/** Time from the last of the instants to what must come after it; while that has not come, only since when. */
function timePassed(context) {
	const { check } = context;
	const readings = readAll(context, check.items);
	const lacks = missingOf(context, check.items, readings);
	const [since] = [...readings.values()].flat().sort((a, b) => b.value.value - a.value.value);
	if (since === void 0 || lacks.length > 0) return lacking(lacks, entriesOf(readings));
	const from = Math.round(since.value.value * 1e3);
	const byItem = check.until === void 0 ? void 0 : untilItem(context, check.until);
	const byMoment = check.before === "covering" ? untilCovered(context) : check.before && untilMoment(context, from);
	const until = byItem ?? byMoment;
	if (until === void 0) return {
		state: "value",
		value: certain(0),
		entries: entriesOf(readings),
		times: { since: from }
	};
	const passed = withSource(certain((until.at - from) / 1e3), "clocks", Math.max(until.fact.doubt, since.fact.doubt) / 1e3);
	const entries = entriesOf(readings);
	return {
		state: "value",
		value: passed,
		...byItem ? { entries: [...entries, until.fact] } : {
			entries,
			marks: [until.fact]
		},
		times: {
			since: from,
			until: until.at
		}
	};
}
// src/job/wire-drop.ts
/** Share of the nominal voltage that is lost along the wire as it was measured. A figure to ask the electrician about, never a verdict. */
function dropAlongTheWire(context) {
	const { check, state } = context;
	const readings = readAll(context, check.items);
	const entries = entriesOf(readings);
	const run = pointOf$1([...readings.values()].flat());
	if (run === void 0) return lacking(missingOf(context, check.items, readings), entries);
	const drop = dropAlong(sourceFor(state, void 0), run.value);
	if (drop.known) return {
		state: "value",
		value: drop.value,
		entries
	};
	const unknown = [...drop.needs, ...drop.refusal ? figureAt(drop.refusal.place) : []];
	return unknown.length > 0 ? {
		state: "lacking",
		missing: [],
		entries,
		unknown
	} : lacking(missingOf(context, check.items, /* @__PURE__ */ new Map()), entries);
}
// src/job/evaluate.ts
/** Places in order around the rim, on axes whose unit is the basin's own extent: a tilt then is the rise across the basin. */
var placesAround = {
	corners: [
		[0, 0],
		[1, 0],
		[1, 1],
		[0, 1]
	],
	"quarter points": [
		[-.5, 0],
		[0, -.5],
		[.5, 0],
		[0, .5]
	]
};
function rim(check, points) {
	const around = placesAround[check.places ?? "corners"];
	return check.items.flatMap((id, i) => {
		const [x, y] = around[i] ?? [0, 0];
		const rod = points.get(id);
		return rod === void 0 ? [] : [{
			x,
			y,
			height: heightFromRod(rod)
		}];
	});
}
function outOfLevel(context) {
	const { check } = context;
	const of = (points) => {
		const plane = planeThrough(rim(check, points));
		if (!plane.ok) return void 0;
		const rises = risesAcross(plane.value, 1, 1);
		return magnitude(check.way === "across" ? rises.y : rises.x);
	};
	return computed(context, check.items, of);
}
function offThePlane(context) {
	const of = (points) => {
		const gap = fourthPlace(rim(context.check, points));
		return gap.ok ? gap.value : void 0;
	};
	return computed(context, context.check.items, of);
}
function levelAlongLip(context) {
	const { check, tag } = context;
	const readings = readAll(context, check.items, (index) => ({
		setUp: `${check.id} ${tag ?? ""}`,
		lay: index === 0 ? "first" : "turned"
	}));
	return plain$1(context, check.items, readings, (points) => {
		const [first, turned] = check.items.map((id) => points.get(id));
		return first && turned ? magnitude(lipOutOfLevel([first, turned])) : void 0;
	});
}
function steady(context) {
	const { check } = context;
	const readings = readAll(context, check.items);
	const [first, second] = check.items.map((id) => readings.get(id)?.at(-1));
	const entries = [first, second].flatMap((r) => r ? [r.fact] : []);
	if (first === void 0 || second === void 0) return lacking(missingOf(context, check.items, readings), entries);
	const apart = Math.abs(happenedAt(second.fact) - happenedAt(first.fact));
	const least = check.apart ?? 0;
	return {
		state: "value",
		value: magnitude(subtract(second.value, first.value)),
		entries,
		...apart < least ? { unsettled: {
			key: "reason.too-soon",
			figures: {
				apartDuration: apart,
				leastDuration: least
			}
		} } : {}
	};
}
function atLeastOne(context) {
	const instances = instancesOf(context, context.check.items);
	const entered = instances.flatMap((instance) => {
		const fact = seriesOf(context.state, instance).counting.at(-1);
		return fact === void 0 ? [] : [{
			fact,
			item: instance.item
		}];
	});
	if (entered.length === 0) return lacking(instances);
	return {
		state: "answered",
		met: entered.some(({ fact, item }) => item.kind !== "answer" || item.choices?.find((c) => c.id === fact.what.choice)?.accepts),
		entries: entered.map(({ fact }) => fact)
	};
}
var functions = {
	"single value": (context) => computed(context, [...context.check.items, ...context.check.minus ?? []], meanLess(context.check)),
	"out of level": outOfLevel,
	"fourth place": offThePlane,
	"moved since": movedOverMark,
	steady,
	"level along a lip": levelAlongLip,
	"at least one of": atLeastOne,
	"time passed since": timePassed,
	"between two instants": betweenInstants,
	"loss a day": lossADay,
	"short of the socket": shortOfSocket,
	"flow as measured": flowAsMeasured,
	"room for rain": roomForRain,
	"found by ties": foundByTies,
	"stone on the lid": stoneOnTheLid,
	"voltage drop": dropAlongTheWire
};
/** What a check comes to on this job, for one tag where it repeats. */
function evaluate(state, check, tag) {
	return functions[check.function]({
		state,
		check,
		tag
	});
}
/** The limit of `steady` is the doubt of the difference itself, SI. */
var steadyLimit = (value) => expanded(value);
// src/job/check-limits.ts
/** The last value that was typed for an instance, in the fixed unit of its kind. */
function typedValue(state, instance) {
	const fact = seriesOf(state, instance).counting.at(-1);
	if (typeof fact?.what.typed !== "string" || typeof fact.what.unit !== "string") return void 0;
	const read = typedReading(instance.item, fact);
	return read.ok ? read.value.value : void 0;
}
function limitsOf(state, sheet, check, tag, holds) {
	const bounds = {};
	const unknown = /* @__PURE__ */ new Set();
	const missing = /* @__PURE__ */ new Map();
	let doubt;
	const instanceOf = (id) => {
		const item = itemNamed(sheet, id);
		return item && instanceFor(item, tag);
	};
	const instancesOf = (ids) => ids.flatMap((id) => instanceOf(id) ?? []);
	const context = {
		figures: sourceFor(state, holds),
		kind: check.kind,
		typed: (id) => {
			const instance = instanceOf(id);
			return instance && typedValue(state, instance);
		},
		coldest: (ids) => instancesOf(ids).filter(({ item }) => item.quantity === "temperature").flatMap((instance) => readingsOf(state, instance).map(({ value }) => value)).reduce((coldest, value) => coldest === void 0 || value.value < coldest.value ? value : coldest, void 0),
		reading: (ids, kind) => ids.filter((id) => itemNamed(sheet, id)?.quantity === kind),
		...sheet.cureTable && { cureTable: sheet.cureTable },
		meaning: (ids) => meaningOf(state, instancesOf(ids)),
		expected: (id) => expectedOf(state, holds, id)
	};
	for (const bound of [
		"aim",
		"lower",
		"upper"
	]) {
		const limit = check[bound];
		if (limit === void 0) continue;
		const resolved = resolveLimit(limit, context);
		if ("value" in resolved) {
			bounds[bound] = resolved.value;
			if (bound !== "aim" && resolved.doubt !== void 0) doubt = Math.max(doubt ?? 0, resolved.doubt);
			continue;
		}
		for (const figure of resolved.unknown ?? []) unknown.add(figure);
		for (const id of resolved.missing ?? []) {
			const instance = instanceOf(id);
			missing.set(id, instance ? aboutOf(instance) : { item: id });
		}
	}
	return {
		bounds,
		...doubt === void 0 ? {} : { doubt },
		unknown: [...unknown],
		missing: [...missing.values()]
	};
}
// src/job/contributors.ts
/** `reading:17/watch-start` is the watch, whichever the reading; what is of no reading keeps its name. */
var nameOf = (source) => roleOfSource(source) ?? (source.startsWith("reading:") ? source.slice(source.lastIndexOf("/") + 1).replace(/-(?:start|stop)$/, "") : source);
/** The three that bring the most doubt, readings and figures of the design alike, by name; largest first. */
function namedContributors(value, kind) {
	const squares = /* @__PURE__ */ new Map();
	for (const [source, part] of value.parts) squares.set(nameOf(source), [...squares.get(nameOf(source)) ?? [], part * part]);
	return [...squares].map(([name, list]) => ({
		name,
		u: toInteger(Math.sqrt(total(list)) * fixedPerSi(kind))
	})).sort((a, b) => b.u - a.u || (a.name < b.name ? -1 : 1)).slice(0, 3);
}
// src/job/flow-part.ts
/** What each cause would have to be is told in. */
var kinds = {
	"static head": "length",
	blockage: "length",
	air: "ratio",
	"wrong curve": "ratio",
	C: "count"
};
var PER_MILLION = 1e6;
/** A cause that would have to be so many times what is ordinary, or more, is told as that many. */
var MOST_TIMES = 1e3;
function asStored({ cause, wouldBe, off, timesOrdinary, asBoreShare, cannot }) {
	const kind = kinds[cause];
	const perSi = fixedPerSi(kind);
	return {
		cause,
		kind,
		...wouldBe === void 0 ? {} : { wouldBe: toInteger(wouldBe * perSi) },
		...off === void 0 ? {} : { off: toInteger(off * perSi) },
		...asBoreShare === void 0 || cannot !== void 0 ? {} : { boreShare: toInteger(asBoreShare * PER_MILLION) },
		times: toInteger(Math.min(MOST_TIMES, timesOrdinary) * PER_MILLION),
		...cannot === void 0 ? {} : { cannot }
	};
}
/**
* A measured flow against the expected one. `doubt` is that of their difference, and the limits lie that far to either side of what
* is expected: what differs by more is not the flow of the design, and the causes are ranked. The verdict is taken from the integers.
*/
function flowPart({ value: measured, flow, unsettled }) {
	const kind = "flow";
	const perSi = fixedPerSi(kind);
	const { line, point } = flow;
	const [found, expected] = [leaveCore(measured, perSi), leaveCore(point.flow, perSi)];
	const difference = subtract(measured, point.flow);
	const doubt = toInteger(expanded(difference) * perSi);
	const off = found.value - expected.value;
	const agrees = Math.abs(off) <= doubt;
	const ranked = agrees ? void 0 : explainFlow(line.curve, line.system, point, measured);
	const differs = ranked?.ok ? off < 0 ? "flow.less" : "flow.more" : "flow.off-card";
	const says = message(agrees ? "flow.as-expected" : differs, {
		measuredDoubtFlow: found.expanded,
		expectedFlow: expected.value,
		expectedDoubtFlow: expected.expanded,
		byFlow: Math.abs(off)
	});
	return {
		kind,
		value: found.value,
		doubt,
		aim: expected.value,
		lower: Math.max(0, expected.value - doubt),
		upper: expected.value + doubt,
		contributors: namedContributors(difference, kind),
		...ranked?.ok ? { explains: ranked.value.map(asStored) } : {},
		...unsettled ? {
			verdict: "too close to call",
			says: unsettled
		} : {
			verdict: agrees ? "within" : "outside",
			says
		}
	};
}
// src/job/longer-test.ts
var MS_PER_SECOND = 1e3;
/**
* A leak test that is too close to call says how long it would have to be in all, or that no time settles it; `upper` is the limit in
* millilitres a day. Undefined where there is nothing to say. What is doubtful only because the test was no whole number of days is
* gone when it is one: such a test is asked for in whole days.
*/
function longerTest(leak, upper) {
	if (leak === void 0 || upper === void 0) return void 0;
	const { value, parts } = leak.lossPerDay;
	const inParts = parts.has(PART_OF_DAY);
	const whole = inParts ? {
		value,
		parts: new Map([...parts].filter(([source]) => source !== PART_OF_DAY))
	} : leak.lossPerDay;
	const settling = leakSettling({
		...leak,
		lossPerDay: whole
	}, upper / fixedPerSi("volume"));
	if (!settling.ok || settling.value.answer === "settled" && !inParts) return void 0;
	if (settling.value.answer === "time will not settle it") return message("leak.no-longer");
	const seconds = settling.value.answer === "settled" ? leak.seconds : Math.ceil(settling.value.seconds);
	return message("leak.longer", { wholeDuration: (inParts ? Math.ceil(seconds / SECONDS_PER_DAY) * SECONDS_PER_DAY : seconds) * MS_PER_SECOND });
}
// src/job/check-value.ts
/** Water that a tilt costs, millilitres: plan area × half the tilt. */
function waterLost(state, holds, tilt) {
	const area = planArea(state, holds);
	return area === void 0 ? void 0 : toInteger(area * tilt / fixedPerSi("length") / 2 * fixedPerSi("volume"));
}
var rules$1 = {
	guarded: "guarded",
	"simple acceptance": "simple"
};
var saysOf = {
	within: "value.within",
	outside: "value.outside",
	"too close to call": "value.too-close"
};
/** The three that bring the most doubt: what is new at each reading by its role, and a limit that is derived. */
function contributors(value, kind, limit) {
	const read = contributingRoles(value, 3).map(({ source, u }) => ({
		name: source,
		u: toInteger(u * fixedPerSi(kind))
	}));
	return (limit === void 0 ? read : [...read, {
		name: "limit",
		u: toInteger(limit)
	}]).sort((a, b) => b.u - a.u).slice(0, 3);
}
/** Checks whose value rests on figures of the design as much as on readings: the figures are named too. */
var named = (check) => check.function === "loss a day" || check.function === "room for rain";
/**
* The verdict on a value with its doubt, taken from the integers that are stored. The doubt of a limit that is derived from the
* design is added to the value's in quadrature: the two are compared, and neither is known better than that.
*/
function valuePart(state, check, evaluation, { bounds: found, doubt: u }, holds) {
	if (evaluation.flow !== void 0) return flowPart({
		...evaluation,
		flow: evaluation.flow
	});
	const perSi = fixedPerSi(check.kind);
	const compared = u === void 0 ? evaluation.value : withSource(evaluation.value, "design:limit", u / perSi);
	const { value, expanded: doubt } = leaveCore(compared, perSi);
	const steady = check.function === "steady";
	const bounds = steady ? {
		aim: 0,
		upper: toInteger(steadyLimit(evaluation.value) * perSi)
	} : found;
	const judged = judge$1({
		value,
		expanded: steady ? 0 : doubt,
		rule: rules$1[check.rule ?? "guarded"],
		...bounds
	});
	if (!judged.ok) return {
		verdict: "not taken",
		says: message("check.limit-unknown"),
		unknown: []
	};
	const { verdict, by, needed } = judged.value;
	const costs = check.costs === "water lost to tilt" ? waterLost(state, holds, value) : void 0;
	const longer = verdict === "too close to call" ? longerTest(evaluation.leak, bounds.upper) : void 0;
	const ofRain = check.function === "room for rain" ? roomSays(verdict, value, bounds.lower, by) : void 0;
	const says = longer ?? ofRain ?? message(saysOf[verdict], {
		by,
		...needed === void 0 ? {} : { needed }
	});
	return {
		kind: check.kind,
		value,
		doubt,
		...bounds,
		contributors: named(check) ? namedContributors(compared, check.kind) : contributors(evaluation.value, check.kind, u),
		...evaluation.place === void 0 ? {} : { place: evaluation.place },
		...evaluation.soFar ? { soFar: true } : {},
		...costs === void 0 ? {} : { costs: {
			kind: "volume",
			value: costs
		} },
		...evaluation.unsettled ? {
			verdict: "too close to call",
			says: evaluation.unsettled
		} : {
			verdict,
			says
		}
	};
}
// src/job/check-finding.ts
/** Somebody decided on each item that the check waits for: the decision is the check's too, the weakest first. */
function decidedPassage(decided) {
	return decided.find((by) => by?.way === "go-ahead" && !by.confirmed) ?? decided.find((by) => by !== void 0);
}
/** The items that a check waits for have a word of their own: then the check has it too. */
function lackingPart(missing, items) {
	const applying = missing.map((about) => ({
		about,
		verdict: items(about)?.verdict ?? "not taken",
		by: items(about)?.by
	})).filter(({ verdict }) => verdict !== "does not apply");
	if (missing.length > 0 && applying.length === 0) return {
		verdict: "does not apply",
		says: message("check.does-not-apply")
	};
	const undecided = applying.filter(({ by }) => by === void 0);
	const open = undecided.length > 0 ? undecided : applying;
	const passage = undecided.length > 0 ? void 0 : decidedPassage(applying.map(({ by }) => by));
	const named = {
		missing: open.map(({ about }) => about),
		...passage ? { by: passage } : {}
	};
	return open.length > 0 && open.every(({ verdict }) => verdict === "could not be taken") ? {
		verdict: "could not be taken",
		says: message("check.could-not-be-taken"),
		...named
	} : {
		verdict: "not taken",
		says: message("check.not-taken"),
		...named
	};
}
/** What is not taken, and the figures that would do instead or are wanted besides. */
function waitingPart(missing, unknown, items, says) {
	if (missing.length === 0) return {
		verdict: "not taken",
		says: message(says ?? "check.limit-unknown"),
		unknown
	};
	const lacking = lackingPart(missing, items);
	const own = says ?? (unknown.length > 0 ? "check.not-taken-unknown" : void 0);
	const sentence = own !== void 0 && lacking.verdict === "not taken" ? { says: message(own) } : {};
	return {
		...lacking,
		...unknown.length > 0 ? { unknown } : {},
		...sentence
	};
}
function evaluatedPart({ state, sheet, check, tag, holds }, evaluation, items) {
	if (evaluation.state === "lacking") {
		const { missing, unknown = [], says } = evaluation;
		return missing.length === 0 && unknown.length === 0 ? lackingPart(missing, items) : waitingPart(missing, unknown, items, says);
	}
	if (evaluation.state === "does not count") {
		const { says, unknown = [] } = evaluation;
		return {
			verdict: "not taken",
			says,
			...unknown.length > 0 ? { unknown } : {}
		};
	}
	if (evaluation.state === "answered") return evaluation.met ? {
		verdict: "within",
		says: message("check.one-of-them")
	} : {
		verdict: "outside",
		says: message("check.none-of-them")
	};
	const limits = limitsOf(state, sheet, check, tag, holds);
	const { bounds, unknown, missing } = limits;
	if (missing.length > 0 || unknown.length > 0) return waitingPart(missing, unknown, items);
	const { times } = evaluation;
	if (times === void 0 || bounds.lower === void 0) return valuePart(state, check, evaluation, limits, holds);
	const from = times.since + bounds.lower;
	if (times.until === void 0) return {
		verdict: "within",
		from,
		says: message("time.from", { fromInstant: from })
	};
	return {
		...valuePart(state, check, evaluation, limits, holds),
		from
	};
}
var readBy$1 = (context) => instancesOf(context, [...context.check.items, ...context.check.minus ?? []]);
/** The values that counted before rework, with the verdicts that they had. */
function beforeRework({ state, sheet, check, tag, holds }) {
	const instances = readBy$1({
		state,
		check,
		tag
	});
	const reworks = state.cuts.filter(({ why, about }) => why === "reworked" && instances.some((read) => concerns(state, about, read)));
	const values = reworks.flatMap((cut) => {
		const earlier = stateBefore(state, cut.position);
		const evaluation = evaluate(earlier, check, tag);
		if (evaluation.state !== "value") return [];
		const { value, verdict } = valuePart(earlier, check, evaluation, limitsOf(earlier, sheet, check, tag, holds), holds);
		return value === void 0 ? [] : [{
			value,
			verdict
		}];
	});
	const entry = reworks.at(-1)?.entry;
	return {
		values,
		...entry === void 0 ? {} : { entry }
	};
}
/** Place in the work from which decisions about a check count: its newest reading, or what last set its readings aside. */
function newestOf({ state, check, tag }, entries) {
	const cuts = readBy$1({
		state,
		check,
		tag
	}).map((instance) => seriesOf(state, instance).cut?.position ?? -1);
	return Math.max(-1, ...entries.map(({ position }) => position), ...cuts);
}
function passage({ state, own, holds }, part, newest) {
	if (!(part.from !== void 0 || part.verdict !== "within" && part.verdict !== "does not apply")) return void 0;
	return passageOf(state, {
		names: (about) => sameAbout(about, own),
		holds,
		newest,
		value: part.value,
		doubt: part.doubt
	});
}
function ruledBy(asked, part, word, earlier, newest) {
	const by = passage(asked, part, newest) ?? part.by;
	if (by) return by;
	if (part.verdict === "does not apply" && word) return {
		way: "does not apply",
		entry: word.fact.id
	};
	return part.verdict === "within" && earlier.entry !== void 0 && earlier.values.length > 0 ? {
		way: "rework",
		entry: earlier.entry
	} : void 0;
}
/** How much water to leave inside, whether or not it was read yet what is left. */
function leavesOf({ state, sheet, check, tag, holds }) {
	const { costs, upper } = check;
	if (costs !== "water to leave inside" || typeof upper !== "object") return {};
	const occasion = occasionOf(upper, meaningOf(state, (upper.items ?? []).flatMap((id) => {
		const item = itemNamed(sheet, id);
		return item ? [instanceFor(item, tag)] : [];
	})));
	const leaves = occasion && toLeaveOn(state, holds, occasion);
	return leaves ? { leaves } : {};
}
/** Ids in the order of the work, each once. */
var idsOf = (facts) => facts.length < 2 ? facts.map(({ id }) => id) : [...new Set([...facts].sort((a, b) => a.position - b.position).map(({ id }) => id))];
/** The finding of one check, for one tag where it repeats. */
function checkFinding(state, sheet, instance, items) {
	const { check, tag } = instance;
	const own = tag === void 0 ? { check: check.id } : {
		check: check.id,
		tag
	};
	const holds = holdsOf(state, sheet, check, tag);
	const asked = {
		...instance,
		state,
		sheet,
		own,
		holds
	};
	const evaluation = evaluate(state, check, tag);
	const newest = newestOf(asked, evaluation.entries);
	const word = lastWord(state, (about) => sameAbout(about, own), false, newest);
	const part = word ? wordPart(word) : evaluatedPart(asked, evaluation, items);
	const earlier = beforeRework(asked);
	const by = ruledBy(asked, part, word, earlier, Math.max(newest, word?.fact.position ?? -1));
	const { marks = [], aside = [] } = evaluation.state === "value" ? evaluation : {};
	return {
		step: check.step,
		check: check.id,
		of: "check",
		...tag === void 0 ? {} : { tag },
		weight: check.weight,
		...holds === void 0 ? {} : { holds },
		...part,
		...leavesOf(asked),
		...check.asks === void 0 ? {} : { asks: check.asks },
		entries: idsOf([
			...evaluation.entries,
			...marks,
			...word ? [word.fact] : []
		]),
		...aside.length > 0 ? { aside: idsOf(aside) } : {},
		...earlier.values.length > 0 ? { beforeRework: earlier.values } : {},
		...by ? { by } : {}
	};
}
var holdsOf = (state, sheet, check, tag) => check.weight === "holds" ? coveringHeld(state, check, tagSetOf(sheet.items, check), tag) : void 0;
// src/job/groups.ts
/** Entered, or ruled on by name: a go-ahead for all that was open says nothing of which way was gone. */
var isThere = ({ verdict, by }) => by?.way === "concession" || verdict !== "not taken" && verdict !== "could not be taken";
/** The first whole group; while none is whole, the one that is furthest on, so that lines ask for the rest of what was begun. */
function chosenGroup(one, items) {
	const shares = one.groups.map((group) => {
		const own = items.filter(({ instance }) => group.items.includes(instance.item.id));
		return own.filter(({ finding }) => isThere(finding)).length / Math.max(1, own.length);
	});
	return shares.indexOf(Math.max(...shares));
}
var chosenGroups = (sheet, items) => new Map(sheet.oneOf.map((one) => [one.id, chosenGroup(one, items)]));
/** Whether something that reads these items belongs to a group that was not chosen, and so asks for nothing. */
function isIdle(sheet, ids, chosen) {
	return ids.some((id) => {
		const one = oneOfHolding(sheet, id);
		const group = one?.groups[chosen.get(one.id) ?? 0];
		return group !== void 0 && !group.items.includes(id);
	});
}
/** What nobody entered of such a group holds nothing: it is left out, or printed as somebody's word. Evidence stays. */
function idleFinding(finding) {
	if (isThere(finding)) return [finding];
	if (finding.verdict === "not taken") return [];
	const { holds: _, by: __, ...rest } = finding;
	return [{
		...rest,
		weight: "if you have it"
	}];
}
// src/job/findings.ts
var keyOf = (about) => `${about.item ?? about.check ?? ""} ${about.tag ?? ""}`;
/** A tag set with fewer tags than its least is never an empty yes: it holds every covering that could hide one of them. */
function shortTagSets(state, sheet) {
	return sheet.tagSets.flatMap((set) => {
		const named = state.tags.filter((t) => t.set === set.id).length;
		if (named >= set.least) return [];
		const step = sheet.items.find((item) => item.tags === set.id)?.step ?? sheet.steps[0]?.id ?? "";
		return set.coverings.map((covering) => ({
			step,
			check: set.id,
			of: "tag set",
			verdict: "not taken",
			weight: "holds",
			holds: covering,
			entries: [],
			says: message("tags.too-few", {
				named,
				least: set.least
			})
		}));
	});
}
/** Every item that a check reads a value or a picture of. */
var readBy = (check) => [...check.items, ...check.minus ?? []];
/** The checks that read an item. */
function byReading(checks) {
	const reading = /* @__PURE__ */ new Map();
	for (const checked of checks) for (const id of readBy(checked.check)) reading.set(id, [...reading.get(id) ?? [], checked]);
	return reading;
}
/** Whether the finding of a check that reads it speaks for this reading: it is missed or holds wherever the reading would be. */
function isSpokenFor({ item, tag }, finding, checks = []) {
	if (item.kind !== "reading") return false;
	return checks.some((checked) => {
		if (checked.check.function === "between two instants") return false;
		if (checked.tag !== void 0 && item.tags !== void 0 && checked.tag !== tag) return false;
		const { weight, holds, missing = [] } = checked.finding;
		if (checked.check.function === "found by ties" && finding.weight === "asked" && finding.verdict === "not taken") return missing.some((about) => about.item === item.id);
		if (finding.weight === "holds") return weight === "holds" && holds === finding.holds;
		return finding.weight !== "asked" || weight === "holds" || weight === "asked";
	});
}
function eachOnce(judge) {
	const known = /* @__PURE__ */ new Map();
	return (asked) => {
		if (!known.has(asked)) known.set(asked, judge(asked));
		return known.get(asked);
	};
}
var judging = oncePer((state, sheet) => {
	const items = askedItems(state, sheet);
	const named = new Map(items.map((instance) => [keyOf(aboutOf(instance)), instance]));
	const ofItem = eachOnce((instance) => itemFinding(state, instance));
	const inGroups = items.filter(({ item }) => oneOfHolding(sheet, item.id) !== void 0);
	const chosen = eachOnce((_) => chosenGroups(sheet, inGroups.map((instance) => ({
		instance,
		finding: ofItem(instance)
	}))));
	const idle = (ids) => isIdle(sheet, ids, chosen("all"));
	const ofCheck = eachOnce((instance) => {
		const finding = checkFinding(state, sheet, instance, (about) => {
			const item = named.get(keyOf(about));
			return item && ofItem(item);
		});
		const isEvidence = finding.value !== void 0 || finding.verdict === "within" || finding.verdict === "outside";
		return idle(readBy(instance.check)) && !isEvidence ? void 0 : {
			...instance,
			finding
		};
	});
	return {
		items,
		checks: askedChecks(state, sheet),
		ofItem,
		ofCheck,
		isIdle: idle
	};
});
/** The findings of what is asked, in the order of the sheet's steps. `checks` hold every one that reads an item of `items`. */
function findingsOf(state, sheet, asked) {
	const { ofItem, ofCheck, isIdle: idle } = judging(state, sheet);
	const checks = asked.checks.flatMap((instance) => ofCheck(instance) ?? []);
	const reading = byReading(checks);
	const ofItems = asked.items.filter((instance) => !isSpokenFor(instance, ofItem(instance), reading.get(instance.item.id))).flatMap((instance) => idle([instance.item.id]) ? idleFinding(ofItem(instance)) : [ofItem(instance)]);
	const stepOrder = new Map(sheet.steps.map((step, i) => [step.id, i]));
	const place = (finding) => stepOrder.get(finding.step) ?? sheet.steps.length;
	return withoutWhatCameBefore(state, sheet, [
		...asked.tagSets,
		...ofItems,
		...checks.map((c) => c.finding)
	].sort((a, b) => place(a) - place(b)));
}
/**
* The findings of a job: one for each check and for each item that no check speaks for, in the order of the sheet's steps.
* A function of the state alone: never of the present.
*/
function findings(state) {
	const { sheet } = state;
	if (sheet === void 0) return [];
	const { items, checks } = judging(state, sheet);
	return findingsOf(state, sheet, {
		items,
		checks,
		tagSets: shortTagSets(state, sheet)
	});
}
// src/job/clearance.ts
/** What is known of a covering that happened: what the phone showed then, and whether it still holds. */
function coveredState(state, covering, clearNow) {
	const covered = coveredOf(state, covering);
	if (covered === void 0) return void 0;
	const { fact, at, noLaterThan, beforeRecord } = covered;
	if (noLaterThan) return {
		entry: fact.id,
		at,
		noLaterThan,
		laterDoubted: false,
		...beforeRecord && { beforeRecord }
	};
	const { shown, lines } = whatOf(fact, "covered");
	return {
		entry: fact.id,
		at,
		noLaterThan,
		shown,
		shownLines: lines,
		laterDoubted: shown !== "not yet" && !clearNow
	};
}
function announcedOf(state, covering) {
	const since = lastOpened(state, covering);
	const last = factsOf(state, "covering-announced").filter((f) => f.what.covering === covering && f.position > since).at(-1);
	return last && {
		entry: last.id,
		about: last.what.about
	};
}
/** Whether a covering is clear, as of `now` (ms). Only this and the screens' lists know the present. */
function clearance(state, all, covering, now) {
	const { sheet } = state;
	const held = all.filter((finding) => finding.holds === covering);
	const holding = held.filter((finding) => standingOf(finding, now) === "holds");
	const onWord = held.filter((finding) => standingOf(finding, now) === "on word").flatMap((finding) => finding.by?.entry ?? []);
	const clear = holding.length === 0 && sheet?.coverings.some((c) => c.id === covering) === true;
	const covered = coveredState(state, covering, clear);
	const announced = covered ? void 0 : announcedOf(state, covering);
	return {
		covering,
		state: !clear ? "not yet" : onWord.length > 0 ? "on word" : "clear",
		...onWord.length > 0 ? { onWord: [...new Set(onWord)] } : {},
		lines: sheet === void 0 ? [] : linesOf(sheet, holding, now),
		...announced ? { announced } : {},
		...covered ? { covered } : {}
	};
}
/** The clearance of every covering of the sheet, in its order. */
function clearances(state, all, now) {
	return (state.sheet?.coverings ?? []).map(({ id }) => clearance(state, all, id, now));
}
// src/job/from-ledger.ts
function contentOf(part) {
	return part === void 0 || isWithheld(part) ? void 0 : part.content;
}
/** An entry of the ledger as the core reads it; `digest` is its entry digest, where the caller has it. */
function entryOf({ envelope, body }, digest = "") {
	const what = contentOf(body.what);
	const who = contentOf(body.who);
	const where = contentOf(body.where);
	return {
		id: envelope.id,
		digest,
		kind: envelope.kind,
		author: envelope.author,
		run: envelope.run,
		made: envelope.made,
		sent: envelope.sent,
		received: envelope.received,
		number: envelope.number,
		...what === void 0 ? {} : { what },
		...who === void 0 ? {} : { who },
		...where === void 0 ? {} : { where }
	};
}
/** What findings are computed from, out of a whole ledger or an edition of one. */
function jobLedgerOf(ledger) {
	return {
		entries: ledger.entries.map((entry) => entryOf(entry)),
		versions: Object.fromEntries(ledger.versions.map(({ digest, content }) => [digest, content]))
	};
}
// src/proof/judging.ts
var rules = 1;
/** Judges by the rules of this program. A ledger whose shape was not verified may make it throw. */
var judge = (ledger, at) => {
	const state = jobState(jobLedgerOf(ledger));
	const found = findings(state);
	return {
		findings: found,
		clearances: clearances(state, found, at)
	};
};
export { judge, rules };
