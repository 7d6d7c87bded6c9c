package gapwise.server.page.screening;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.screening.Choice;
import gapwise.screening.Protocol;
import gapwise.screening.Reader;
import gapwise.screening.Ruling;
import gapwise.screening.Stage;
import gapwise.screening.Vote;
import gapwise.server.account.Actor;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * What people send while they screen, read into choices; whatever is wrong is said in words.
 *
 * @param field the first value of a field, blank where it was not sent
 * @param protocol whose reasons may be named
 */
record ScreeningForm(UnaryOperator<String> field, Protocol protocol) {
  private static final int LONGEST_WHY = 500;

  /**
   * Who screens; empty where nobody is named yet. Whoever has signed in screens in no other name,
   * so that nobody sees what another chose.
   */
  static Optional<Reader> reader(String typed) {
    Optional<String> signedIn = Actor.now().name();
    if (signedIn.isPresent()) {
      return Reader.of(signedIn.get());
    }
    if (typed.isBlank()) {
      return Optional.empty();
    }
    Optional<Reader> reader = Reader.of(typed);
    if (reader.isEmpty()) {
      throw wrong("who", "not-a-name", say("screening.not-a-name", Map.of("most", Reader.LONGEST)));
    }
    return reader;
  }

  /** The stage of an address; the first where none is named. */
  static Stage stage(String typed) {
    return typed.isBlank()
        ? Stage.TITLE
        : Stage.find(typed)
            .orElseThrow(() -> wrong("stage", "unknown-stage", say("screening.unknown-stage")));
  }

  /** What one person chose. */
  Vote vote(String reference, Instant now) {
    Stage stage = stage(field.apply("stage"));
    Choice choice = choice(stage);
    return new Vote(reference, stage, required("who"), choice, reason(stage, choice), now);
  }

  /** What was settled. */
  Ruling ruling(String reference, Instant now) {
    Stage stage = stage(field.apply("stage"));
    Choice choice = choice(stage);
    if (choice == Choice.UNSURE) {
      throw wrong("choose", "unknown-choice", say("screening.unknown-choice"));
    }
    String why = field.apply("why").strip();
    if (why.isEmpty() || why.length() > LONGEST_WHY) {
      throw wrong("why", "missing-value", say("screening.why", Map.of("most", LONGEST_WHY)));
    }
    return new Ruling(reference, stage, choice, reason(stage, choice), required("who"), why, now);
  }

  Reader required(String name) {
    return reader(field.apply(name))
        .orElseThrow(() -> wrong(name, "missing-value", say("screening.who")));
  }

  /**
   * A choice, with its reason behind it: "keep", or "exclude Not after an injury". The words of the
   * reason are sent and not its place, since the team may change its reasons meanwhile.
   */
  private Choice choice(Stage stage) {
    return Choice.find(field.apply("choose").strip().split(" ")[0])
        .filter(stage::offers)
        .orElseThrow(() -> wrong("choose", "unknown-choice", say("screening.unknown-choice")));
  }

  private Optional<String> reason(Stage stage, Choice choice) {
    if (choice != Choice.EXCLUDE || !stage.asksReason()) {
      return Optional.empty();
    }
    String reason = field.apply("choose").strip().substring(choice.code().length()).strip();
    if (!protocol.reasons().contains(reason)) {
      throw wrong("choose", "missing-reason", say("screening.reason"));
    }
    return Optional.of(reason);
  }

  /** What a team agreed on, one reason or word a line. */
  Protocol newProtocol() {
    Problems problems = new Problems();
    List<String> reasons = lines("reasons", Protocol.MOST_REASONS, problems);
    List<String> wordsFor = lines("for", Protocol.MOST_WORDS, problems);
    List<String> against = lines("against", Protocol.MOST_WORDS, problems);
    String question = field.apply("question").strip();
    if (question.length() > Protocol.LONGEST_QUESTION) {
      problems.add(
          "question",
          "too-long",
          say("screening.long-question", Map.of("most", Protocol.LONGEST_QUESTION)));
    }
    if (reasons.isEmpty()) {
      problems.add("reasons", "missing-value", say("screening.no-reasons"));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new Protocol(question, reasons, wordsFor, against);
  }

  private List<String> lines(String name, int most, Problems problems) {
    List<String> lines =
        Arrays.stream(field.apply(name).split("\\R"))
            .map(String::strip)
            .filter(line -> !line.isEmpty())
            .distinct()
            .toList();
    if (lines.size() > most) {
      problems.add(name, "too-many", say("screening.too-many-lines", Map.of("most", most)));
    }
    for (String line : lines) {
      if (line.length() > Protocol.LONGEST) {
        problems.add(
            name,
            "too-long",
            say(
                "screening.long-line",
                Map.of("line", line.substring(0, 40) + "\u2026", "most", Protocol.LONGEST)));
      }
    }
    return problems.isEmpty() ? lines : List.of();
  }

  static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
