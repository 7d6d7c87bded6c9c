package gapwise.server.page.kept;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.StudyAddress;
import gapwise.curation.KeptStudy;
import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.desk.StudyDifference;
import gapwise.evidence.Study;
import gapwise.review.digest.Digested;
import gapwise.review.kept.DigestNumber;
import gapwise.review.kept.DigestStudy;
import gapwise.review.kept.Moved;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What moved under an answer, as it is shown.
 *
 * @param came studies that were not under it before
 * @param went studies that are no longer under it
 * @param changed studies that changed, field by field
 * @param numbers what moved, from what to what
 * @param without said where no study changed and a number moved all the same; else empty
 */
public record MovedView(
    List<Named> came,
    List<Named> went,
    List<Changed> changed,
    List<MovedLine> numbers,
    Optional<String> without) {
  /** Fields that are shown of a study; the rest stands on the page of its versions. */
  private static final int MOST_FIELDS = 12;

  public MovedView {
    came = List.copyOf(came);
    went = List.copyOf(went);
    changed = List.copyOf(changed);
    numbers = List.copyOf(numbers);
    Objects.requireNonNull(without, "without");
  }

  /** A study. */
  public record Named(String label, String href) {}

  /** A field that differs. */
  public record Field(String name, String before, String after) {}

  /**
   * A study that changed.
   *
   * @param versions address where its versions are compared
   * @param fields the first of those that differ; none where the version before is of another base
   * @param more how many more there are, in words; empty for none
   */
  public record Changed(String label, String versions, List<Field> fields, String more) {
    public Changed {
      fields = List.copyOf(fields);
    }
  }

  /** A number that moved. */
  public record MovedLine(String name, String before, String after) {}

  /** Whether nothing moved. */
  public boolean isNothing() {
    return came.isEmpty() && went.isEmpty() && changed.isEmpty() && numbers.isEmpty();
  }

  /** What moved, with the studies of the state in which it was worked out. */
  static MovedView of(Moved moved, StudiesAt studies) {
    return new MovedView(
        moved.came().stream().map(MovedView::named).toList(),
        moved.went().stream().map(MovedView::named).toList(),
        moved.changed().stream().map(one -> changed(one, studies)).toList(),
        moved.numbers().stream().map(MovedView::number).toList(),
        moved.hasStudies() || moved.numbers().isEmpty()
            ? Optional.empty()
            : Optional.of(say("kept.without-studies")));
  }

  private static Named named(DigestStudy study) {
    return new Named(study.label(), StudyAddress.of(study.id()) + "/versions");
  }

  private static MovedLine number(Moved.MovedNumber moved) {
    return new MovedLine(moved.name(), told(moved.before()), told(moved.after()));
  }

  private static String told(Optional<DigestNumber> number) {
    return number.map(DigestNumber::told).orElseGet(() -> say("kept.nothing-there"));
  }

  private static Changed changed(Moved.ChangedStudy one, StudiesAt studies) {
    DigestStudy before = one.before();
    Optional<Study> then =
        studies
            .version(before.id(), Math.max(1, before.version()))
            .flatMap(StudyVersion::study)
            .filter(study -> Digested.content(study).equals(before.content()));
    Optional<Study> now = studies.study(before.id()).map(KeptStudy::study);
    String versions = StudyAddress.of(before.id()) + "/versions";
    if (then.isEmpty() || now.isEmpty()) {
      return new Changed(one.after().label(), versions, List.of(), "");
    }
    List<StudyDifference.Change> all = StudyDifference.between(then.get(), now.get());
    int more = Math.max(0, all.size() - MOST_FIELDS);
    return new Changed(
        one.after().label(),
        versions + "?from=" + before.version() + "&to=" + one.after().version(),
        all.stream().limit(MOST_FIELDS).map(MovedView::field).toList(),
        more == 0 ? "" : say("kept.more-fields", Map.of("fields", more)));
  }

  private static Field field(StudyDifference.Change change) {
    String where =
        change.row().isEmpty()
            ? change.sheet()
            : change.sheet() + ", " + String.join(", ", change.row());
    return new Field(where + ": " + change.column().title(), change.before(), change.after());
  }
}
