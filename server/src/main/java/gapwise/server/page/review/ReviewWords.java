package gapwise.server.page.review;

import static gapwise.sentence.Sentences.say;

import gapwise.review.Review;
import gapwise.review.ReviewField;
import gapwise.review.ReviewVersion;
import gapwise.review.WorkSoFar;
import gapwise.screening.Flow;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A review told in words. */
final class ReviewWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  /** What stands above the fields already. */
  private static final Set<ReviewField> ABOVE =
      EnumSet.of(ReviewField.TITLE, ReviewField.POPULATION);

  private ReviewWords() {}

  /** Fields that say something; of methods also what it means that none is named. */
  static List<ReviewView.Fact> facts(Review review) {
    return Arrays.stream(ReviewField.values())
        .filter(field -> !ABOVE.contains(field))
        .map(field -> new ReviewView.Fact(field.label(), told(review, field).lines().toList()))
        .filter(fact -> !fact.lines().isEmpty())
        .toList();
  }

  private static String told(Review review, ReviewField field) {
    String text = field.of(review);
    if (!text.isEmpty()) {
      return text;
    }
    return switch (field) {
      case INTERVENTIONS -> say("review.every-method");
      case COMPARATORS -> withoutOthers(review);
      default -> "";
    };
  }

  /** One method alone has nothing to be compared with until somebody names it. */
  private static String withoutOthers(Review review) {
    return review.interventions().size() == 1 ? say("review.no-other") : say("review.one-another");
  }

  static ReviewView.Step step(ReviewVersion.Step step) {
    ReviewVersion version = step.version();
    return new ReviewView.Step(
        say("review.version", Map.of("version", Integer.toString(version.version()))),
        say(
            "review.written",
            Map.of("when", DAY.format(version.when()), "who", version.who(), "why", version.why())),
        step.isAmendment() || step.isLate() ? mark(step) : "",
        step.changes());
  }

  private static String mark(ReviewVersion.Step step) {
    WorkSoFar work = step.version().work();
    return say(
        step.isLate() ? "review.late" : "review.amendment",
        Map.of("choices", work.choices(), "drafts", work.drafts(), "studies", work.studies()));
  }

  /** How papers went through; empty where there are none. */
  static String flow(Flow flow) {
    return flow.screened() == 0
        ? ""
        : say(
            "review.flow",
            Map.of(
                "screened",
                flow.screened(),
                "out",
                flow.leftOutByTitle(),
                "waiting",
                flow.waitingAtTitle(),
                "sought",
                flow.sought(),
                "had",
                flow.notHad(),
                "full",
                flow.waitingFullText(),
                "left",
                flow.leftOutInFull(),
                "included",
                flow.included(),
                "without",
                flow.withoutStudy()));
  }
}
