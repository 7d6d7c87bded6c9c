package gapwise.evidence.vocabulary;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A word of a closed vocabulary that has a stable code for templates, plans and addresses, and a
 * name for people.
 */
public interface Coded {
  /** The kebab-case code. */
  String code();

  /** The name that people read. */
  String label();

  /** The code of an enum constant: {@code CASE_REPORT} is {@code case-report}. */
  static String codeOf(Enum<?> constant) {
    return EnumCodes.of(constant);
  }

  /**
   * The constant with this code, spaces and underscores read as hyphens; empty if there is none.
   */
  static <E extends Enum<E> & Coded> Optional<E> parse(Class<E> vocabulary, String text) {
    if (text.isBlank()) {
      return Optional.empty();
    }
    String sought = text.strip().toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
    return Arrays.stream(vocabulary.getEnumConstants())
        .filter(constant -> constant.code().equals(sought))
        .findFirst();
  }

  /** All codes in order. */
  static <E extends Enum<E> & Coded> List<String> codes(Class<E> vocabulary) {
    return Arrays.stream(vocabulary.getEnumConstants()).map(Coded::code).toList();
  }
}
