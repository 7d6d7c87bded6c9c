package gapwise.server.home;

import gapwise.desk.KeptDraft;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.extraction.Side;
import gapwise.extraction.TwiceRead;
import gapwise.review.ExtractionCounts;
import gapwise.review.StageCount;
import gapwise.review.WorkSoFar;
import gapwise.screening.Reader;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How far the work of a review has come in one state of the evidence base. The studies are counted
 * once for a state; drafts and choices are as they stand now. Safe for use by many threads.
 *
 * <p>What is told of extraction is made here and nowhere else.
 */
public final class ReviewWork {
  private static final StageCount DONE = new StageCount(1, 0, 0);
  private static final StageCount WAITING = new StageCount(0, 1, 0);

  private final Home home;
  private final Evidence evidence;
  private Optional<Studies> counted = Optional.empty();

  private record Studies(
      int drafts, int extracted, int checked, Map<String, Integer> byWriter, int all) {}

  public ReviewWork(Home home, Evidence evidence) {
    this.home = home;
    this.evidence = evidence;
  }

  /** How far it has come, for a version of the review that is written now. */
  public WorkSoFar soFar() {
    int choices = home.screening().base().votes().size() + home.screening().base().rulings().size();
    return new WorkSoFar(choices, home.drafts().all().size(), studies().all());
  }

  /**
   * Extraction as it stands. A study that one person extracted counts for whoever wrote its latest
   * version, a draft on the desk for whoever kept it last; a paper that two people extract apart
   * counts for each of the two, and its settling as a second look.
   */
  public ExtractionCounts extraction() {
    Studies studies = studies();
    List<TwiceRead> twice = home.extractions().papers();
    List<KeptDraft> drafts =
        home.drafts().all().stream().filter(kept -> kept.draft().reader().isEmpty()).toList();
    Map<String, StageCount> extracted = new HashMap<>();
    studies.byWriter().forEach((key, done) -> add(extracted, key, new StageCount(done, 0, 0)));
    for (KeptDraft draft : drafts) {
      key(draft.who()).ifPresent(key -> add(extracted, key, WAITING));
    }
    Map<String, StageCount> checked = new HashMap<>();
    int toExtract = 0;
    int toSettle = 0;
    for (TwiceRead paper : twice) {
      boolean open = paper.finished().isEmpty();
      boolean both = paper.handedIn().size() == Side.values().length;
      toExtract += open && !both ? 1 : 0;
      toSettle += open && both ? 1 : 0;
      for (Reader reader : List.of(paper.first(), paper.second())) {
        boolean done =
            paper.handedIn().stream().anyMatch(one -> one.reader().key().equals(reader.key()));
        add(extracted, reader.key(), done ? new StageCount(1, 0, open && both ? 1 : 0) : WAITING);
      }
      paper
          .settling()
          .ifPresent(settling -> add(checked, settling.who().key(), open ? WAITING : DONE));
    }
    return new ExtractionCounts(
        extracted,
        checked,
        new StageCount(
            studies.extracted() + studies.checked() + toSettle,
            studies.drafts() + drafts.size() + toExtract,
            toSettle),
        new StageCount(studies.checked(), studies.extracted() + toSettle, 0));
  }

  private static void add(Map<String, StageCount> counts, String key, StageCount more) {
    counts.merge(
        key,
        more,
        (one, other) ->
            new StageCount(
                one.done() + other.done(),
                one.waiting() + other.waiting(),
                one.apart() + other.apart()));
  }

  private static Optional<String> key(String who) {
    return Reader.of(who).map(Reader::key);
  }

  private synchronized Studies studies() {
    if (counted.isEmpty()) {
      int[] counts = new int[ExtractionStatus.values().length];
      Map<String, Integer> byWriter = new HashMap<>();
      evidence
          .studies()
          .forEachSound(
              kept -> {
                ExtractionStatus status = kept.study().status();
                counts[status.ordinal()]++;
                if (status != ExtractionStatus.DRAFT && status != ExtractionStatus.AGREED) {
                  key(kept.stamp().who()).ifPresent(key -> byWriter.merge(key, 1, Integer::sum));
                }
              });
      int drafts = counts[ExtractionStatus.DRAFT.ordinal()];
      int extracted = counts[ExtractionStatus.EXTRACTED.ordinal()];
      int checked =
          counts[ExtractionStatus.VERIFIED.ordinal()] + counts[ExtractionStatus.AGREED.ordinal()];
      counted =
          Optional.of(
              new Studies(drafts, extracted, checked, byWriter, drafts + extracted + checked));
    }
    return counted.orElseThrow();
  }
}
