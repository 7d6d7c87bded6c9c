package gapwise.reference.format;

import gapwise.reference.Identifiers;
import gapwise.reference.Published;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** The fields of one record that a reference has once: the first value counts. Not thread-safe. */
final class Single {
  private final Map<Once, String> values = new EnumMap<>(Once.class);

  /** Takes a value; false if another one was taken before. */
  boolean take(Once what, String value) {
    String text = value.strip();
    if (text.isEmpty()) {
      return true;
    }
    String before = values.putIfAbsent(what, text);
    return before == null || before.equals(text);
  }

  /** A date that tells more than the one before it takes its place, if it is of the same year. */
  void date(String text, boolean sameYear) {
    String before = values.getOrDefault(Once.DATE, "");
    if (before.isEmpty() || (sameYear && text.length() > before.length())) {
      values.put(Once.DATE, text);
    }
  }

  Optional<String> value(Once what) {
    return Optional.ofNullable(values.get(what));
  }

  Published published(OptionalInt year) {
    return new Published(
        value(Once.JOURNAL),
        value(Once.SHORT_JOURNAL),
        value(Once.DATE),
        year,
        value(Once.VOLUME),
        value(Once.ISSUE),
        value(Once.PAGES),
        value(Once.ISSN),
        value(Once.PUBLISHER));
  }

  /** Numbers; that of a trial may stand in the abstract alone. */
  Identifiers identifiers() {
    Optional<String> trial =
        value(Once.TRIAL).or(() -> value(Once.ABSTRACT).flatMap(Identifiers::trialIn));
    return new Identifiers(
        value(Once.DOI), value(Once.PMID), value(Once.PMCID), trial, value(Once.LINK));
  }
}
