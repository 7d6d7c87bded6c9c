package gapwise.review.kept;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What moved between two answers to one question.
 *
 * @param came studies that were not under it before
 * @param went studies that are no longer under it
 * @param changed studies whose record is another one
 * @param numbers what says something else
 */
public record Moved(
    List<DigestStudy> came,
    List<DigestStudy> went,
    List<ChangedStudy> changed,
    List<MovedNumber> numbers) {
  public Moved {
    came = List.copyOf(came);
    went = List.copyOf(went);
    changed = List.copyOf(changed);
    numbers = List.copyOf(numbers);
  }

  /** How a kept answer stands. */
  public enum Mark {
    AS_IT_WAS("as-it-was", "as it was"),
    STUDIES_CHANGED("studies-changed", "studies under it changed"),
    NUMBERS_MOVED("numbers-moved", "numbers moved");

    private final String code;
    private final String label;

    Mark(String code, String label) {
      this.code = code;
      this.label = label;
    }

    /** The word for programs. */
    public String code() {
      return code;
    }

    /** The words that people read. */
    public String label() {
      return label;
    }
  }

  /** A study whose record changed. */
  public record ChangedStudy(DigestStudy before, DigestStudy after) {
    public ChangedStudy {
      Objects.requireNonNull(before, "before");
      Objects.requireNonNull(after, "after");
    }
  }

  /**
   * A number that moved.
   *
   * @param before as it was; empty where there was none
   * @param after as it is; empty where there is none
   */
  public record MovedNumber(
      String name, Optional<DigestNumber> before, Optional<DigestNumber> after) {
    public MovedNumber {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(before, "before");
      Objects.requireNonNull(after, "after");
    }
  }

  /** What moved. */
  public static Moved between(Digest before, Digest after) {
    Map<String, DigestStudy> was = by(before.studies(), DigestStudy::id);
    Map<String, DigestStudy> is = by(after.studies(), DigestStudy::id);
    List<ChangedStudy> changed = new ArrayList<>();
    was.forEach(
        (id, then) ->
            Optional.ofNullable(is.get(id))
                .filter(now -> !now.content().equals(then.content()))
                .ifPresent(now -> changed.add(new ChangedStudy(then, now))));
    return new Moved(
        after.studies().stream().filter(one -> !was.containsKey(one.id())).toList(),
        before.studies().stream().filter(one -> !is.containsKey(one.id())).toList(),
        changed,
        numbers(by(before.numbers(), DigestNumber::name), by(after.numbers(), DigestNumber::name)));
  }

  private static List<MovedNumber> numbers(
      Map<String, DigestNumber> was, Map<String, DigestNumber> is) {
    Map<String, DigestNumber> names = new LinkedHashMap<>(was);
    names.putAll(is);
    return names.keySet().stream()
        .map(
            name ->
                new MovedNumber(
                    name, Optional.ofNullable(was.get(name)), Optional.ofNullable(is.get(name))))
        .filter(one -> !one.before().equals(one.after()))
        .toList();
  }

  private static <T> Map<String, T> by(List<T> all, Function<T, String> name) {
    return all.stream()
        .collect(Collectors.toMap(name, Function.identity(), (a, b) -> a, LinkedHashMap::new));
  }

  /** How the answer stands: a number that moved says more than a study that changed. */
  public Mark mark() {
    if (!numbers.isEmpty()) {
      return Mark.NUMBERS_MOVED;
    }
    return hasStudies() ? Mark.STUDIES_CHANGED : Mark.AS_IT_WAS;
  }

  /** Whether any study under it came, went or changed. */
  public boolean hasStudies() {
    return !came.isEmpty() || !went.isEmpty() || !changed.isEmpty();
  }
}
