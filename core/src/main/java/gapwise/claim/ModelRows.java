package gapwise.claim;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.LengthPatients;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The rows of one method for the model of patients with summaries: of a series that describes each
 * of its patients with length and outcome, the patients; of every other, its counts or its mean at
 * its mean length. No patient stands in both.
 */
final class ModelRows {
  private final Effect effect;
  private final ArrayNode patients = JsonNodeFactory.instance.arrayNode();
  private final ArrayNode summaries = JsonNodeFactory.instance.arrayNode();
  private final Set<String> studies = new HashSet<>();
  private final List<Double> lengths = new ArrayList<>();
  private long people;

  private ModelRows(Effect effect) {
    this.effect = effect;
  }

  static ModelRows of(Selection selection, List<SelectedRow> rows, Effect effect) {
    ModelRows model = new ModelRows(effect);
    for (SelectedRow row : rows) {
      List<LengthPatients.Known> known = LengthPatients.known(selection, row);
      boolean each = !known.isEmpty() && known.size() >= row.speaksOf().orElse(Integer.MAX_VALUE);
      if (each || row.report().isEmpty()) {
        known.forEach(patient -> model.add(row, patient));
      } else {
        model.addSummary(row);
      }
    }
    return model;
  }

  boolean hasPatients() {
    return !patients.isEmpty();
  }

  /** Studies of which something enters. */
  int studies() {
    return studies.size();
  }

  /** Patients who enter, described or summed up. */
  long people() {
    return people;
  }

  /** Whether a length lies among those of the patients and series. */
  boolean reaches(double length) {
    return lengths.stream().anyMatch(one -> one <= length)
        && lengths.stream().anyMatch(one -> one >= length);
  }

  /** The plan that tells the outcome at a length in centimetres. */
  ObjectNode plan(String title, double length) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("title", title).put("task", "patients-with-summaries");
    if (effect == Effect.ODDS_RATIO) {
      plan.put("measure", "proportion");
    } else {
      plan.put("measure", "mean");
      plan.put("scale", effect == Effect.RATIO_OF_MEANS ? "log" : "raw");
    }
    plan.put("centre", length);
    plan.putObject("source").set("rows", patients.deepCopy());
    if (!summaries.isEmpty()) {
      plan.putObject("summaries").set("rows", summaries.deepCopy());
    }
    return plan;
  }

  private void add(SelectedRow row, LengthPatients.Known patient) {
    boolean events = effect == Effect.ODDS_RATIO;
    if (effect == Effect.RATIO_OF_MEANS && patient.value() <= 0) {
      return;
    }
    patients
        .addObject()
        .put("study", row.studyName())
        .put(events ? "event" : "value", patient.value())
        .put("moderator", patient.centimetres());
    enters(row, patient.centimetres(), 1);
  }

  private void addSummary(SelectedRow row) {
    Optional<DefectLength> defect = row.defect().map(known -> known.length());
    OptionalDouble length =
        defect.map(DefectLength::centreCentimetres).orElse(OptionalDouble.empty());
    if (length.isEmpty()) {
      return;
    }
    if (effect == Effect.ODDS_RATIO && row.value() instanceof ReportedValue.Events events) {
      count(row, events.count(), length.getAsDouble(), defect.flatMap(DefectLength::summary));
    } else if (effect != Effect.ODDS_RATIO
        && row.value() instanceof ReportedValue.Quantity quantity) {
      mean(row, quantity.summary(), length.getAsDouble());
    }
  }

  private void count(
      SelectedRow row, EventCount count, double length, Optional<QuantitySummary> lengths) {
    if (count.events().isEmpty() || count.total().isEmpty() || count.total().getAsInt() < 1) {
      return;
    }
    ObjectNode json =
        summaries
            .addObject()
            .put("study", row.studyName())
            .put("events", count.events().getAsInt())
            .put("total", count.total().getAsInt())
            .put("moderator", length);
    lengths
        .filter(summary -> summary.standardDeviation().isPresent())
        .ifPresent(
            summary ->
                json.put(
                    "moderatorSd",
                    summary
                        .unit()
                        .to(Unit.CENTIMETRES, summary.standardDeviation().getAsDouble())));
    enters(row, length, count.total().getAsInt());
  }

  private void mean(SelectedRow row, QuantitySummary summary, double length) {
    Optional<Unit> unit = row.report().flatMap(report -> report.outcome().unit());
    boolean usable =
        summary.n().isPresent()
            && summary.mean().isPresent()
            && summary.standardDeviation().isPresent()
            && summary.standardDeviation().getAsDouble() > 0
            && unit.filter(usual -> usual.dimension() == summary.unit().dimension()).isPresent()
            && (effect != Effect.RATIO_OF_MEANS || summary.mean().getAsDouble() > 0);
    if (!usable) {
      return;
    }
    summaries
        .addObject()
        .put("study", row.studyName())
        .put("mean", summary.unit().to(unit.get(), summary.mean().getAsDouble()))
        .put("sd", summary.unit().to(unit.get(), summary.standardDeviation().getAsDouble()))
        .put("n", summary.n().getAsInt())
        .put("moderator", length);
    enters(row, length, summary.n().getAsInt());
  }

  private void enters(SelectedRow row, double length, int count) {
    studies.add(row.study().id());
    lengths.add(length);
    people += count;
  }
}
