package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.Column;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.SelectedRow;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * In how many planned stages one method is done: as entered; else as most of its groups planned,
 * the fewer where as many planned two numbers; else one, where none tells.
 *
 * @param planned 1 to {@link #MOST}
 * @param from where that is from
 * @param groups that planned so; 0 unless from records
 * @param telling groups that tell; 0 unless from records
 */
public record Stages(int planned, From from, int groups, int telling) {
  /** The most that the model takes; more stages than any method plans. */
  public static final int MOST = 6;

  private static final String DETAIL = "stages-planned";

  /** Where the number is from. */
  public enum From {
    ENTERED,
    RECORDS,
    NOT_TOLD
  }

  public Stages {
    if (planned < 1 || planned > MOST) {
      throw new IllegalArgumentException("stages are 1 to " + MOST + ", were " + planned);
    }
  }

  /**
   * Of one method.
   *
   * @param columns the outcomes that its course is made of
   * @param entered stages by code of the method, as somebody entered them
   */
  static Stages of(Method method, List<Column> columns, Map<String, Integer> entered) {
    Optional<Integer> own = Optional.ofNullable(entered.get(method.code()));
    if (own.isPresent()) {
      return new Stages(own.get(), From.ENTERED, 0, 0);
    }
    Map<Integer, Integer> groups = new TreeMap<>();
    told(method, columns).values().forEach(stages -> groups.merge(stages, 1, Integer::sum));
    Stages most = new Stages(1, From.NOT_TOLD, 0, 0);
    int telling = groups.values().stream().mapToInt(Integer::intValue).sum();
    for (Map.Entry<Integer, Integer> one : groups.entrySet()) {
      if (one.getValue() > most.groups()) {
        most = new Stages(one.getKey(), From.RECORDS, one.getValue(), telling);
      }
    }
    return most;
  }

  /** Stages by group; a group that plans other than 1 to 6 whole stages tells nothing. */
  private static Map<List<String>, Integer> told(Method method, List<Column> columns) {
    Map<List<String>, Integer> told = new HashMap<>();
    for (Column column : columns) {
      for (SelectedRow row : column.rows()) {
        OptionalDouble number =
            row.arm().method().principal().equals(method)
                ? Optional.ofNullable(row.arm().details().get(DETAIL))
                    .map(detail -> detail.number())
                    .orElse(OptionalDouble.empty())
                : OptionalDouble.empty();
        if (number.isPresent()
            && number.getAsDouble() == Math.rint(number.getAsDouble())
            && number.getAsDouble() >= 1
            && number.getAsDouble() <= MOST) {
          told.put(List.of(row.study().id(), row.arm().id()), (int) number.getAsDouble());
        }
      }
    }
    return told;
  }

  /** The same in words, such as "Induced membrane 2 (as 9 of 10 groups planned)". */
  String words(Method method) {
    return switch (from) {
      case ENTERED ->
          say(
              "choice.stages-entered",
              Map.of("method", method.shortLabel(), "stages", Integer.toString(planned)));
      case RECORDS ->
          say(
              "choice.stages-recorded",
              Map.of(
                  "method",
                  method.shortLabel(),
                  "stages",
                  Integer.toString(planned),
                  "groups",
                  Integer.toString(groups),
                  "telling",
                  telling));
      case NOT_TOLD -> say("choice.stages-untold", Map.of("method", method.shortLabel()));
    };
  }
}
