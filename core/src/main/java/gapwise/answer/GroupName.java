package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.PoolingPlan;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What names the series that an answer pools by themselves: their method, or, where an answer is
 * split by a detail, the word that they state of it.
 *
 * @param method what was done to all of them
 * @param split the detail that the answer is split by; empty where it is by method
 * @param word the word stated of it; empty where none is stated, or the answer is not split
 */
public record GroupName(Method method, Optional<DetailKind> split, Optional<MethodDetail> word) {
  public GroupName {
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(split, "split");
    Objects.requireNonNull(word, "word");
    if (word.isPresent() && !word.map(MethodDetail::kind).equals(split)) {
      throw new IllegalArgumentException(word + " is no word of " + split);
    }
  }

  /** A method by itself. */
  public static GroupName of(Method method) {
    return new GroupName(method, Optional.empty(), Optional.empty());
  }

  /** Where a row belongs. */
  static GroupName of(SelectedRow row, Method method, Optional<DetailKind> split) {
    return new GroupName(
        method,
        split,
        row.isOfSeveralMethods()
            ? Optional.empty()
            : row.arm().listedDetails().stream()
                .filter(one -> Optional.of(one.kind()).equals(split))
                .findFirst());
  }

  /** The words of a detail in the order of the vocabulary, and silence. */
  static List<GroupName> all(Method method, DetailKind split) {
    List<GroupName> all = new ArrayList<>();
    MethodDetail.all().stream()
        .filter(one -> one.kind().equals(split))
        .forEach(one -> all.add(new GroupName(method, Optional.of(split), Optional.of(one))));
    all.add(new GroupName(method, Optional.of(split), Optional.empty()));
    return all;
  }

  /** The detail whose groups a plan pools; empty where its groups are others. */
  static Optional<DetailKind> split(String column) {
    return DetailKind.ofMethods().find(column).filter(kind -> !kind.values().isEmpty());
  }

  /** How a result names the group. */
  String level() {
    return split.isEmpty()
        ? method.code()
        : word.map(MethodDetail::word).orElse(PoolingPlan.Groups.NOT_STATED);
  }

  /** How the search counts groups like these; empty for silence, which it does not count. */
  public Optional<String> facetCode() {
    return split.isEmpty() ? Optional.of(method.code()) : word.map(Coded::code);
  }

  /** The method, or the detail with its word, such as "Levels of transport: trifocal". */
  public String label() {
    return split.map(this::ofDetail).orElseGet(method::label);
  }

  /** The same where room is short. */
  public String shortLabel() {
    return split.map(this::ofDetail).orElseGet(method::shortLabel);
  }

  /** The word alone under a heading that names the detail; the method where it is not split. */
  public String name() {
    return split.isEmpty() ? method.label() : level();
  }

  private String ofDetail(DetailKind kind) {
    return say("answer.word-of-detail", Map.of("detail", kind.heading(), "word", level()));
  }
}
