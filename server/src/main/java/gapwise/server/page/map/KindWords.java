package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.Tally;
import gapwise.evidence.vocabulary.Design;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Designs by the kinds that matter at a glance, in words. */
final class KindWords {
  /** Nearly every place has fewer studies of a kind. */
  private static final int FEW = 100;

  private KindWords() {}

  /** The kinds, the best first. */
  private enum Kind {
    RANDOMISED("page.randomised-trials"),
    QUASI_RANDOMISED("page.quasi-randomised-trials"),
    COMPARATIVE("page.comparative-studies"),
    SERIES("page.series"),
    CASE_REPORT("page.case-reports"),
    NOT_STATED("page.of-no-stated-design");

    private final String sentence;

    /** Few studies of it, worded once, for a map has some hundred places. */
    private final List<String> few;

    Kind(String sentence) {
      this.sentence = sentence;
      this.few = IntStream.range(0, FEW).mapToObj(this::worded).toList();
    }

    String words(int studies) {
      return studies < FEW ? few.get(studies) : worded(studies);
    }

    private String worded(int studies) {
      return say(sentence, Map.of("studies", studies));
    }

    static Kind of(Design design) {
      return switch (design) {
        case RANDOMISED -> RANDOMISED;
        case QUASI_RANDOMISED -> QUASI_RANDOMISED;
        case PROSPECTIVE_COMPARATIVE, RETROSPECTIVE_COMPARATIVE, CASE_CONTROL -> COMPARATIVE;
        case PROSPECTIVE_SERIES, RETROSPECTIVE_SERIES, RETROSPECTIVE, SERIES -> SERIES;
        case CASE_REPORT -> CASE_REPORT;
      };
    }
  }

  private static final List<Kind> KINDS = List.of(Kind.values());

  /** Such as "1 comparison", "2 series"; the best first. */
  static List<String> of(Tally tally) {
    int[] studies = new int[KINDS.size()];
    tally.designs().forEach((design, count) -> studies[Kind.of(design).ordinal()] += count);
    studies[Kind.NOT_STATED.ordinal()] = tally.designNotGiven();
    List<String> words = new ArrayList<>(2);
    for (Kind kind : KINDS) {
      if (studies[kind.ordinal()] > 0) {
        words.add(kind.words(studies[kind.ordinal()]));
      }
    }
    return words;
  }
}
