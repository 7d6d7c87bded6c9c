package gapwise.exchange;

import gapwise.evidence.Appraisal;
import gapwise.evidence.unit.Day;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rows of one appraisal: one study, one instrument, one matter. */
final class AppraisalDraft {
  private final Map<String, StudyDraft.Placed<Appraisal>> rows = new LinkedHashMap<>();

  /** Keeps the row of an item, unless one is there already, which is then given back. */
  Optional<StudyDraft.Placed<Appraisal>> put(String item, StudyDraft.Placed<Appraisal> row) {
    return Optional.ofNullable(rows.putIfAbsent(item, row));
  }

  /** Where the appraisal stands: at its judgement on the whole, else at its first row. */
  int row() {
    StudyDraft.Placed<Appraisal> whole = rows.get(AppraisalSheet.OVERALL);
    return whole == null ? rows.values().iterator().next().row() : whole.row();
  }

  /** The appraisal out of its rows. */
  Appraisal build() {
    List<Appraisal> parts = rows.values().stream().flatMap(row -> row.value().stream()).toList();
    Appraisal first = parts.get(0);
    List<Appraisal.Answer> answers = new ArrayList<>();
    parts.forEach(part -> answers.addAll(part.answers()));
    return new Appraisal(
        first.instrument(),
        first.version(),
        first.outcome(),
        first.comparison(),
        answers,
        parts.stream().flatMap(part -> part.overall().stream()).findFirst(),
        parts.stream().flatMap(part -> part.by().stream()).distinct().toList(),
        parts.stream().flatMap(part -> part.on().stream()).max(Comparator.comparing(Day::date)));
  }
}
