package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.Tally;
import gapwise.evidence.vocabulary.Design;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Designs by the kinds that matter at a glance.
 *
 * @param words such as "1 comparison", "2 series"; the best first
 * @param compare whether a study compares groups of its own, by its design
 * @param onlySeries whether all are series
 */
public record Kinds(List<String> words, boolean compare, boolean onlySeries) {
  /** Nothing. */
  static final Kinds NONE = new Kinds(List.of(), false, false);

  /** Nearly every place has fewer studies of a kind. */
  private static final int FEW = 100;

  public Kinds {
    words = List.copyOf(words);
  }

  /** The kinds, the best first; those down to comparisons have groups of their own to compare. */
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

  /** The kinds of what is recorded. */
  static Kinds of(Tally tally) {
    int[] studies = new int[KINDS.size()];
    tally.designs().forEach((design, count) -> studies[Kind.of(design).ordinal()] += count);
    studies[Kind.NOT_STATED.ordinal()] = tally.designNotGiven();
    List<String> words = new ArrayList<>(2);
    boolean compare = false;
    for (Kind kind : KINDS) {
      int ofKind = studies[kind.ordinal()];
      if (ofKind > 0) {
        words.add(kind.words(ofKind));
        compare |= kind.compareTo(Kind.COMPARATIVE) <= 0;
      }
    }
    return new Kinds(words, compare, words.size() == 1 && studies[Kind.SERIES.ordinal()] > 0);
  }

  /** Such as "1 comparison"; empty where nothing is recorded. */
  public String best() {
    return words.isEmpty() ? "" : words.get(0);
  }

  /** Those after the best, such as "2 series, 1 case report". */
  public String others() {
    return words.size() < 2 ? "" : String.join(", ", words.subList(1, words.size()));
  }
}
