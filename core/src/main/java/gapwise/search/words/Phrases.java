package gapwise.search.words;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
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
      Set.of("a", "an", "and", "at", "by", "for", "in", "of", "on", "or", "the", "to", "with");

  private static final Map<String, Meaning> MEANINGS = meanings();

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
    put(meanings, "infected", Kind.INFECTED, "yes");
    put(meanings, "septic", Kind.INFECTED, "yes");
    for (String phrase :
        List.of("uninfected", "not infected", "non infected", "noninfected", "aseptic", "clean")) {
      put(meanings, phrase, Kind.INFECTED, "no");
    }
    return Map.copyOf(meanings);
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
