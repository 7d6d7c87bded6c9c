package gapwise.supplement;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.LengthAnswer;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * One analysis as it came out of the evidence base.
 *
 * @param name short, in small letters, digits and dashes, such as union
 * @param asking how its rows are asked for
 * @param plan the plan
 * @param outcome what came of it
 * @param answer the rows behind it; empty where it selects none from the evidence base
 * @param length what is drawn over the length of missing bone, where it is by size
 * @param folder where tables lie that the plan names; empty where it names none
 */
public record Analysis(
    String name,
    Asking asking,
    ObjectNode plan,
    PlanOutcome outcome,
    Optional<Answer> answer,
    Optional<LengthAnswer> length,
    Optional<Path> folder) {
  private static final Pattern NAME = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
  private static final int LONGEST_NAME = 60;

  public Analysis {
    Objects.requireNonNull(asking, "asking");
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(answer, "answer");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(folder, "folder");
    if (name.length() > LONGEST_NAME || !NAME.matcher(name).matches()) {
      throw new IllegalArgumentException("no name of an analysis: " + name);
    }
    plan = plan.deepCopy();
  }

  /** An answer to a question; empty where there is nothing to analyse. */
  public static Optional<Analysis> of(String name, Asking asking, Answer answer) {
    return answer
        .plan()
        .flatMap(
            plan ->
                answer
                    .outcome()
                    .map(
                        outcome ->
                            new Analysis(
                                named(name),
                                asking,
                                plan,
                                outcome,
                                Optional.of(answer),
                                Optional.empty(),
                                Optional.empty())));
  }

  /** An outcome over the length of missing bone; empty where there is nothing to analyse. */
  public static Optional<Analysis> of(String name, LengthAnswer told) {
    return of(name, Asking.BY_SIZE, told.answer())
        .map(
            one ->
                new Analysis(
                    one.name,
                    one.asking,
                    one.plan,
                    one.outcome,
                    one.answer,
                    Optional.of(told),
                    Optional.empty()));
  }

  /**
   * A plan that somebody wrote.
   *
   * @param folder where its tables lie
   */
  public static Analysis of(String name, ObjectNode plan, Answers.Ran ran, Path folder) {
    return new Analysis(
        named(name),
        Asking.PLAN,
        plan,
        ran.outcome(),
        ran.answer(),
        Optional.empty(),
        Optional.of(folder));
  }

  /** Any words as a name. */
  private static String named(String words) {
    String plain =
        words
            .toLowerCase(java.util.Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-|-$", "");
    String some = plain.substring(0, Math.min(LONGEST_NAME, plain.length())).replaceAll("-$", "");
    return some.isEmpty() ? "analysis" : some;
  }

  @Override
  public ObjectNode plan() {
    return plan.deepCopy();
  }

  /** What it is about, for people. */
  public String title() {
    String title = plan.path("title").asText();
    return title.isBlank() ? name : title;
  }
}
