using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The sentences that only the HTML form of a report has: reads drawn over time, the figures of a stated risk, and what helps to find one's way.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class PageSentences
{
    /// <summary>The link past the head.</summary>
    public static ReasonKind Skip { get; } = new("page.skip", "Skip to the conclusions");

    /// <summary>Over the conclusions of all kits.</summary>
    public static ReasonKind Conclusions { get; } = new("page.conclusions", "Conclusions, the ones to act on first");

    /// <summary>Over the contents.</summary>
    public static ReasonKind Contents { get; } = new("page.contents", "Contents");

    /// <summary>Before the first open line of a kit.</summary>
    public static ReasonKind First { get; } = new("page.first", "First");

    /// <summary>Before the other open lines of a kit.</summary>
    public static ReasonKind Then { get; } = new("page.then", "Then, in this order");

    /// <summary>Before what settles an open line.</summary>
    public static ReasonKind Next { get; } = new("page.next", "Next: {next}.");

    /// <summary>The switch that shows the reads of a line.</summary>
    public static ReasonKind Reads { get; } = new("page.reads", "Reads of line {line}: {looks} {looks:look|looks}, in {heard} of {passes} {passes:pass|passes}");

    /// <summary>The same with a stated risk.</summary>
    public static ReasonKind ReadsAndRisk { get; } = new("page.reads-and-risk", "{reads}; its risk and the terms");

    /// <summary>The caption of a timeline.</summary>
    public static ReasonKind Timeline { get; } = new("page.timeline", "Looks at tag {tag}{of}; one mark is one look, a short one is not counted");

    /// <summary>Where a tool has several live tags.</summary>
    public static ReasonKind BestOf { get; } = new("page.best-of", ", the best read of {tags} live tags");

    /// <summary>The pass of a timeline.</summary>
    public static ReasonKind Pass { get; } = new("page.pass", "Session {session} ({health}), pass {pass}, {from} to {to}: {looks} of {limit} possible looks");

    /// <summary>A row of a timeline.</summary>
    public static ReasonKind Antenna { get; } = new("page.antenna", "antenna {antenna}");

    /// <summary>The row of all antennas.</summary>
    public static ReasonKind AllAntennas { get; } = new("page.all-antennas", "all antennas");

    /// <summary>The row of looks whose antenna was not reported.</summary>
    public static ReasonKind AntennaNotNamed { get; } = new("page.antenna-not-named", "antenna not named");

    /// <summary>The looks of a row in words.</summary>
    public static ReasonKind RowLooks { get; } = new("page.row-looks", "{looks} {looks:look|looks}, first {first}, last {last}");

    /// <summary>A row without a look.</summary>
    public static ReasonKind RowSilent { get; } = new("page.row-silent", "no look");

    /// <summary>A pass without a look.</summary>
    public static ReasonKind PassSilent { get; } = new("page.pass-silent", "silent in this pass");

    /// <summary>A silent antenna that may have been broken.</summary>
    public static ReasonKind NotShownAtWork { get; } = new("page.not-shown-at-work", "no look, but nothing shows that this antenna worked");

    /// <summary>Behind looks that are not counted.</summary>
    public static ReasonKind NotCounted { get; } = new("page.not-counted", "not counted: another kit stood near");

    /// <summary>Behind looks of which only the first were kept.</summary>
    public static ReasonKind Saturated { get; } = new("page.saturated", "only the first {limit} are kept, so there may have been more");

    /// <summary>Behind looks of which only the first are drawn.</summary>
    public static ReasonKind Cut { get; } = new("page.cut", "the first {count} are drawn");

    /// <summary>Passes that are not drawn.</summary>
    public static ReasonKind PassesNotDrawn { get; } = new("page.passes-not-drawn", "Not drawn: {count} earlier {count:pass|passes}, {looks} {looks:look|looks} in {heard} of them.");

    /// <summary>A timeline that is not drawn.</summary>
    public static ReasonKind NotDrawn { get; } = new("page.not-drawn", "Not drawn: a page draws about {limit} looks at most, those of open lines first.");

    /// <summary>A region that scrolls sideways.</summary>
    public static ReasonKind Scrolls { get; } = new("page.scrolls", "Timeline of line {line}, scrolls sideways");

    /// <summary>The caption of the figures of a line.</summary>
    public static ReasonKind Risk { get; } = new("page.risk", "Chance that line {line} is not there, by its reads alone");

    /// <summary>Before the figures of a line whose looks are not counted.</summary>
    public static ReasonKind SetAside { get; } = new("page.set-aside",
        "{looks} {looks:look|looks} at its tag {looks:is|are} set aside, since another kit stood near, and {looks:counts|count} as silence here.");

    /// <summary>The risk that decides.</summary>
    public static ReasonKind RiskBounded { get; } = new("page.risk-bounded", "Bounded, which decides");

    /// <summary>The corner of the box.</summary>
    public static ReasonKind RiskCorner { get; } = new("page.risk-corner", "{chance} ({percent} %), at the cautious corner of the box: {obscured} % of passes covered, {stray} % of tools elsewhere within reach");

    /// <summary>The exact risk.</summary>
    public static ReasonKind RiskExact { get; } = new("page.risk-exact", "Exact, without bound and box");

    /// <summary>A chance.</summary>
    public static ReasonKind RiskChance { get; } = new("page.risk-chance", "{chance} ({percent} %)");

    /// <summary>The cut.</summary>
    public static ReasonKind RiskCut { get; } = new("page.risk-cut", "Accepted at most");

    /// <summary>The cut in figures.</summary>
    public static ReasonKind RiskCutOf { get; } = new("page.risk-cut-of", "{percent} %, for one of {lines} {lines:line|lines} listed");

    /// <summary>No cut.</summary>
    public static ReasonKind RiskNoCut { get; } = new("page.risk-no-cut", "nothing: no reads in so few looks would prove enough for one of {lines} {lines:line|lines} listed");

    /// <summary>The caption of the terms.</summary>
    public static ReasonKind Terms { get; } = new("page.terms", "How the bounded odds come about");

    /// <summary>A column of the terms.</summary>
    public static ReasonKind Term { get; } = new("page.term", "Term");

    /// <summary>A term with the model that weighed it, where several did.</summary>
    public static ReasonKind TermByModel { get; } = new("page.term-by-model", "{term} (model {model})");

    /// <summary>A column of the terms.</summary>
    public static ReasonKind OddsSoFar { get; } = new("page.odds-so-far", "Odds so far");

    /// <summary>Before what settles a line by its risk.</summary>
    public static ReasonKind Settles { get; } = new("page.settles", "What settles it: {how}.");

    /// <summary>The section about the rule.</summary>
    public static ReasonKind Rule { get; } = new("page.rule", "By which rule, and at what stated risk?");

    /// <summary>The counting rule.</summary>
    public static ReasonKind RuleCounting { get; } = new(
        "page.rule-counting",
        "Counting: a read line needs {looks} looks, and {antennas} antennas or {passes} passes; in a degraded session {degraded} passes. This is a rule of thumb: it states no risk.");

    /// <summary>The rule of a stated risk.</summary>
    public static ReasonKind RuleRisk { get; } = new(
        "page.rule-risk",
        "Stated risk: a kit with read lines may hold one that is not there with a chance of {limit} % at most, a line with {line} %. The claim is that of the model below (where there are several, of each for its own tags) and holds while its two shares are wrong by a factor of {factor} at most.");

    /// <summary>The model.</summary>
    public static ReasonKind RuleModel { get; } = new(
        "page.rule-model",
        "Model: of the tools {absent} % are not there before a session; a tag that is there is covered in {obscured} % of passes, else read in a share of looks drawn from Beta({a}, {b}); {stray} % of the tools that are not there are within reach, read in a share drawn from Beta({strayA}, {strayB}).");

    /// <summary>Before the table of models.</summary>
    public static ReasonKind RuleModels { get; } = new(
        "page.rule-models",
        "Of the tools {absent} % are not there before a session. The policy has {count} {count:model|models} of station and mounting, of which {used} weighed reads of this kit; its own stands for all other tags.");

    /// <summary>The caption of the table of models.</summary>
    public static ReasonKind Models { get; } = new("page.models", "Models that weighed the reads of kit {kit}, the policy's own first");

    /// <summary>A column of the models.</summary>
    public static ReasonKind ModelName { get; } = new("page.model-name", "Model");

    /// <summary>A column of the models.</summary>
    public static ReasonKind ModelFor { get; } = new("page.model-for", "For tags");

    /// <summary>A column of the models.</summary>
    public static ReasonKind ModelThere { get; } = new("page.model-there", "Tags that are there");

    /// <summary>A column of the models.</summary>
    public static ReasonKind ModelStrays { get; } = new("page.model-strays", "Strays");

    /// <summary>A column of the models.</summary>
    public static ReasonKind ModelLines { get; } = new("page.model-lines", "Weighed");

    /// <summary>The name of a model, by the number that terms give.</summary>
    public static ReasonKind ModelNumber { get; } = new("page.model-number", "model {model}");

    /// <summary>The tags of the policy's own model.</summary>
    public static ReasonKind ModelForOthers { get; } = new("page.model-for-others", "the policy's own: all that have no other");

    /// <summary>The tags of a model.</summary>
    public static ReasonKind ModelForMounting { get; } = new("page.model-for-mounting", "station {station}, mounting {mounting}");

    /// <summary>The tags of a model of which no mounting is stated.</summary>
    public static ReasonKind ModelForNoMounting { get; } = new("page.model-for-no-mounting", "station {station}, no mounting stated");

    /// <summary>How tags that are there answer.</summary>
    public static ReasonKind ModelThereAs { get; } = new("page.model-there-as", "covered in {obscured} % of passes, else read in a share of looks from Beta({a}, {b})");

    /// <summary>How strays answer.</summary>
    public static ReasonKind ModelStraysAs { get; } = new("page.model-strays-as", "{stray} % of the tools that are not there lie within reach, read in a share of looks from Beta({a}, {b})");

    /// <summary>The lines that a model weighed.</summary>
    public static ReasonKind ModelLinesOf { get; } = new("page.model-lines-of", "{count:line|lines} {lines}");

    /// <summary>A model that weighed no line.</summary>
    public static ReasonKind ModelNoLine { get; } = new("page.model-no-line", "no line of this kit");

    /// <summary>Models that are left out.</summary>
    public static ReasonKind ModelsMore { get; } = new("page.models-more", "{count} more {count:model|models} weighed reads of this kit; {count:it stands|they stand} in the policy.");

    /// <summary>A kit without a line that rests on reads alone.</summary>
    public static ReasonKind RuleNoLine { get; } = new("page.rule-no-line", "No line rests on reads alone, so there is no such risk to state.");

    /// <summary>A digest of the annex.</summary>
    public static ReasonKind RestsOn { get; } = new("page.rests-on", "Annex: what this rests on, so that it can be recomputed");

    /// <summary>The digest of a result.</summary>
    public static ReasonKind ResultDigest { get; } = new("page.result-digest", "Result of kit {kit}");

    /// <summary>The digest of the policy as stored.</summary>
    public static ReasonKind SitePolicy { get; } = new("page.site-policy", "Policy {name}, as stored");

    /// <summary>The digest of the policy with the rules.</summary>
    public static ReasonKind PolicyWithRules { get; } = new("page.policy-with-rules", "Policy with rules, library version {version}");

    /// <summary>The digest of an input.</summary>
    public static ReasonKind Input { get; } = new("page.input", "Input {name}");

    /// <summary>The digest of a file.</summary>
    public static ReasonKind File { get; } = new("page.file", "File {name}");

    /// <summary>The head of a printed page.</summary>
    public static ReasonKind PrintedHead { get; } = new("page.printed-head", "Kit {kit}, revision {revision}. As of {at}. Result {digest}");

    /// <summary>The number of a printed page.</summary>
    public static ReasonKind PrintedNumber { get; } = new("page.printed-number", "Page {page} of {pages}");

    /// <summary>All sentences of this file.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        Skip, Conclusions, Contents, First, Then, Next, Reads, ReadsAndRisk, Timeline, BestOf, Pass, Antenna, AllAntennas, AntennaNotNamed, RowLooks, RowSilent, PassSilent, NotShownAtWork, NotCounted, Saturated, Cut,
        PassesNotDrawn, NotDrawn, Scrolls, Risk, SetAside, RiskBounded, RiskCorner, RiskExact, RiskChance, RiskCut, RiskCutOf, RiskNoCut, Terms, Term, TermByModel, OddsSoFar, Settles, Rule, RuleCounting, RuleRisk, RuleModel,
        RuleModels, Models, ModelName, ModelFor, ModelThere, ModelStrays, ModelLines, ModelNumber, ModelForOthers, ModelForMounting, ModelForNoMounting, ModelThereAs, ModelStraysAs, ModelLinesOf, ModelNoLine, ModelsMore,
        RuleNoLine, RestsOn, ResultDigest, SitePolicy, PolicyWithRules, Input, File, PrintedHead, PrintedNumber,
    ];
}
