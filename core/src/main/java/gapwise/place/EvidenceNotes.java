package gapwise.place;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.ArmInfection;
import gapwise.evidence.BoneCount;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientAggregation;
import gapwise.evidence.PatientRow;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.place.MethodPlace.Below;
import gapwise.selection.LeftOut;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the groups behind a milestone are, in words and counts; no statistics. */
final class EvidenceNotes {
  private EvidenceNotes() {}

  /** Why no series may stand beside the case; empty where some may. */
  static Optional<String> barred(Reached reached, Selection selection) {
    if (selection.rows().isEmpty()) {
      return Optional.of(CaseWords.nothingOnClock(reached, selection.clocks()));
    }
    Set<String> currencies =
        selection.rows().stream()
            .flatMap(row -> row.report().flatMap(OutcomeReport::money).stream())
            .map(money -> money.currency().getCurrencyCode())
            .collect(Collectors.toSet());
    if (reached.currency().isPresent() && !currencies.equals(Set.of(reached.currency().get()))) {
      return Optional.of(
          currencies.isEmpty()
              ? say("place.no-currency", Map.of("currency", reached.currency().get()))
              : say(
                  "place.other-currencies",
                  Map.of(
                      "published", String.join(", ", currencies),
                      "currency", reached.currency().get())));
    }
    return Optional.empty();
  }

  /** What must be known beside the methods: other clocks, groups that state none. */
  static List<String> beside(Reached reached, Selection selection, List<MethodPlace> methods) {
    List<String> notes = new ArrayList<>();
    if (methods.isEmpty()) {
      notes.add(say("place.none-usable"));
    }
    CaseWords.otherClocks(reached, selection.clocks()).ifPresent(notes::add);
    silent(selection).ifPresent(notes::add);
    if (reached.currency().isPresent()) {
      notes.add(say("place.mixed-prices"));
    }
    return List.copyOf(notes);
  }

  /** Of groups that do not say from when they count; empty where all say, or it does not matter. */
  private static Optional<String> silent(Selection selection) {
    int taken = selection.rowsWithoutClock();
    if (taken > 0) {
      return Optional.of(
          selection.clocks().isEmpty()
              ? say("place.no-series-says-clock")
              : say(
                  "place.series-without-clock",
                  Map.of("silent", taken, "series", selection.rows().size())));
    }
    long leftOut =
        selection.leftOut().stream().map(LeftOut::code).filter("clock-not-stated"::equals).count();
    return leftOut == 0
        ? Optional.empty()
        : Optional.of(say("place.groups-without-clock", Map.of("groups", leftOut)));
  }

  /**
   * The patients of these groups who are described one by one. Lists of patients do not say from
   * when they count, so they are taken for times in a frame, which have one origin, and where the
   * list is itself what is pooled of its group.
   */
  static Optional<Below> patients(Reached reached, List<SelectedRow> rows) {
    boolean oneOrigin = reached.milestone().onlyClock().isPresent();
    int below = 0;
    int all = 0;
    for (SelectedRow row : rows) {
      if (!oneOrigin && row.report().isPresent()) {
        continue;
      }
      for (PatientRow patient : row.study().patientsOf(row.arm().id())) {
        OptionalDouble months = months(reached, patient);
        if (months.isPresent()) {
          all++;
          below += months.getAsDouble() < reached.value() ? 1 : 0;
        }
      }
    }
    return all == 0 ? Optional.empty() : Optional.of(new Below(below, all));
  }

  /** Series with a value that were not pooled. */
  static Optional<Below> unpooled(Reached reached, List<SelectedRow> rows) {
    List<Double> values =
        rows.stream()
            .map(row -> centre(reached, row.value()))
            .filter(OptionalDouble::isPresent)
            .map(OptionalDouble::getAsDouble)
            .toList();
    int below = (int) values.stream().filter(value -> value < reached.value()).count();
    return values.isEmpty() ? Optional.empty() : Optional.of(new Below(below, values.size()));
  }

  private static OptionalDouble months(Reached reached, PatientRow patient) {
    return PatientAggregation.of(reached.milestone().outcome(), List.of(patient))
        .map(value -> centre(reached, value))
        .orElse(OptionalDouble.empty());
  }

  /** The mean or median in the unit of the outcome. */
  private static OptionalDouble centre(Reached reached, ReportedValue value) {
    Unit unit = reached.milestone().outcome().unit().orElseThrow();
    if (value instanceof ReportedValue.Quantity quantity
        && quantity.summary().unit().dimension() == unit.dimension()) {
      return quantity.summary().in(unit).centre();
    }
    return OptionalDouble.empty();
  }

  /** How many of the series had the bone and the infection of the case; empty where not said. */
  static String like(PatientCase patientCase, List<SelectedRow> rows) {
    List<String> parts = new ArrayList<>();
    if (patientCase.segment().isPresent()) {
      String segment = patientCase.segment().get();
      parts.add(
          place(
              count(rows, row -> row.arm().baseline().segments().contains(segment)),
              Segments.name(segment)));
    } else if (patientCase.bone().isPresent()) {
      Bone bone = patientCase.bone().get();
      parts.add(place(count(rows, row -> bones(row).anyMatch(bone::equals)), bone.label()));
    }
    if (patientCase.infection() != PatientCase.Infection.UNSAID) {
      parts.add(
          say(
              "place.like-infected",
              Map.of(
                  "all", count(rows, row -> infected(row, YesOrNo.YES)),
                  "some", count(rows, row -> infected(row, YesOrNo.MIXED)),
                  "none", count(rows, row -> infected(row, YesOrNo.NO)))));
    }
    return parts.isEmpty()
        ? ""
        : say("place.like", Map.of("series", rows.size(), "counts", String.join("; ", parts)));
  }

  private static String place(long series, String place) {
    return say("place.like-place", Map.of("series", series, "place", place));
  }

  private static Stream<Bone> bones(SelectedRow row) {
    return row.arm().baseline().bones().stream().map(BoneCount::bone);
  }

  private static long count(List<SelectedRow> rows, Predicate<SelectedRow> which) {
    return rows.stream().filter(which).count();
  }

  private static boolean infected(SelectedRow row, YesOrNo answer) {
    return ArmInfection.of(row.study(), row.arm()).atStart().equals(Optional.of(answer));
  }
}
