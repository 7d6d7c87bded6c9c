package gapwise.untidy;

import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.printed.Said;
import gapwise.printed.Statistic;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Finds what a header speaks of, by the phrases of {@code concepts.txt} and the vocabulary. */
final class Concepts {
  private static final String HARMLESS = "harmless";
  private static final String OUTCOME = "outcome:";

  /** Longer texts are no headers. */
  private static final int LONGEST = 300;

  /** Words shorter than this are not forgiven a misspelling. */
  private static final int FORGIVEN_FROM = 5;

  private static final Pattern MALE_TO_FEMALE =
      Pattern.compile("\\b(m|male|males|men) ?[/:] ?(f|w|female|females|women)\\b");

  private static final Map<Set<String>, String> PHRASES = new LinkedHashMap<>();
  private static final Set<String> FREE = new HashSet<>();

  static {
    lines().forEach(Concepts::enter);
    for (Outcome outcome : Outcome.vocabulary().all()) {
      enter(OUTCOME + outcome.code(), outcome.code().replace('-', ' '));
      if (outcome.label().indexOf(',') < 0) {
        enter(OUTCOME + outcome.code(), outcome.label());
      }
    }
  }

  private Concepts() {}

  private static List<String> lines() {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(
                    Concepts.class.getResourceAsStream("concepts.txt"), "concepts.txt"),
                StandardCharsets.UTF_8))) {
      return in.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException("concepts.txt cannot be read", unreadable);
    }
  }

  private static void enter(String line) {
    int equals = line.indexOf(" = ");
    String target = line.substring(0, equals);
    for (String phrase : line.substring(equals + 3).split(" \\| ", -1)) {
      enter(target, phrase);
    }
  }

  private static void enter(String target, String phrase) {
    List<String> words = Words.of(phrase);
    if (target.equals(HARMLESS)) {
      FREE.addAll(words);
      return;
    }
    String key = special(phrase);
    PHRASES.putIfAbsent(key.isEmpty() ? new TreeSet<>(words) : Set.of(key), target);
  }

  /** "Patient" names one, "patients" count many: the plural is kept apart from other words. */
  private static String special(String phrase) {
    return switch (phrase.strip().toLowerCase(Locale.ROOT)) {
      case "total",
          "all",
          "overall",
          "patients",
          "pts",
          "pts.",
          "cases",
          "no.",
          "nr.",
          "n",
          "#",
          "defects",
          "limbs",
          "legs",
          "subjects",
          "participants" ->
          "=" + phrase.strip().toLowerCase(Locale.ROOT);
      default -> "";
    };
  }

  /**
   * What a header speaks of; empty where no phrase is found in it.
   *
   * @param said what its other words say: how, in which unit
   */
  static Optional<Concept> of(String header, Said said) {
    if (header.length() > LONGEST) {
      return Optional.empty();
    }
    if (said.says(Statistic.P_VALUE)) {
      return Optional.of(new Concept("p-value", 1, List.of(), List.of()));
    }
    if (MALE_TO_FEMALE.matcher(header.toLowerCase(Locale.ROOT)).find()) {
      return Optional.of(new Concept("male-female", 2, List.of(), List.of()));
    }
    String measured = String.join(" ", said.rest());
    Optional<String> whole =
        Optional.ofNullable(PHRASES.get(Set.of("=" + bare(header))))
            .filter(target -> !said.says(Statistic.PERCENT) && !said.says(Statistic.TOTAL))
            .or(() -> Optional.ofNullable(PHRASES.get(Set.of("=" + bare(measured)))));
    if (whole.isPresent()) {
      return Optional.of(new Concept(whole.get(), 1, List.of(), List.of()));
    }
    List<String> words = Words.of(measured.isBlank() ? header : measured);
    int most = 0;
    Set<String> targets = new TreeSet<>();
    Set<String> best = Set.of();
    for (Map.Entry<Set<String>, String> phrase : PHRASES.entrySet()) {
      if (phrase.getKey().size() >= Math.max(1, most) && found(phrase.getKey(), words)) {
        if (phrase.getKey().size() > most) {
          targets.clear();
          best = phrase.getKey();
        }
        most = phrase.getKey().size();
        targets.add(phrase.getValue());
      }
    }
    if (targets.isEmpty()) {
      return Optional.empty();
    }
    String target = Objects.requireNonNull(PHRASES.get(best), "target");
    targets.remove(target);
    Set<String> known = new TreeSet<>(best);
    PHRASES.forEach(
        (phrase, to) -> {
          if (to.equals(target) && found(phrase, words)) {
            known.addAll(phrase);
          }
        });
    return Optional.of(new Concept(target, most, over(words, known), List.copyOf(targets)));
  }

  private static String bare(String header) {
    return header.replaceAll("\\(.*?\\)|\\[.*?\\]|,.*$", "").strip().toLowerCase(Locale.ROOT);
  }

  private static boolean found(Set<String> phrase, List<String> words) {
    return phrase.stream().allMatch(word -> words.stream().anyMatch(other -> same(word, other)));
  }

  private static boolean same(String word, String other) {
    if (word.equals(other)) {
      return true;
    }
    int shorter = Math.min(word.length(), other.length());
    if (shorter < FORGIVEN_FROM || word.charAt(0) != other.charAt(0)) {
      return false;
    }
    return Nearest.distance(word, other) <= Math.max(1, shorter / 6) || isTurned(word, other);
  }

  /** Whether two neighbouring letters stand the wrong way round. */
  private static boolean isTurned(String word, String other) {
    if (word.length() != other.length()) {
      return false;
    }
    int at = 0;
    while (at < word.length() && word.charAt(at) == other.charAt(at)) {
      at++;
    }
    return at + 1 < word.length()
        && word.charAt(at) == other.charAt(at + 1)
        && word.charAt(at + 1) == other.charAt(at)
        && word.substring(at + 2).equals(other.substring(at + 2));
  }

  private static List<String> over(List<String> words, Set<String> phrase) {
    List<String> over = new ArrayList<>();
    for (String word : words) {
      boolean known =
          FREE.stream().anyMatch(free -> same(free, word))
              || word.chars().allMatch(Character::isDigit)
              || phrase.stream().anyMatch(part -> same(part, word));
      if (!known) {
        over.add(word);
      }
    }
    return over;
  }

  /** The code of the outcome that a target names; empty for other targets. */
  static Optional<Outcome> outcome(String target) {
    return target.startsWith(OUTCOME)
        ? Outcome.vocabulary().find(target.substring(OUTCOME.length()))
        : Optional.empty();
  }
}
