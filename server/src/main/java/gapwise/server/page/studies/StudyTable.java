package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.wording.Defects;
import gapwise.wording.Fact;
import gapwise.wording.Facts;
import gapwise.wording.Pictures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The groups of one study side by side: a column each, a row for each thing that is recorded of
 * them and for each outcome.
 *
 * @param groups its arms
 * @param facts what is recorded of the arms
 * @param outcomes the reported numbers
 */
public record StudyTable(List<Group> groups, List<FactRow> facts, List<OutcomeRow> outcomes) {
  private static final double REACH_CENTIMETRES = 15;

  public StudyTable {
    groups = List.copyOf(groups);
    facts = List.copyOf(facts);
    outcomes = List.copyOf(outcomes);
  }

  /** What a narrow screen, where columns stand below each other, calls a column. */
  public String head(Group group) {
    return groups.size() == 1 ? "" : group.name();
  }

  /** What is recorded of one group. */
  public String words(FactRow fact, Group group) {
    return fact.words().get(groups.indexOf(group));
  }

  /**
   * One group of patients.
   *
   * @param span its missing bone drawn; empty text where no number is known to draw it by
   * @param spanWords the same in words
   * @param silent whether no missing bone is reported
   */
  public record Group(String name, Method method, String span, String spanWords, boolean silent) {}

  /**
   * One recorded thing.
   *
   * @param meaning what the line means and how papers differ; empty where it says that itself
   * @param words for each group in order; empty where nothing is recorded
   */
  public record FactRow(String name, Optional<String> meaning, List<String> words) {
    public FactRow {
      words = List.copyOf(words);
    }
  }

  /** The table of a study. */
  static StudyTable of(Study study) {
    return new StudyTable(
        study.arms().stream().map(arm -> group(study, arm)).toList(),
        facts(study.arms()),
        OutcomeRow.of(study));
  }

  private static Group group(Study study, Arm arm) {
    Optional<ArmDefect> defect = ArmDefect.of(study, arm);
    return new Group(
        arm.label()
            .map(label -> say("studies.group", Map.of("id", arm.id(), "label", label)))
            .orElse(study.arms().size() == 1 ? say("studies.only-group") : arm.id()),
        arm.method().principal(),
        Defects.isDrawn(defect) ? Pictures.span(defect, REACH_CENTIMETRES) : "",
        defect.map(Defects::words).orElseGet(() -> say("studies.bone-of-group-not-reported")),
        defect.isEmpty());
  }

  /** Facts of the same name in one row; names in the order in which they first come. */
  private static List<FactRow> facts(List<Arm> arms) {
    Map<String, Map<Integer, String>> byName = new LinkedHashMap<>();
    for (int column = 0; column < arms.size(); column++) {
      for (Fact fact : Facts.of(arms.get(column))) {
        byName
            .computeIfAbsent(fact.name(), name -> new LinkedHashMap<>())
            .merge(column, fact.words(), (one, other) -> one + "; " + other);
      }
    }
    List<FactRow> rows = new ArrayList<>();
    byName.forEach(
        (name, words) -> {
          List<String> cells = new ArrayList<>();
          for (int column = 0; column < arms.size(); column++) {
            cells.add(words.getOrDefault(column, ""));
          }
          rows.add(new FactRow(name, FactMeanings.of(name), cells));
        });
    return rows;
  }
}
