package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.Tally;
import gapwise.evidence.vocabulary.Design;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Designs by the kinds that matter at a glance, in words. */
final class KindWords {
  private static final String NOT_STATED = "page.of-no-stated-design";

  /** Nearly every place has fewer studies of a kind. */
  private static final int FEW = 100;

  /** Few studies of each kind, worded once, for a map has some hundred places. */
  private static final Map<String, List<String>> WORDED =
      Stream.concat(Stream.of(Design.values()).map(KindWords::sentence), Stream.of(NOT_STATED))
          .distinct()
          .collect(
              Collectors.toUnmodifiableMap(
                  sentence -> sentence,
                  sentence ->
                      IntStream.range(0, FEW).mapToObj(count -> worded(sentence, count)).toList()));

  private KindWords() {}

  /** Such as "1 comparison", "2 series"; the best first. */
  static List<String> of(Tally tally) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    tally
        .designs()
        .forEach((design, studies) -> counts.merge(sentence(design), studies, Integer::sum));
    if (tally.designNotGiven() > 0) {
      counts.put(NOT_STATED, tally.designNotGiven());
    }
    List<String> kinds = new ArrayList<>();
    counts.forEach((sentence, studies) -> kinds.add(words(sentence, studies)));
    return List.copyOf(kinds);
  }

  private static String words(String sentence, int studies) {
    List<String> few = WORDED.getOrDefault(sentence, List.of());
    return studies < few.size() ? few.get(studies) : worded(sentence, studies);
  }

  private static String worded(String sentence, int studies) {
    return say(sentence, Map.of("studies", studies));
  }

  /** Name of the sentence that counts designs of the same kind. */
  private static String sentence(Design design) {
    return switch (design) {
      case RANDOMISED -> "page.randomised-trials";
      case QUASI_RANDOMISED -> "page.quasi-randomised-trials";
      case PROSPECTIVE_COMPARATIVE, RETROSPECTIVE_COMPARATIVE, CASE_CONTROL ->
          "page.comparative-studies";
      case PROSPECTIVE_SERIES, RETROSPECTIVE_SERIES, RETROSPECTIVE, SERIES -> "page.series";
      case CASE_REPORT -> "page.case-reports";
    };
  }
}
