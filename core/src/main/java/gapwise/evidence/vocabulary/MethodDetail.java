package gapwise.evidence.vocabulary;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A detail of a method together with one of its listed words, such as a ring for the fixation.
 * Details that are numbers or free words have no such entries.
 *
 * @param kind the detail
 * @param word one of its words, as listed
 */
public record MethodDetail(DetailKind kind, String word) implements Coded {
  private static final List<MethodDetail> ALL =
      DetailKind.ofMethods().all().stream()
          .flatMap(kind -> kind.values().stream().map(word -> new MethodDetail(kind, word)))
          .toList();

  private static final List<String> CODES = ALL.stream().map(Coded::code).toList();

  private static final Map<String, MethodDetail> BY_CODE = byCode();

  public MethodDetail {
    Objects.requireNonNull(kind, "kind");
    if (!kind.values().contains(word)) {
      throw new IllegalArgumentException("'" + word + "' is no word of " + kind.code());
    }
  }

  private static Map<String, MethodDetail> byCode() {
    Map<String, MethodDetail> byCode = new TreeMap<>();
    ALL.forEach(one -> byCode.put(one.code(), one));
    return byCode;
  }

  /** The code of the detail, a colon, and the word: {@code transport-levels:more-than-two}. */
  @Override
  public String code() {
    return kind.code() + ":" + word.replace(' ', '-');
  }

  /** Such as "fixation: ring"; what a label explains in brackets is left out. */
  @Override
  public String label() {
    return kind.shortLabel() + ": " + word;
  }

  /** Every word of every detail, in the order of the vocabulary. */
  public static List<MethodDetail> all() {
    return ALL;
  }

  /** What a code means; empty where it is none. */
  public static Optional<MethodDetail> find(String code) {
    return Optional.ofNullable(BY_CODE.get(code));
  }

  /** All codes. */
  public static List<String> codes() {
    return CODES;
  }

  /** The listed word that was written down for a detail, in whatever case; empty where none was. */
  public static Optional<MethodDetail> written(DetailKind kind, String words) {
    return kind.values().stream()
        .filter(word -> word.equalsIgnoreCase(words.strip()))
        .findFirst()
        .map(word -> new MethodDetail(kind, word));
  }
}
