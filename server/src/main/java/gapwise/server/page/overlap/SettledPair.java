package gapwise.server.page.overlap;

import static gapwise.sentence.Sentences.say;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.CohortDecision.Settled;
import gapwise.cohort.Proposal;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.job.PostedForm;
import io.javalin.http.ConflictResponse;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** What a person settles of two records, as the form sends it. */
final class SettledPair {
  private static final int LONGEST_NAME = 80;
  private static final int LONGEST_REASON = 500;

  private static final Map<String, Settled> WORDS =
      Map.of(
          "same", Settled.SAME,
          "overlapping", Settled.OVERLAPPING,
          "separate", Settled.SEPARATE,
          "not-known", Settled.NOT_KNOWN);

  private SettledPair() {}

  /**
   * Reads a form.
   *
   * @param proposals those that are left to ask
   * @throws ConflictResponse where the pair is none of these, or not as it was shown
   * @throws WrongInputException where something is missing
   */
  static CohortDecision read(PostedForm form, List<Proposal> proposals, Instant now) {
    Proposal proposal =
        proposals.stream()
            .filter(one -> one.first().toString().equals(form.first("first")))
            .filter(one -> one.second().toString().equals(form.first("second")))
            .filter(one -> one.stoodOn().equals(form.first("stood-on")))
            .findFirst()
            .orElseThrow(() -> new ConflictResponse(say("overlap.changed")));
    Problems problems = new Problems();
    String who = words(form, "who", LONGEST_NAME, problems);
    String reason = words(form, "why", LONGEST_REASON, problems);
    Optional<Settled> settled = Optional.ofNullable(WORDS.get(form.first("settled")));
    if (settled.isEmpty()) {
      problems.add("settled", "missing-value", say("overlap.choose"));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new CohortDecision(
        proposal.first().toString(),
        proposal.second().toString(),
        settled.orElseThrow(),
        reason,
        who,
        now,
        settled.get() == Settled.SAME ? counted(form, proposal) : Optional.empty(),
        settled.get() == Settled.OVERLAPPING ? suppliers(form, proposal) : new TreeMap<>(),
        proposal.stoodOn());
  }

  private static String words(PostedForm form, String name, int longest, Problems problems) {
    String words = form.first(name);
    if (words.isBlank() || words.length() > longest) {
      problems.add(name, "missing-value", say("overlap.words", Map.of("most", longest)));
    }
    return words;
  }

  private static Optional<String> named(PostedForm form, String name, Proposal proposal) {
    return switch (form.first(name)) {
      case "first" -> Optional.of(proposal.first().toString());
      case "second" -> Optional.of(proposal.second().toString());
      default -> Optional.empty();
    };
  }

  private static Optional<String> counted(PostedForm form, Proposal proposal) {
    return named(form, "counted", proposal);
  }

  private static SortedMap<String, String> suppliers(PostedForm form, Proposal proposal) {
    SortedMap<String, String> suppliers = new TreeMap<>();
    for (Outcome outcome : Outcome.vocabulary().all()) {
      named(form, "supplies." + outcome.code(), proposal)
          .ifPresent(side -> suppliers.put(outcome.code(), side));
    }
    return suppliers;
  }
}
