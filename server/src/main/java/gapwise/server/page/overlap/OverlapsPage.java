package gapwise.server.page.overlap;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.cohort.Bearing;
import gapwise.cohort.CohortDecision;
import gapwise.cohort.DecisionJson;
import gapwise.cohort.Member;
import gapwise.cohort.Proposal;
import gapwise.cohort.Sign;
import gapwise.cohort.Verdict;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Evidence;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Pairs of studies that may tell of the same patients, and the form that settles one. */
public final class OverlapsPage {
  /** More than anyone settles in one go. */
  private static final int MOST_SHOWN = 50;

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final Evidence evidence;
  private final EvidenceBase base;
  private final Clock clock;

  public OverlapsPage(
      Templates templates, Sites sites, Evidence evidence, EvidenceBase base, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.evidence = evidence;
    this.base = base;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.OVERLAPS, Right.SETTLE, this::show);
    routes.post(PagePaths.OVERLAPS, Right.SETTLE, this::settle);
  }

  private void show(Context context) {
    List<Proposal> left = evidence.overlaps().left().proposals();
    templates.show(
        context,
        "overlap/OverlapsPage",
        new OverlapsView(
            sites.of(say("overlap.title"), Place.OVERLAPS),
            left.size(),
            left.stream().limit(MOST_SHOWN).map(this::pair).toList(),
            evidence.overlaps().decisions().stream()
                .sorted(Comparator.comparing(CohortDecision::when).reversed())
                .map(this::settled)
                .toList()));
  }

  private OverlapsView.Pair pair(Proposal proposal) {
    return new OverlapsView.Pair(
        side(proposal.first()),
        side(proposal.second()),
        verdict(proposal.verdict()),
        sentences(proposal, Bearing.AGREES),
        sentences(proposal, Bearing.SPEAKS_AGAINST),
        sentences(proposal, Bearing.UNKNOWN),
        shared(proposal),
        proposal.stoodOn());
  }

  private static String verdict(Verdict verdict) {
    return switch (verdict) {
      case SAME_PAPER -> say("overlap.same-paper");
      case OVERLAPPING -> say("overlap.overlapping");
      case PART -> say("overlap.part");
      case POSSIBLE -> say("overlap.possible");
    };
  }

  private static List<String> sentences(Proposal proposal, Bearing bearing) {
    return proposal.signs(bearing).stream().map(Sign::sentence).toList();
  }

  private OverlapsView.Side side(Member member) {
    String label = evidence.study(member.study()).map(study -> study.citation().label()).orElse("");
    return new OverlapsView.Side(member.toString(), label, StudyAddress.of(member.study()));
  }

  /** Outcomes that both report, of each of which one may be named to supply it. */
  private List<Outcome> shared(Proposal proposal) {
    Set<Outcome> second = outcomes(proposal.second());
    return outcomes(proposal.first()).stream()
        .filter(second::contains)
        .sorted(Comparator.comparing(Outcome::label))
        .toList();
  }

  private Set<Outcome> outcomes(Member member) {
    return evidence.study(member.study()).map(Study::outcomes).orElse(List.of()).stream()
        .filter(report -> isOf(report, member))
        .map(OutcomeReport::outcome)
        .collect(Collectors.toSet());
  }

  private static boolean isOf(OutcomeReport report, Member member) {
    return member.arm().isEmpty() || report.scope().armIds().contains(member.arm().get());
  }

  private OverlapsView.Settled settled(CohortDecision decision) {
    String words =
        switch (decision.settled()) {
          case SAME -> say("overlap.settled-same");
          case OVERLAPPING -> say("overlap.settled-overlapping");
          case SEPARATE -> say("overlap.settled-separate");
          case NOT_KNOWN -> say("overlap.settled-not-known");
        };
    return new OverlapsView.Settled(
        side(Member.parse(decision.first())),
        side(Member.parse(decision.second())),
        words,
        say(
            "overlap.settled-by",
            Map.of("who", decision.who(), "when", DAY.format(decision.when()))),
        decision.reason());
  }

  private void settle(Context context) {
    CohortDecision decision =
        SettledPair.read(
            new PostedForm(context), evidence.overlaps().left().proposals(), clock.instant());
    base.settle(decision.key(), DecisionJson.write(decision), decision.who(), decision.reason());
    context.redirect(PagePaths.OVERLAPS, HttpStatus.SEE_OTHER);
  }
}
