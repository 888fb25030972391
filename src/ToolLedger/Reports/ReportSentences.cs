using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The headings and sentences of a report that are not reasons of another room, so that a <see cref="Wording"/> can translate them.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class ReportSentences
{
    /// <summary>The title.</summary>
    public static ReasonKind Title { get; } = new("report.title", "Shift report, made {at} (calendar of {site})");

    /// <summary>Under the title, where no policy of a site was handed in.</summary>
    public static ReasonKind DefaultPolicy { get; } = new("report.default-policy", "No site policy was handed in: the default policy applies, and times and days are those of the calendar {site}.");

    /// <summary>Over the summary of several kits.</summary>
    public static ReasonKind Summary { get; } = new("report.summary", "Summary of {count} kits, the ones to act on first");

    /// <summary>A kit in the summary.</summary>
    public static ReasonKind SummaryKit { get; } = new("report.summary-kit", "kit {kit}: {settled} of {total} {total:line|lines} accounted for{opened}{gate}{open}");

    /// <summary>The kit.</summary>
    public static ReasonKind Kit { get; } = new("report.kit", "Kit {kit}, revision {revision}: {title}. As of {at}");

    /// <summary>The conclusion of a kit.</summary>
    public static ReasonKind Conclusion { get; } = new("report.conclusion", "{state}. Of {total} {total:line|lines}: {counts}.");

    /// <summary>Under the conclusion of a complete kit.</summary>
    public static ReasonKind CompleteMeans { get; } = new("report.complete-means", "Every line has a recorded basis under the policy named below, at the time stated.");

    /// <summary>Under the conclusion of a kit that is not complete.</summary>
    public static ReasonKind NotCompleteMeans { get; } = new("report.not-complete-means", "Until people settle this, operate, close up or release nothing on the strength of this page.");

    /// <summary>Beside the conclusion, where a tool is not in date.</summary>
    public static ReasonKind NotInDate { get; } = new("report.not-in-date", "Calibration is a second answer: {lines}.");

    /// <summary>The evidence of a line that was read well.</summary>
    public static ReasonKind ReadEvidence { get; } = new("report.read-evidence", "{looks} {looks:look|looks}, {antennas} {antennas:antenna|antennas}{passes}, last {last}{sessions}");

    /// <summary>The same where the policy's own sentence has told looks and passes.</summary>
    public static ReasonKind ReadEvidenceRest { get; } = new("report.read-evidence-rest", "{antennas} {antennas:antenna|antennas}, last {last}{sessions}");

    /// <summary>More passes than one.</summary>
    public static ReasonKind ReadPasses { get; } = new("report.read-passes", ", {passes} passes");

    /// <summary>The sessions of a line, where lines differ in them.</summary>
    public static ReasonKind ReadIn { get; } = new("report.read-in", ", in {sessions}");

    /// <summary>The sessions of every line that was read.</summary>
    public static ReasonKind AllReadIn { get; } = new("report.all-read-in", "Read in {sessions}.");

    /// <summary>A session and where it was.</summary>
    public static ReasonKind SessionAt { get; } = new("report.session-at", "{session} at {station}");

    /// <summary>What a job took.</summary>
    public static ReasonKind JobRecord { get; } = new("report.job-record", "job {job}: {used} used and {scrapped} scrapped of line {line} of kit {kit}, recorded by {by} at {at}");

    /// <summary>A set: its container and what is in it.</summary>
    public static ReasonKind SetIn { get; } = new("report.set-in", "{container}, with {contents}");

    /// <summary>A sub-kit in its case.</summary>
    public static ReasonKind SubKitIn { get; } = new("report.sub-kit-in", "{case}, with {kit}");

    /// <summary>The totals of the places in a kit.</summary>
    public static ReasonKind TotalsPlaces { get; } = new("report.totals-places", "By place: {places}.");

    /// <summary>One place in a kit.</summary>
    public static ReasonKind TotalsPlace { get; } = new("report.totals-place", "{place} {items}");

    /// <summary>Lines that state no place.</summary>
    public static ReasonKind TotalsNoPlace { get; } = new("report.totals-no-place", "no place stated");

    /// <summary>Sub-kits of which nothing is known.</summary>
    public static ReasonKind TotalsUnresolved { get; } = new("report.totals-unresolved", "Not added up, because nothing says what it holds: {what}.");

    /// <summary>First question.</summary>
    public static ReasonKind IsReadGood { get; } = new("report.is-read-good", "Is the read any good?");

    /// <summary>No session.</summary>
    public static ReasonKind NoSession { get; } = new("report.no-session", "No read session of these kits was handed in: nothing was measured for them.");

    /// <summary>Sessions, but none of these kits.</summary>
    public static ReasonKind NoSessionOfKits { get; } = new("report.no-session-of-kits", "No session handed in presents these kits: nothing was measured for them. Is a kit on a sheet wrong?");

    /// <summary>Behind a session that presents none of the kits.</summary>
    public static ReasonKind SessionOfOthers { get; } = new("report.session-of-others", "It presents {count:kit|kits} {kits}, none of this report");

    /// <summary>Behind a session whose reads all lie outside its time.</summary>
    public static ReasonKind AllOutside { get; } = new("report.all-outside", "All reads, {count}, lie outside this session: a clock or the sheet may be wrong");

    /// <summary>Behind a session whose reads are all on antennas that its station does not list.</summary>
    public static ReasonKind AllUnlisted { get; } = new("report.all-unlisted", "No read, of {count}, is on an antenna that the station lists");

    /// <summary>Behind a session with nothing but both.</summary>
    public static ReasonKind AllOutsideOrUnlisted { get; } = new("report.all-outside-or-unlisted", "All reads, {count}, lie outside this session or are on antennas that the station does not list");

    /// <summary>A session.</summary>
    public static ReasonKind Session { get; } = new("report.session", "session {session}, station {station}, {from} to {to}; {passes} {passes:pass|passes}, antennas alive {antennas}, {reads} {reads:read|reads}");

    /// <summary>A session that a kit did not use.</summary>
    public static ReasonKind SessionLeftOut { get; } = new("report.session-left-out", "not used for kit {kit}: {why}");

    /// <summary>Rows of a source that were refused.</summary>
    public static ReasonKind RowsRefused { get; } = new("report.rows-refused", "{count} {count:row|rows} of {source} could not be used; {first}");

    /// <summary>A kit without any read.</summary>
    public static ReasonKind NoReadUsed { get; } = new("report.no-read-used", "No read was used: what is settled rests on people alone.");

    /// <summary>Second question.</summary>
    public static ReasonKind Settled { get; } = new("report.settled", "Settled: {count} of {total} {total:line|lines}, by what and by whom");

    /// <summary>A line that is not expected.</summary>
    public static ReasonKind NotExpected { get; } = new("report.not-expected", "Not expected, so in none of these counts: line {line} {what}: {why}.");

    /// <summary>Beside the conclusion, where a person reported an item that is on no list.</summary>
    public static ReasonKind UnlistedItems { get; } = new("report.unlisted-items", "Items on no list, reported gone: {count}, told under what was noticed. The conclusion above says nothing of them; the local procedure for such items applies.");

    /// <summary>Third question, where nothing is open.</summary>
    public static ReasonKind NothingOpen { get; } = new("report.nothing-open", "Open: none of {total} {total:line|lines}");

    /// <summary>A complete kit that nobody signed for.</summary>
    public static ReasonKind NotSigned { get; } = new("report.unsigned", "Complete, but no signature on the sheet covers it yet.");

    /// <summary>What looks, antennas and passes are.</summary>
    public static ReasonKind ReadLegend { get; } = new("report.read-legend", "Look: one moment on one antenna.");

    /// <summary>What a pass is.</summary>
    public static ReasonKind PassLegend { get; } = new("report.pass-legend", "Pass: one presentation.");

    /// <summary>What "EPC only" means.</summary>
    public static ReasonKind EpcOnly { get; } = new("report.epc-only", "EPC only: no chip number, no copy check.");

    /// <summary>What the number of lines means that a limit is shared by.</summary>
    public static ReasonKind LinesShared { get; } = new("report.lines-shared",
        "\"One of so many lines\" counts every line listed, those not expected too, and each as often as the tool in question had tags that could show it: more lines make the limit of each stricter.");

    /// <summary>A stated risk by the policy's own model alone.</summary>
    public static ReasonKind WeighedByOwn { get; } = new("report.weighed-by-own", "The reads were weighed by the policy's own model; it stands in the policy with digest {digest} (with rules).");

    /// <summary>A stated risk by models of station and mounting.</summary>
    public static ReasonKind WeighedByModels { get; } = new("report.weighed-by-models",
        "The reads were weighed by {count} {count:model|models} of station and mounting{own}; {count:it stands|they stand} in the policy with digest {digest} (with rules).");

    /// <summary>Behind these, where the policy's own model weighed reads too.</summary>
    public static ReasonKind WeighedByOwnToo { get; } = new("report.weighed-by-own-too", ", and by the policy's own where it names none");

    /// <summary>Third question.</summary>
    public static ReasonKind Open { get; } = new("report.open", "Open: {count} of {total} {total:line|lines}, in the order to chase them");

    /// <summary>An open line.</summary>
    public static ReasonKind OpenLine { get; } = new("report.open-line", "{lines}: {why}. Next: {next}.");

    /// <summary>Findings beside the conclusions.</summary>
    public static ReasonKind Noticed { get; } = new("report.noticed", "Noticed, {about}: {finding}.");

    /// <summary>Fourth question.</summary>
    public static ReasonKind Unseen { get; } = new("report.unseen", "What no reader can see, and who counted it (listed {items}; a tag on {tagged} of {total} {total:line|lines})");

    /// <summary>Nothing a reader cannot see.</summary>
    public static ReasonKind NothingUnseen { get; } = new("report.nothing-unseen", "Every line is a single tagged tool.");

    /// <summary>A line no reader can see.</summary>
    public static ReasonKind UnseenAll { get; } = new("report.unseen-all", "{what}");

    /// <summary>The inside of a set.</summary>
    public static ReasonKind UnseenContents { get; } = new("report.unseen-contents", "{contents}, in {container}");

    /// <summary>The pieces of a tool.</summary>
    public static ReasonKind UnseenPieces { get; } = new("report.unseen-pieces", "{what}, {total} pieces");

    /// <summary>A tool without a live tag.</summary>
    public static ReasonKind UnseenNoTag { get; } = new("report.unseen-no-tag", "{what}, no live tag");

    /// <summary>Who counted.</summary>
    public static ReasonKind By { get; } = new("report.by", "by {by}");

    /// <summary>Who counted, with a witness.</summary>
    public static ReasonKind ByWithWitness { get; } = new("report.by-with-witness", "by {by}, witness {witness}");

    /// <summary>Seventh question.</summary>
    public static ReasonKind Calibration { get; } = new("report.calibration", "Calibration on {day}: a second answer, it changes none of the above");

    /// <summary>No line needs calibration.</summary>
    public static ReasonKind NothingToCalibrate { get; } = new("report.nothing-to-calibrate", "No tool of this kit needs calibration, by manifest and register.");

    /// <summary>What is not known of the past, where neither a ledger nor custody entries were given.</summary>
    public static ReasonKind CalibrationWhenUsed { get; } = new("report.calibration-when-used", "No ledger was given, so no use of these tools is known here; the job records must tell.");

    /// <summary>The gate before operation, under the conclusion.</summary>
    public static ReasonKind Gate { get; } = new("report.gate", "Before operation: {answer} at {at}: {why}.{next}");

    /// <summary>Behind a gate that is satisfied, where two persons have signed.</summary>
    public static ReasonKind GateSignedByTwo { get; } = new("report.gate-signed-by-two", "The gate asks for no signature; {count} different persons have signed.");

    /// <summary>Behind a gate that is satisfied, where no two persons have signed.</summary>
    public static ReasonKind GateNotSignedByTwo { get; } = new("report.gate-not-signed-by-two", "The gate asks for no signature; two people have not signed, {count} {count:has|have}.");

    /// <summary>The same in the summary.</summary>
    public static ReasonKind GateInSummary { get; } = new("report.gate-in-summary", "; before operation {answer}");

    /// <summary>In the summary, where a kit was opened after its evidence.</summary>
    public static ReasonKind OpenedInSummary { get; } = new("report.opened-in-summary", "; opened again after that");

    /// <summary>Fifth question.</summary>
    public static ReasonKind Exposure { get; } = new("report.exposure", "Which equipment is exposed, and since when?");

    /// <summary>What nothing records.</summary>
    public static ReasonKind ExposureNotRecorded { get; } = new("report.exposure-not-recorded", "Custody is not recorded here: the job records say what the kit was near since these times.");

    /// <summary>An opening of a kit.</summary>
    public static ReasonKind Opened { get; } = new("report.opened", "kit {kit} at {at} by {by}{where}");

    /// <summary>Where it was opened.</summary>
    public static ReasonKind OpenedWhere { get; } = new("report.opened-where", ", {where}");

    /// <summary>Open lines without any earlier accounting.</summary>
    public static ReasonKind ExposedBefore { get; } = new("report.exposed-before", "{lines}: not accounted for in anything handed in{hint}.");

    /// <summary>A hint beside it.</summary>
    public static ReasonKind TagLastHeard { get; } = new("report.tag-last-heard", "; tag last heard at {at}, which settles nothing");

    /// <summary>A hint beside it.</summary>
    public static ReasonKind LastCounted { get; } = new("report.last-counted", "; the count or sighting of {at} by {by} does not settle it");

    /// <summary>The settled lines.</summary>
    public static ReasonKind SettledSince { get; } = new("report.settled-since", "every settled line was accounted for at {at} or later");

    /// <summary>An item on no list.</summary>
    public static ReasonKind Unlisted { get; } = new("report.unlisted", "\"{what}\", reported by {by} at {at}; last seen {seen}; touched since: {touched}");

    /// <summary>Eighth question.</summary>
    public static ReasonKind Changed { get; } = new("report.changed", "What changed after sign-off?");

    /// <summary>Nobody signed.</summary>
    public static ReasonKind NothingSigned { get; } = new("report.nothing-signed", "No signature counts for this kit, so nothing is signed off yet.");

    /// <summary>What is later than the first signature.</summary>
    public static ReasonKind ChangedSince { get; } = new("report.changed-since", "Later than the first signature, {at}, so not covered by it:");

    /// <summary>Nothing is later.</summary>
    public static ReasonKind NothingChanged { get; } = new("report.nothing-changed", "Nothing handed in is later than the first signature, {at}; earlier sign-offs: not known.");

    /// <summary>An opening after the signature.</summary>
    public static ReasonKind ChangedOpening { get; } = new("report.changed-opening", "opened: {what}");

    /// <summary>An item on no list, reported after the signature.</summary>
    public static ReasonKind ChangedUnlisted { get; } = new("report.changed-unlisted", "reported gone: {what}");

    /// <summary>All lines of a kit.</summary>
    public static ReasonKind AllLines { get; } = new("report.all-lines", "all lines");

    /// <summary>A session after the signature.</summary>
    public static ReasonKind ChangedSession { get; } = new("report.changed-session", "session {session} ended at {at}");

    /// <summary>An annotation after the signature.</summary>
    public static ReasonKind ChangedAnnotation { get; } = new("report.changed-annotation", "line {line} removed on record at {at} by {by}");

    /// <summary>After the questions.</summary>
    public static ReasonKind AlsoRead { get; } = new("report.also-read", "What was read that is not of the kit");

    /// <summary>Over what belongs to all kits of the report.</summary>
    public static ReasonKind AllKits { get; } = new("report.all-kits", "All kits together");

    /// <summary>Nothing else was read.</summary>
    public static ReasonKind NothingElseRead { get; } = new("report.nothing-else-read", "Only tags of the kit and control tags of the station.");

    /// <summary>Nothing was read at all.</summary>
    public static ReasonKind NothingRead { get; } = new("report.nothing-read", "Nothing was read at all, not even a control tag.");

    /// <summary>A group of reads.</summary>
    public static ReasonKind ReadsOf { get; } = new("report.reads-of", "session {session}: {tags} {tags:tag|tags}, {reads} {reads:read|reads}; {detail}");

    /// <summary>Sixth question.</summary>
    public static ReasonKind Who { get; } = new("report.who", "Who may sign, and have two people signed?");

    /// <summary>What the policy says of signing.</summary>
    public static ReasonKind MaySign { get; } = new("report.may-sign", "May sign: {roles}{own}. Persons needed where lines rest on people alone: {needed}.");

    /// <summary>Any role may sign.</summary>
    public static ReasonKind AnyRole { get; } = new("report.any-role", "any role");

    /// <summary>A person may not sign for what he or she counted.</summary>
    public static ReasonKind NotForOwn { get; } = new("report.not-for-own", ", but nobody for what he or she counted, sighted or witnessed");

    /// <summary>How many different persons signed.</summary>
    public static ReasonKind TwoSigned { get; } = new("report.two-signed", "Yes: {count} different persons have signed.");

    /// <summary>Fewer than two different persons signed.</summary>
    public static ReasonKind NotTwoSigned { get; } = new("report.not-two-signed", "No: {count} {count:person has|different persons have} signed.");

    /// <summary>Behind the signatures of a kit with open lines.</summary>
    public static ReasonKind SignedWithOpen { get; } = new("report.signed-with-open", "Signatures settle no open line: {count} {count:is|are} open.");

    /// <summary>Behind the signatures of a kit that was opened no earlier than one of them.</summary>
    public static ReasonKind SignedBeforeOpening { get; } = new("report.signed-before-opening",
        "{count} of these signatures {count:was|were} made no later than the opening of kit {kit} at {at} and {count:does|do} not speak for what happened since.");

    /// <summary>The persons.</summary>
    public static ReasonKind Persons { get; } = new("report.persons", "Took part: {persons}. Signed the sheet: {signatures}.");

    /// <summary>Signatures that do not count.</summary>
    public static ReasonKind SignedInVain { get; } = new("report.signed-in-vain", "Signed, and does not count: {signatures}.");

    /// <summary>One of them.</summary>
    public static ReasonKind SignatureInVain { get; } = new("report.signature-in-vain", "{by} {at} ({why})");

    /// <summary>Nobody.</summary>
    public static ReasonKind Nobody { get; } = new("report.nobody", "nobody");

    /// <summary>Room for a signature.</summary>
    public static ReasonKind SignHere { get; } = new("report.sign-here", "Name or number {room} Role {room} Time {room} Signature {room}");

    /// <summary>Cautions.</summary>
    public static ReasonKind Cautions { get; } = new("report.cautions", "Cautions");

    /// <summary>What the report rests on.</summary>
    public static ReasonKind RestsOn { get; } = new("report.rests-on", "Annex: what this rests on (digests cut to 12 digits here, in full in the JSON form)");

    /// <summary>Policy and version.</summary>
    public static ReasonKind Policy { get; } = new("report.policy", "Policy {name}; digest with rules {digest}; library version {version}.");

    /// <summary>Behind the policy: the site's own rules in it.</summary>
    public static ReasonKind PolicyRules { get; } = new("report.policy-rules", "Rules of the site in it, name and version: {rules}.");

    /// <summary>Behind a policy with rules that the report was not told.</summary>
    public static ReasonKind PolicyRulesNotNamed { get; } = new("report.policy-rules-not-named", "It has rules of the site that this report was not told by name.");

    /// <summary>The inputs.</summary>
    public static ReasonKind Inputs { get; } = new("report.inputs", "Inputs: {inputs}.");

    /// <summary>The sources.</summary>
    public static ReasonKind Sources { get; } = new("report.sources", "Files: {sources}.");

    /// <summary>More than are listed.</summary>
    public static ReasonKind AndMore { get; } = new("report.and-more", "and {count} more");

    /// <summary>All sentences of this room, in the order above.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        Title, DefaultPolicy, Summary, SummaryKit, Kit, Conclusion, CompleteMeans, NotCompleteMeans, NotInDate, ReadEvidence, ReadEvidenceRest, ReadPasses, ReadIn, AllReadIn, SessionAt, JobRecord, SetIn, IsReadGood, NoSession, NoSessionOfKits, SessionOfOthers, AllOutside, AllUnlisted, AllOutsideOrUnlisted, Session, SessionLeftOut, RowsRefused, NoReadUsed,
        Settled, NotExpected, UnlistedItems, EpcOnly, NothingOpen, NotSigned, ReadLegend, PassLegend, LinesShared, WeighedByOwn, WeighedByModels, WeighedByOwnToo, Open, OpenLine, Noticed, Unseen, NothingUnseen, UnseenAll, UnseenContents, UnseenPieces, UnseenNoTag, By, ByWithWitness,
        Calibration, NothingToCalibrate, CalibrationWhenUsed, AlsoRead, AllKits, NothingElseRead, NothingRead, ReadsOf, Who, MaySign, AnyRole, NotForOwn, TwoSigned, NotTwoSigned, SignedWithOpen, SignedBeforeOpening, Persons, SignedInVain, SignatureInVain, Nobody, SignHere, Cautions, RestsOn, Policy, PolicyRules, PolicyRulesNotNamed, Inputs, Sources,
        AndMore, SubKitIn, TotalsPlaces, TotalsPlace, TotalsNoPlace, TotalsUnresolved,
        Gate, GateSignedByTwo, GateNotSignedByTwo, GateInSummary, Exposure, ExposureNotRecorded, Opened, OpenedWhere, ExposedBefore, TagLastHeard, LastCounted, SettledSince, Unlisted, Changed, NothingSigned, ChangedSince, NothingChanged,
        ChangedSession, ChangedAnnotation, ChangedOpening, ChangedUnlisted, AllLines, OpenedInSummary,
    ];
}
