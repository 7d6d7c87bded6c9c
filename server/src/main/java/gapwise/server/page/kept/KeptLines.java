package gapwise.server.page.kept;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.review.kept.EvidenceState;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.KeptVersion;
import gapwise.review.kept.Moved;
import gapwise.server.address.PagePaths;
import gapwise.server.kept.KeptAnswers;
import gapwise.server.kept.KeptPlace;
import gapwise.server.page.part.Fetching;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Tells of kept questions how they stand.
 *
 * @param answers the answers in the state that is shown
 */
record KeptLines(KeptAnswers answers) {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  /**
   * The line of a question.
   *
   * @param way how much is worked out for it now
   * @param part path that gives what is still to be worked out
   */
  KeptView.Line line(KeptVersion version, Fetching.Way way, String part) {
    KeptQuestion question = version.question();
    String more = PagePaths.KEPT + "/" + question.id();
    Optional<KeptPlace> place = KeptPlace.find(question.page());
    return new KeptView.Line(
        question.id(),
        question.title(),
        place.map(one -> opened(question)).orElse(more),
        place.map(KeptPlace::label).orElse(question.page()),
        taken(version),
        standing(question, way, new Fetching(more + part, more + "?whole=yes")),
        more);
  }

  /** The page of a question, which then says from where it was opened. */
  private static String opened(KeptQuestion question) {
    return question.address()
        + (question.query().isEmpty() ? "?" : "&")
        + KeptPlace.KEPT
        + "="
        + question.id();
  }

  /** Who took an answer, when and why. */
  static String taken(KeptVersion version) {
    return say(
        "kept.taken",
        Map.of(
            "when",
            DAY.format(version.when()),
            "who",
            version.who(),
            "evidence",
            evidence(version.question().digest().state()),
            "why",
            version.why()));
  }

  /** By its day, which people know it by; its number finds it again. */
  private static String evidence(EvidenceState state) {
    String change = Long.toString(state.change());
    return state
        .when()
        .map(when -> say("kept.evidence-of", Map.of("date", DAY.format(when), "change", change)))
        .orElseGet(() -> say("kept.evidence", Map.of("change", change)));
  }

  private KeptView.Standing standing(KeptQuestion question, Fetching.Way way, Fetching fetching) {
    try {
      if (answers.isKnown(question) || way.shows(answers.pieces(KeptAnswers.Asked.of(question)))) {
        return known(answers.moved(question));
      }
      return new KeptView.Working(fetching);
    } catch (WrongInputException wrong) {
      return new KeptView.Lost(
          say(
              "kept.not-answered",
              Map.of(
                  "why",
                  wrong.problems().stream()
                      .map(Problem::message)
                      .collect(Collectors.joining(" ")))));
    }
  }

  private static KeptView.Known known(Moved moved) {
    return new KeptView.Known(moved.mark().code(), moved.mark().label(), words(moved));
  }

  /** What moved, counted. */
  static String words(Moved moved) {
    int studies = moved.came().size() + moved.went().size() + moved.changed().size();
    return moved.mark() == Moved.Mark.AS_IT_WAS
        ? say("kept.nothing-moved")
        : say("kept.moved", Map.of("studies", studies, "numbers", moved.numbers().size()));
  }
}
