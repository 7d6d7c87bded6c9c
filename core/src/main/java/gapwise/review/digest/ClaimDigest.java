package gapwise.review.digest;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answers;
import gapwise.claim.Compared;
import gapwise.claim.Part;
import gapwise.claim.Verdict;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Shown;
import gapwise.review.kept.DigestNumber;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** A claim examined, in short. */
public final class ClaimDigest {
  private ClaimDigest() {}

  /**
   * What came of a claim.
   *
   * @param answers of the same state, for the studies through which both methods are compared
   */
  public static Digested of(Verdict verdict, Answers answers) {
    if (verdict instanceof Verdict.Refused refused) {
      return new Digested(
          List.of(), List.of(new DigestNumber(say("review.answer"), refused.reason(), "", "")));
    }
    Verdict.Examined examined = (Verdict.Examined) verdict;
    List<SelectedRow> rows = examined.rows().selection().rows();
    List<DigestNumber> numbers = new ArrayList<>();
    numbers.add(new DigestNumber(say("review.answer"), examined.sentence(), "", ""));
    numbers.addAll(Digested.together(rows));
    examined
        .separate()
        .forEach(
            told ->
                numbers.add(
                    new DigestNumber(
                        told.heading().isBlank() ? say("review.answer") : told.heading(),
                        told.sentence(),
                        "",
                        told.rows().orElse(""))));
    Stream.concat(Stream.of(examined.direct(), examined.indirect()), examined.adjusted().stream())
        .forEach(part -> part.compared().ifPresent(one -> numbers.add(number(part, one))));
    List<SelectedRow> all = new ArrayList<>(rows);
    if (examined.indirect().compared().isPresent()) {
      all.addAll(through(examined, answers));
    }
    return new Digested(all, numbers);
  }

  private static DigestNumber number(Part part, Compared one) {
    return new DigestNumber(
        part.heading(),
        one.kind() + " " + one.value() + " (" + one.interval() + ")",
        "",
        say(
            "review.rests",
            Map.of(
                "studies",
                one.studies(),
                "patients",
                Shown.grouped(Long.toString(one.patients())))));
  }

  /** Rows of studies that hold several methods: these join methods in a network. */
  private static List<SelectedRow> through(Verdict.Examined examined, Answers answers) {
    List<SelectedRow> every =
        answers.select(examined.claim().every(examined.rows().selection())).byMethod().rows();
    Map<String, Set<Method>> methods = new HashMap<>();
    for (SelectedRow row : every) {
      methods
          .computeIfAbsent(row.study().id(), id -> new HashSet<>())
          .add(row.arm().method().principal());
    }
    return every.stream()
        .filter(row -> methods.getOrDefault(row.study().id(), Set.of()).size() > 1)
        .toList();
  }
}
