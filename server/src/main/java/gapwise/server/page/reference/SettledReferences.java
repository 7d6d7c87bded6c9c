package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.reference.kept.ReferenceDecision.Settled;
import gapwise.server.job.PostedForm;
import io.javalin.http.ConflictResponse;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/** What a person settles of two references, as the form sends it. */
final class SettledReferences {
  private static final int LONGEST_NAME = 80;
  private static final int LONGEST_REASON = 500;

  private static final Map<String, Settled> WORDS =
      Map.of("same", Settled.SAME, "related", Settled.RELATED, "different", Settled.DIFFERENT);

  /** What two say now, by their names. */
  interface StoodOn {
    Optional<String> of(String one, String other);
  }

  private SettledReferences() {}

  /**
   * What stands for a pair behind the word that settles it; a study, which may have blanks, last.
   */
  static String value(String stoodOn, String first, String second) {
    return stoodOn + " " + first + " " + second;
  }

  /**
   * Reads a form.
   *
   * @param stoodOn what two say now
   * @throws ConflictResponse where one of the two has changed since it was shown
   * @throws WrongInputException where something is missing
   */
  static ReferenceDecision read(PostedForm form, StoodOn stoodOn, Instant now) {
    String[] parts = form.first("settle").split(" ", 4);
    Problems problems = new Problems();
    String who = words(form, "who", LONGEST_NAME, problems);
    String reason = words(form, "why", LONGEST_REASON, problems);
    Optional<Settled> settled = Optional.ofNullable(WORDS.get(parts[0]));
    if (settled.isEmpty() || parts.length < 4) {
      problems.add("settle", "missing-value", say("references.choose"));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Optional<String> stands = stoodOn.of(parts[2], parts[3]);
    if (!stands.equals(Optional.of(parts[1]))) {
      throw new ConflictResponse(say("references.changed"));
    }
    try {
      return new ReferenceDecision(
          parts[2], parts[3], settled.orElseThrow(), reason, who, now, parts[1]);
    } catch (IllegalArgumentException unordered) {
      throw new ConflictResponse(say("references.changed"));
    }
  }

  private static String words(PostedForm form, String name, int longest, Problems problems) {
    String words = form.first(name);
    if (words.isBlank() || words.length() > longest) {
      problems.add(name, "missing-value", say("references.words", Map.of("most", longest)));
    }
    return words;
  }
}
