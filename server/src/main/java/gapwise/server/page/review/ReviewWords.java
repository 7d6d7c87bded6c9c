package gapwise.server.page.review;

import static gapwise.sentence.Sentences.say;

import gapwise.review.Review;
import gapwise.review.ReviewField;
import gapwise.review.ReviewOutcome;
import gapwise.review.ReviewVersion;
import gapwise.review.WorkSoFar;
import gapwise.screening.Flow;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** A review told in words. */
final class ReviewWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  /** What the paragraph on the question says already. */
  private static final Set<ReviewField> IN_QUESTION =
      EnumSet.of(
          ReviewField.TITLE,
          ReviewField.POPULATION,
          ReviewField.INTERVENTIONS,
          ReviewField.COMPARATORS);

  private ReviewWords() {}

  /** The question in one paragraph; empty where no part of it is said. */
  static String question(Review review) {
    String methods = list(ReviewField.INTERVENTIONS.of(review));
    String others = list(ReviewField.COMPARATORS.of(review));
    String outcomes =
        review.outcomes().stream().map(ReviewOutcome::label).collect(Collectors.joining(", "));
    if (review.population().isEmpty() && methods.isEmpty() && outcomes.isEmpty()) {
      return "";
    }
    Map<String, Object> places = new HashMap<>();
    String population =
        review.population().isEmpty() ? say("review.not-said") : review.population();
    places.put("population", population.endsWith(".") ? population : population + ".");
    places.put("methods", methods.isEmpty() ? say("review.every-method") : methods);
    places.put("others", others.isEmpty() ? withoutOthers(review) : others);
    places.put("outcomes", outcomes.isEmpty() ? say("review.not-said") : outcomes);
    return say("review.question", places);
  }

  /** One method alone has nothing to be compared with until somebody names it. */
  private static String withoutOthers(Review review) {
    return review.interventions().size() == 1 ? say("review.no-other") : say("review.one-another");
  }

  private static String list(String lines) {
    return lines.replace("\n", ", ");
  }

  /** The fields that say something beside the question. */
  static List<ReviewView.Fact> facts(Review review) {
    return Arrays.stream(ReviewField.values())
        .filter(field -> !IN_QUESTION.contains(field) && !field.of(review).isEmpty())
        .map(field -> new ReviewView.Fact(field.label(), field.of(review).lines().toList()))
        .toList();
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
