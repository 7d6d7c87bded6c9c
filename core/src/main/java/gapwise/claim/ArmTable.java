package gapwise.claim;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.RowValue;
import gapwise.analysis.rows.SelectionRows;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.QuestionJson;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Studies that hold several methods, as rows of a plan: the arms one by one, or two of them side by
 * side. Numbers are those that the evidence base gives for each arm.
 *
 * @param studies arms by study, each method once
 * @param twice labels of studies left out because one method stands in them twice
 */
record ArmTable(List<StudyArms> studies, List<String> twice) {
  /** Cells that are numbers of an arm. */
  private static final Set<String> NUMBERS =
      Set.of(
          "events", "total", "n", "mean", "sd", "median", "q1", "q3", "min", "max", "personTime");

  /** The arms of one study by method, with their cells. */
  record StudyArms(Study study, String label, Map<Method, Map<String, RowValue>> cells) {
    StudyArms {
      cells = new LinkedHashMap<>(cells);
    }

    /** Patients or limbs of all its arms, as far as they are counted. */
    double patients() {
      return cells.values().stream()
          .mapToDouble(
              arm ->
                  Stream.of("total", "n", "personTime")
                      .filter(arm::containsKey)
                      .map(arm::get)
                      .mapToDouble(count -> count.number().orElse(0))
                      .findFirst()
                      .orElse(0))
          .sum();
    }

    /** Whether it joins methods of a piece, and not the two of a claim alone. */
    boolean isThrough(Claim claim, List<String> piece) {
      List<String> own = cells.keySet().stream().map(Method::code).filter(piece::contains).toList();
      boolean onlyBoth =
          own.size() == 2
              && own.contains(claim.a().method().code())
              && own.contains(claim.b().method().code());
      return own.size() > 1 && !onlyBoth;
    }
  }

  ArmTable {
    studies = List.copyOf(studies);
    twice = List.copyOf(twice);
  }

  /** The studies of a selection that hold two methods or more. */
  static ArmTable of(Selection selection) {
    if (selection.rows().isEmpty()) {
      return new ArmTable(List.of(), List.of());
    }
    List<Map<String, RowValue>> cells =
        new SelectionRows(question -> selection)
            .rows(
                QuestionJson.write(selection.question()),
                SelectionRows.measure(selection.settled()))
            .rows();
    Map<String, List<Integer>> byStudy = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      String id = selection.rows().get(i).study().id();
      byStudy.computeIfAbsent(id, study -> new ArrayList<>()).add(i);
    }
    List<StudyArms> studies = new ArrayList<>();
    List<String> twice = new ArrayList<>();
    byStudy.forEach(
        (id, places) -> {
          Map<Method, Map<String, RowValue>> arms = new LinkedHashMap<>();
          for (int place : places) {
            arms.put(method(selection.rows().get(place)), cells.get(place));
          }
          SelectedRow first = selection.rows().get(places.get(0));
          String label = first.studyName();
          if (arms.size() > 1 && arms.size() == places.size()) {
            studies.add(new StudyArms(first.study(), label, arms));
          } else if (arms.size() > 1) {
            twice.add(label);
          }
        });
    return new ArmTable(studies, twice);
  }

  /**
   * Whether two methods are joined by studies that do not hold them both alone, which costs nothing
   * to know before a network is worked out.
   */
  boolean joinsThroughOthers(Method one, Method other) {
    Set<Method> reached = new HashSet<>(Set.of(one));
    boolean grown = true;
    while (grown && !reached.contains(other)) {
      grown = false;
      for (StudyArms study : studies) {
        Set<Method> held = study.cells().keySet();
        boolean alone = held.equals(Set.of(one, other));
        if (!alone && held.stream().anyMatch(reached::contains)) {
          grown |= reached.addAll(held);
        }
      }
    }
    return reached.contains(other);
  }

  private static Method method(SelectedRow row) {
    return row.arm().method().principal();
  }

  /** One row a study: the first method as the intervention, the second as the comparator. */
  ArrayNode pairs(Method intervention, Method comparator) {
    ArrayNode rows = JsonNodeFactory.instance.arrayNode();
    for (StudyArms study : studies) {
      if (study.cells().containsKey(intervention) && study.cells().containsKey(comparator)) {
        ObjectNode row = named(rows, study);
        numbers(row, "intervention.", study.cells().get(intervention));
        numbers(row, "comparator.", study.cells().get(comparator));
      }
    }
    return rows;
  }

  /** The study of an id, if it holds several methods. */
  Optional<Study> study(String id) {
    return studies.stream().map(StudyArms::study).filter(one -> one.id().equals(id)).findFirst();
  }

  /** One row an arm. */
  ArrayNode arms() {
    ArrayNode rows = JsonNodeFactory.instance.arrayNode();
    for (StudyArms study : studies) {
      study
          .cells()
          .forEach(
              (method, cells) -> {
                ObjectNode row = named(rows, study);
                row.put("treatment", method.code());
                numbers(row, "", cells);
              });
    }
    return rows;
  }

  private static ObjectNode named(ArrayNode rows, StudyArms study) {
    return rows.addObject().put("study", study.label()).put(DataTable.STUDY_ID, study.study().id());
  }

  private static void numbers(ObjectNode row, String before, Map<String, RowValue> cells) {
    new TreeMap<>(cells)
        .forEach(
            (role, value) -> {
              if (NUMBERS.contains(role)) {
                row.put(before + role, value.number().orElseThrow());
              }
            });
  }
}
