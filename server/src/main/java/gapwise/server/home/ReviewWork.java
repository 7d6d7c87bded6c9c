package gapwise.server.home;

import gapwise.desk.KeptDraft;
import gapwise.evidence.vocabulary.ExtractionStatus;
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
 * <p>What is told of extraction is made here and nowhere else: who keeps extractions in another way
 * makes the {@link ExtractionCounts} from them.
 */
public final class ReviewWork {
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
   * Extraction as it stands: a study counts for whoever wrote its latest version, a draft on the
   * desk for whoever kept it last.
   */
  public ExtractionCounts extraction() {
    Studies studies = studies();
    List<KeptDraft> drafts = home.drafts().all();
    Map<String, Integer> waiting = new HashMap<>();
    for (KeptDraft draft : drafts) {
      key(draft.who()).ifPresent(key -> waiting.merge(key, 1, Integer::sum));
    }
    Map<String, StageCount> extracted = new HashMap<>();
    studies
        .byWriter()
        .forEach(
            (key, done) ->
                extracted.put(key, new StageCount(done, waiting.getOrDefault(key, 0), 0)));
    waiting.forEach((key, open) -> extracted.putIfAbsent(key, new StageCount(0, open, 0)));
    return new ExtractionCounts(
        extracted,
        Map.of(),
        new StageCount(
            studies.extracted() + studies.checked(), studies.drafts() + drafts.size(), 0),
        new StageCount(studies.checked(), studies.extracted(), 0));
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
                if (status != ExtractionStatus.DRAFT) {
                  key(kept.stamp().who()).ifPresent(key -> byWriter.merge(key, 1, Integer::sum));
                }
              });
      int drafts = counts[ExtractionStatus.DRAFT.ordinal()];
      int extracted = counts[ExtractionStatus.EXTRACTED.ordinal()];
      int checked = counts[ExtractionStatus.VERIFIED.ordinal()];
      counted =
          Optional.of(
              new Studies(drafts, extracted, checked, byWriter, drafts + extracted + checked));
    }
    return counted.orElseThrow();
  }
}
