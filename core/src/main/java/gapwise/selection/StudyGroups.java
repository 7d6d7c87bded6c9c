package gapwise.selection;

import gapwise.evidence.Scope;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The arms of one study that may answer a question, and all of them as one where the paper gives a
 * value for them together. That value speaks for patients of every arm, so it is taken only where
 * every arm was asked for, and never beside a value of one of them.
 *
 * @param arms one after another
 * @param together all as one; empty where not all were asked for, or the paper has no such value
 */
record StudyGroups(List<Sorted> arms, Optional<Sorted> together) {
  StudyGroups {
    arms = List.copyOf(arms);
  }

  /** The rows of a study, and what did not enter. */
  record Chosen(List<SelectedRow> rows, List<LeftOut> leftOut) {}

  /** Arms by study, in their order. */
  static List<StudyGroups> of(Question question, List<Sorted> sorted) {
    Map<String, List<Sorted>> byStudy = new LinkedHashMap<>();
    for (Sorted one : sorted) {
      byStudy.computeIfAbsent(one.arm().study().id(), id -> new ArrayList<>()).add(one);
    }
    return byStudy.values().stream()
        .map(arms -> new StudyGroups(arms, together(question, arms)))
        .toList();
  }

  private static Optional<Sorted> together(Question question, List<Sorted> arms) {
    ArmCase first = arms.get(0).arm();
    boolean every = first.study().arms().size() > 1 && arms.size() == first.study().arms().size();
    return every && first.study().outcomes().stream().anyMatch(one -> isOfAll(one.scope()))
        ? Optional.of(Sorted.of(question, first.allGroups()))
        : Optional.empty();
  }

  private static boolean isOfAll(Scope scope) {
    return scope instanceof Scope.AllArms;
  }

  /** The arms, and all of them as one. */
  Stream<Sorted> all() {
    return Stream.concat(arms.stream(), together.stream());
  }

  Chosen choose(Question question, Clocks clocks, Currencies currencies, CountForms forms) {
    List<SelectedRow> rows = new ArrayList<>();
    List<LeftOut> leftOut = new ArrayList<>();
    for (Sorted one : arms) {
      ArmChoice choice = new ArmChoice(question, clocks, currencies, forms, one.arm());
      one.choose(choice).ifPresent(rows::add);
      leftOut.addAll(choice.leftOut());
    }
    if (!rows.isEmpty() || together.isEmpty()) {
      return new Chosen(rows, leftOut);
    }
    ArmChoice choice = new ArmChoice(question, clocks, currencies, forms, together.get().arm());
    Optional<SelectedRow> row = together.get().choose(choice);
    leftOut.addAll(choice.leftOut());
    if (row.isPresent()) {
      // It is among the rows, so it is no longer missing from each of the arms.
      leftOut.removeIf(one -> one.reason() instanceof Reason.ValueOfAllArms);
      rows.add(row.get());
    }
    return new Chosen(rows, leftOut);
  }
}
