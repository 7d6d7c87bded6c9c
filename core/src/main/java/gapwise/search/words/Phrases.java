package gapwise.search.words;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.OutcomeFamily;
import gapwise.search.words.Reading.Kind;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Phrases with what they mean: the spellings of the vocabularies and the usual words beside them.
 */
final class Phrases {
  /** What a phrase means. Several codes of one kind are alternatives. */
  record Meaning(Kind kind, List<String> codes) {}

  /** What counts as one word, in a phrase and in what is typed. */
  static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}\\p{M}'\u2019.]+");

  private static final Pattern ACCENTS = Pattern.compile("\\p{M}+");
  private static final Pattern AMERICAN = Pattern.compile("(?<=\\w{3})iz(e[ds]?|ing|ation)\\b");
  private static final Pattern JOINS = Pattern.compile("[\\s_/\\-\u2010-\u2015]+");

  /** Words that join others; with a meaning of their own they stand in a longer phrase. */
  private static final Set<String> ASIDE =
      Set.of(
          "a",
          "after",
          "against",
          "an",
          "and",
          "are",
          "at",
          "between",
          "by",
          "compared",
          "do",
          "does",
          "find",
          "following",
          "for",
          "from",
          "how",
          "in",
          "into",
          "is",
          "many",
          "of",
          "on",
          "or",
          "show",
          "the",
          "to",
          "using",
          "v",
          "versus",
          "vs",
          "was",
          "were",
          "what",
          "when",
          "which",
          "with");

  /** A shorter word is too easily another one. */
  private static final int SHORTEST_MENDED = 5;

  /** From so many letters on, two may be wrong. */
  private static final int LONG_WORD = 9;

  private static final Map<String, Meaning> MEANINGS = meanings();

  /** Every word of the phrases. */
  private static final Set<String> WORDS =
      MEANINGS.keySet().stream()
          .flatMap(phrase -> WORD.matcher(phrase).results().map(MatchResult::group))
          .collect(Collectors.toUnmodifiableSet());

  /** Most words of the phrases that begin with a word. */
  private static final Map<String, Integer> LONGEST = longest();

  private Phrases() {}

  /** Most words of the phrases that begin with this word; 0 when none does. */
  static int longestFrom(String word) {
    String first = folded(word);
    int longest = LONGEST.getOrDefault(first, 0);
    return first.endsWith("s")
        ? Math.max(longest, LONGEST.getOrDefault(first.substring(0, first.length() - 1), 0))
        : longest;
  }

  private static Map<String, Integer> longest() {
    Map<String, Integer> longest = new HashMap<>();
    for (String phrase : MEANINGS.keySet()) {
      List<String> words = WORD.matcher(phrase).results().map(MatchResult::group).toList();
      longest.merge(words.get(0), words.size(), Math::max);
    }
    return Map.copyOf(longest);
  }

  /** What a phrase means; a plural is read as its singular. */
  static Optional<Meaning> meaning(String words) {
    String phrase = folded(words);
    Meaning exact = MEANINGS.get(phrase);
    if (exact == null && phrase.endsWith("s")) {
      return Optional.ofNullable(MEANINGS.get(phrase.substring(0, phrase.length() - 1)));
    }
    return Optional.ofNullable(exact);
  }

  /**
   * The one word of the phrases that a mistyped word most likely is: it begins with the same letter
   * and differs in one letter, or in two where it is long. Empty where it is a word of a phrase
   * itself, or where none or several are as near.
   */
  static Optional<String> mended(String word) {
    String sought = folded(word);
    if (sought.length() < SHORTEST_MENDED || WORDS.contains(sought) || isPlural(sought)) {
      return Optional.empty();
    }
    int most = sought.length() >= LONG_WORD ? 2 : 1;
    List<String> near =
        WORDS.stream()
            .filter(one -> one.length() >= SHORTEST_MENDED && one.charAt(0) == sought.charAt(0))
            .filter(one -> Math.abs(one.length() - sought.length()) <= most)
            .filter(one -> Nearest.distance(one, sought) <= most)
            .toList();
    return near.size() == 1 ? Optional.of(near.get(0)) : Optional.empty();
  }

  private static boolean isPlural(String word) {
    return word.endsWith("s") && WORDS.contains(word.substring(0, word.length() - 1));
  }

  static boolean isAside(String word) {
    return ASIDE.contains(folded(word));
  }

  private static String folded(String text) {
    String plain = ACCENTS.matcher(Normalizer.normalize(text, Normalizer.Form.NFD)).replaceAll("");
    String lower = JOINS.matcher(plain.strip().toLowerCase(Locale.ROOT)).replaceAll(" ");
    return AMERICAN.matcher(lower).replaceAll("is$1");
  }

  private static Map<String, Meaning> meanings() {
    Map<String, Meaning> meanings = new HashMap<>();
    Outcome.vocabulary()
        .spellings()
        .forEach((phrase, one) -> put(meanings, phrase, Kind.OUTCOME, one.code()));
    families(meanings);
    Method.vocabulary()
        .spellings()
        .forEach((phrase, one) -> put(meanings, phrase, Kind.METHOD, one.code()));
    Method.vocabulary()
        .all()
        .forEach(one -> put(meanings, one.shortLabel(), Kind.METHOD, one.code()));
    for (Design design : Design.values()) {
      put(meanings, design.label(), Kind.DESIGN, design.code());
      put(meanings, design.code(), Kind.DESIGN, design.code());
    }
    put(meanings, "randomised", Kind.DESIGN, Design.RANDOMISED.code());
    put(meanings, "rct", Kind.DESIGN, Design.RANDOMISED.code());
    put(meanings, "comparative", Kind.DESIGN, comparisons());
    put(meanings, "comparison", Kind.DESIGN, comparisons());
    bones(meanings);
    for (String word : List.of("multifocal", "multi focal", "multilevel", "multi level")) {
      put(
          meanings,
          word,
          Kind.DETAIL,
          "transport-levels:trifocal",
          "transport-levels:more-than-two");
    }
    put(meanings, "infected", Kind.INFECTED, "yes");
    put(meanings, "septic", Kind.INFECTED, "yes");
    for (String phrase :
        List.of("uninfected", "not infected", "non infected", "noninfected", "aseptic", "clean")) {
      put(meanings, phrase, Kind.INFECTED, "no");
    }
    return Map.copyOf(meanings);
  }

  /** The name of a family of outcomes means any of them, where no outcome has that name itself. */
  private static void families(Map<String, Meaning> meanings) {
    for (OutcomeFamily family : OutcomeFamily.all()) {
      meanings.putIfAbsent(folded(family.name()), new Meaning(Kind.OUTCOME, family.codes()));
    }
  }

  private static String[] comparisons() {
    return new String[] {
      Design.RANDOMISED.code(),
      Design.QUASI_RANDOMISED.code(),
      Design.PROSPECTIVE_COMPARATIVE.code(),
      Design.RETROSPECTIVE_COMPARATIVE.code(),
      Design.CASE_CONTROL.code()
    };
  }

  /** Bones, and their segments in the numbering of the AO Foundation and OTA (2018). */
  private static void bones(Map<String, Meaning> meanings) {
    bone(meanings, Bone.FEMUR, List.of("femur", "femoral", "thigh"), 31);
    bone(meanings, Bone.TIBIA, List.of("tibia", "tibial", "shin", "leg"), 41);
    for (String word : List.of("fibula", "fibular")) {
      put(meanings, word, Kind.BONE, Bone.FIBULA.code());
    }
    for (String word : List.of("foot", "foot and ankle", "hindfoot", "talus", "calcaneus")) {
      put(meanings, word, Kind.BONE, Bone.FOOT.code());
    }
    put(meanings, "ankle", Kind.BONE, Bone.ANKLE.code());
    put(meanings, "knee", Kind.BONE, Bone.KNEE.code());
    for (String word : List.of("malleolar", "malleolus")) {
      put(meanings, word, Kind.SEGMENT, "44");
    }
    put(meanings, "pilon", Kind.SEGMENT, "43");
    put(meanings, "tibial plateau", Kind.SEGMENT, "41");
  }

  private static void bone(
      Map<String, Meaning> meanings, Bone bone, List<String> words, int first) {
    List<List<String>> places =
        List.of(
            List.of("proximal", "upper"),
            List.of("shaft", "diaphysis", "diaphyseal", "midshaft", "mid shaft"),
            List.of("distal", "lower"));
    for (String word : words) {
      put(meanings, word, Kind.BONE, bone.code());
      for (int place = 0; place < places.size(); place++) {
        for (String where : places.get(place)) {
          String code = Integer.toString(first + place);
          put(meanings, where + " " + word, Kind.SEGMENT, code);
          put(meanings, word + " " + where, Kind.SEGMENT, code);
        }
      }
    }
  }

  /** Methods outrank outcomes: what is put last stays. */
  private static void put(
      Map<String, Meaning> meanings, String phrase, Kind kind, String... codes) {
    meanings.put(folded(phrase), new Meaning(kind, List.of(codes)));
  }
}
