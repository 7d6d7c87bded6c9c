package gapwise.reference.pair;

import gapwise.reference.likeness.TitleWords;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Parts of one work, and reports for several years, which are papers of their own. */
final class SerialParts {
  /** Before the number of a part, in the languages that titles of the field are in. */
  private static final Set<String> MARKERS =
      Set.of(
          "part",
          "pt",
          "teil",
          "partie",
          "parte",
          "deel",
          "del",
          "chapter",
          "paper",
          "report",
          "communication",
          "no",
          "number",
          "series");

  private SerialParts() {}

  /** Whether both titles name a part, or years, and not the same. */
  static boolean are(TitleWords one, TitleWords two) {
    Optional<String> first = part(one);
    Optional<String> second = part(two);
    if (first.isPresent() && second.isPresent() && !first.equals(second)) {
      return true;
    }
    Set<String> years = years(one.words());
    Set<String> otherYears = years(two.words());
    return !years.isEmpty() && !otherYears.isEmpty() && !years.equals(otherYears);
  }

  private static Optional<String> part(TitleWords title) {
    List<String> words = title.words();
    for (int at = 1; at < words.size(); at++) {
      boolean marked =
          MARKERS.contains(words.get(at - 1))
              || (at == title.mainWords() && title.printed().get(at).matches("[ivx]{1,4}"));
      if (marked && isPart(words.get(at))) {
        return Optional.of(words.get(at).replace("i", "1").replace("v", "5").replace("x", "10"));
      }
    }
    return Optional.empty();
  }

  private static boolean isPart(String word) {
    return word.matches("\\d{1,2}|[a-d]|i|v|x");
  }

  private static Set<String> years(List<String> words) {
    Set<String> years = new TreeSet<>();
    words.stream().filter(word -> word.matches("(?:19|20)\\d\\d")).forEach(years::add);
    return years;
  }
}
