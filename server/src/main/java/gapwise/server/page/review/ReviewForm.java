package gapwise.server.page.review;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.review.Duty;
import gapwise.review.Review;
import gapwise.review.ReviewLimits;
import gapwise.review.ReviewOutcome;
import gapwise.review.ReviewPerson;
import gapwise.screening.Reader;
import gapwise.server.job.PostedForm;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Reads a review from its form; whatever is wrong is said in words, all at once. */
final class ReviewForm {
  private static final String NUMBER = "\\d{1,5}([.,]\\d{1,2})?";
  private static final double HUNDRED = 100;

  private final PostedForm form;
  private final Problems problems = new Problems();

  private ReviewForm(PostedForm form) {
    this.form = form;
  }

  /**
   * The review that was sent.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  static Review read(PostedForm form) {
    return new ReviewForm(form).review();
  }

  private Review review() {
    String title = text("title", Review.LONGEST_TITLE);
    if (title.isEmpty()) {
      problems.add("title", "missing-value", say("review.no-title"));
    }
    String registration = text("registration", Review.LONGEST_TITLE);
    String population = text("population", Review.LONGEST_POPULATION);
    List<String> interventions = methods("intervention");
    List<String> comparators = methods("comparator");
    List<ReviewOutcome> outcomes = outcomes();
    List<String> include = criteria("include");
    List<String> exclude = criteria("exclude");
    ReviewLimits limits = limits();
    List<ReviewPerson> people = people();
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new Review(
        title,
        registration,
        population,
        interventions,
        comparators,
        outcomes,
        include,
        exclude,
        limits,
        people);
  }

  private String text(String name, int most) {
    String text = form.first(name).replace("\r\n", "\n");
    if (text.length() > most) {
      problems.add(name, "too-long", say("review.too-long", Map.of("most", most)));
      return "";
    }
    return text;
  }

  private List<String> methods(String name) {
    List<String> codes = form.values(name).stream().distinct().toList();
    for (String code : codes) {
      if (Method.vocabulary().find(code).isEmpty()) {
        problems.add(name, "unknown-code", say("review.unknown", Map.of("found", code)));
      }
    }
    return codes.stream().filter(code -> Method.vocabulary().find(code).isPresent()).toList();
  }

  private List<ReviewOutcome> outcomes() {
    List<ReviewOutcome> outcomes = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int row = 1; row <= Review.MOST; row++) {
      String code = form.first("outcome-" + row);
      if (code.isEmpty()) {
        if (!form.first("matters-" + row).isEmpty() || !form.first("time-" + row).isEmpty()) {
          problems.add(
              "outcome-" + row, "missing-value", say("review.no-outcome", Map.of("row", row)));
        }
        continue;
      }
      if (Outcome.vocabulary().find(code).isEmpty()) {
        problems.add(
            "outcome-" + row, "unknown-code", say("review.unknown", Map.of("found", code)));
      } else if (!seen.add(code)) {
        problems.add(
            "outcome-" + row,
            "twice",
            say("review.outcome-twice", Map.of("outcome", Outcome.of(code).label())));
      } else {
        outcomes.add(
            new ReviewOutcome(
                code,
                matters(row, Outcome.of(code)),
                text("time-" + row, ReviewOutcome.LONGEST_TIME)));
      }
    }
    return outcomes;
  }

  private OptionalDouble matters(int row, Outcome outcome) {
    OptionalDouble number = number("matters-" + row);
    boolean possible =
        number.isEmpty()
            || number.getAsDouble() > 0 && (!outcome.isEvent() || number.getAsDouble() < HUNDRED);
    if (!possible) {
      problems.add(
          "matters-" + row,
          "not-a-difference",
          say("review.not-a-difference", Map.of("outcome", outcome.label())));
      return OptionalDouble.empty();
    }
    return number;
  }

  private OptionalDouble number(String name) {
    String text = form.first(name);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (!text.matches(NUMBER)) {
      problems.add(name, "not-a-number", say("review.not-a-number", Map.of("found", text)));
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
  }

  private OptionalInt year(String name) {
    String text = form.first(name);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (!text.matches("(1[89]|20)\\d\\d")) {
      problems.add(name, "not-a-year", say("review.not-a-year", Map.of("found", text)));
      return OptionalInt.empty();
    }
    return OptionalInt.of(Integer.parseInt(text));
  }

  private List<String> criteria(String name) {
    List<String> lines =
        Arrays.stream(form.first(name).split("\\R"))
            .map(String::strip)
            .filter(line -> !line.isEmpty())
            .distinct()
            .toList();
    if (lines.size() > Review.MOST) {
      problems.add(name, "too-many", say("review.too-many", Map.of("most", Review.MOST)));
      return List.of();
    }
    if (lines.stream().anyMatch(line -> line.length() > Review.LONGEST_CRITERION)) {
      problems.add(
          name, "too-long", say("review.long-line", Map.of("most", Review.LONGEST_CRITERION)));
      return List.of();
    }
    return lines;
  }

  private ReviewLimits limits() {
    List<Design> designs =
        form.values("design").stream()
            .map(code -> Coded.parse(Design.class, code))
            .flatMap(Optional::stream)
            .toList();
    OptionalDouble from = number("from");
    OptionalDouble to = number("to");
    if (from.orElse(0) > to.orElse(Double.POSITIVE_INFINITY)) {
      problems.add("to", "ends-before-it-starts", say("review.length-order"));
      return ReviewLimits.NONE;
    }
    OptionalInt first = year("year-from");
    OptionalInt last = year("year-to");
    if (first.orElse(Integer.MIN_VALUE) > last.orElse(Integer.MAX_VALUE)) {
      problems.add("year-to", "ends-before-it-starts", say("review.year-order"));
      return ReviewLimits.NONE;
    }
    return new ReviewLimits(
        designs, from, to, first, last, text("languages", ReviewLimits.LONGEST_LANGUAGES));
  }

  private List<ReviewPerson> people() {
    List<ReviewPerson> people = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int row = 1; row <= Review.MOST; row++) {
      String name = form.first("person-" + row);
      if (name.isEmpty()) {
        continue;
      }
      Optional<Reader> who = Reader.of(name);
      if (who.isEmpty()) {
        problems.add(
            "person-" + row,
            "not-a-name",
            say("screening.not-a-name", Map.of("most", Reader.LONGEST)));
      } else if (!seen.add(who.get().key())) {
        problems.add("person-" + row, "twice", say("review.person-twice", Map.of("who", name)));
      } else {
        people.add(
            new ReviewPerson(
                who.get(),
                form.values("duty-" + row).stream()
                    .map(Duty::find)
                    .flatMap(Optional::stream)
                    .toList()));
      }
    }
    return people;
  }
}
