package gapwise.printed;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.YesOrNo;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;

/** Codes of the template for the words that people write. */
public final class Codes {
  private static final Map<String, String> WORDS = new HashMap<>();

  static {
    Properties own = new Properties();
    try (InputStreamReader in =
        new InputStreamReader(
            Objects.requireNonNull(
                Codes.class.getResourceAsStream("codes.properties"), "codes.properties"),
            StandardCharsets.UTF_8)) {
      own.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("codes.properties cannot be read", unreadable);
    }
    own.forEach((word, code) -> WORDS.put(folded(word.toString()), code.toString()));
    Method.vocabulary()
        .spellings()
        .forEach((word, method) -> WORDS.putIfAbsent("method." + folded(word), method.code()));
    Method.vocabulary()
        .all()
        .forEach(
            method -> WORDS.putIfAbsent("method." + folded(method.shortLabel()), method.code()));
  }

  /** Words that may stand beside the name of a method without changing it. */
  private static final Set<String> BESIDE =
      Set.of(
          "group",
          "technique",
          "method",
          "procedure",
          "treatment",
          "the",
          "with",
          "by",
          "using",
          "of",
          "a",
          "bone",
          "ilizarov",
          "patients",
          "cases",
          "arm",
          "only",
          "alone",
          "grafting",
          "reconstruction",
          "external",
          "frame",
          "ring",
          "circular",
          "autologous",
          "gruppe");

  private Codes() {}

  /**
   * The code that a text stands for in a column such as method, sex or bone; asked where unsure.
   */
  static List<Proposed> of(String text, Wanted wanted) {
    String plain = folded(Printed.plain(text));
    Optional<String> code = exact(wanted.base(), plain);
    if (code.isPresent()) {
      return List.of(Proposed.taken(wanted.base(), code.get(), Optional.empty()));
    }
    if (wanted.base().equals("method")) {
      return List.of(method(text, plain));
    }
    if (wanted.base().equals("bone")) {
      return List.of(bone(text, plain));
    }
    return List.of(
        Proposed.asked(
            wanted.base(),
            "",
            Optional.empty(),
            Doubt.WORD,
            "Found '" + text + "', which is no code of " + wanted.base() + ". Choose one."));
  }

  /** Whether a text names exactly one method of the vocabulary, with harmless words at most. */
  public static Optional<String> methodNamed(String text) {
    String plain = folded(Printed.plain(text));
    return exact("method", plain)
        .or(
            () ->
                Optional.of(method(text, plain))
                    .filter(one -> one.state() == Proposed.State.TAKEN)
                    .map(Proposed::text));
  }

  private static Optional<String> exact(String column, String plain) {
    String known = WORDS.get(column + "." + plain);
    if (known != null) {
      return Optional.of(known);
    }
    return switch (column) {
      case "design" -> Coded.parse(Design.class, plain).map(Coded::code);
      case "report_kind" -> Coded.parse(ReportKind.class, plain).map(Coded::code);
      case "consecutive" -> Coded.parse(YesOrNo.class, plain).map(Coded::code);
      default -> Optional.empty();
    };
  }

  private static Proposed method(String text, String plain) {
    String rest =
        " " + plain.replaceAll("\\(.*?\\)|\\[.*?\\]", " ").replaceAll("[,;:]", " ").strip() + " ";
    Set<String> found = new TreeSet<>();
    for (boolean more = true; more; ) {
      Optional<String> longest = longest(rest);
      more = longest.isPresent();
      if (more) {
        found.add(Objects.requireNonNull(WORDS.get("method." + longest.get()), "code"));
        rest = rest.replaceFirst(" " + java.util.regex.Pattern.quote(longest.get()) + " ", " | ");
      }
    }
    String left =
        rest.replace("|", " ").replaceAll("\\bn ?= ?\\d+|\\b[a-e]\\b|\\b\\d+\\b", " ").strip();
    boolean harmless =
        left.isEmpty()
            || Set.of(left.split("\\s+", -1)[0]).stream().allMatch(BESIDE::contains)
                && java.util.Arrays.stream(left.split("\\s+", -1)).allMatch(BESIDE::contains);
    if (found.size() == 1 && harmless) {
      return Proposed.taken("method", found.iterator().next(), Optional.empty());
    }
    String abbreviated = Optional.ofNullable(WORDS.get("short." + plain)).orElse("");
    return Proposed.asked(
        "method",
        found.size() == 1 ? found.iterator().next() : abbreviated,
        Optional.empty(),
        Doubt.WORD,
        found.size() > 1
            ? "Found '" + text + "', which names several methods. Choose the principal one."
            : "Found '" + text + "' as a method. Choose the method by which the group is counted.");
  }

  /** "Tibia, mid-shaft" names one bone; "tibia and femur" names two. */
  private static Proposed bone(String text, String plain) {
    Set<String> bones = new TreeSet<>();
    for (String word : plain.split("[^\\p{L}]+", -1)) {
      Optional.ofNullable(WORDS.get("bone." + word)).ifPresent(bones::add);
    }
    return bones.size() == 1
        ? Proposed.taken("bone", bones.iterator().next(), Optional.empty())
        : Proposed.asked(
            "bone",
            "",
            Optional.empty(),
            Doubt.WORD,
            "Found '" + text + "' where one bone is wanted. Choose one.");
  }

  /** A code of the AO/OTA compendium begins with two digits; words name the bone at most. */
  static List<Proposed> segment(String text) {
    String plain = Printed.plain(text).replaceAll("(?i)^(ao|ota|ao/ota)[ :-]*", "");
    return plain.matches("[1-9]\\d(?:[- ]?[A-Ca-c]\\d?.{0,6})?")
        ? List.of(Proposed.taken("segment", plain, Optional.empty()))
        : List.of(bone(text, folded(plain)));
  }

  private static Optional<String> longest(String text) {
    return WORDS.keySet().stream()
        .filter(word -> word.startsWith("method."))
        .map(word -> word.substring("method.".length()))
        .filter(word -> text.contains(" " + word + " "))
        .max(
            (a, b) ->
                a.length() != b.length()
                    ? Integer.compare(a.length(), b.length())
                    : a.compareTo(b));
  }

  private static String folded(String text) {
    return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_/-]+", " ");
  }
}
