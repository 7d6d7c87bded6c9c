package gapwise.figure.bubble;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Check;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An outcome over the length of missing bone as a value: one mark a series, with an area that grows
 * with its weight and a bar for the stretch of lengths of its patients, and a line or curve with
 * its bands. Draw it with {@link BubbleDrawing}, list it with {@link BubbleTable}.
 *
 * @param title what is shown
 * @param sentences what the curve says, first of all that it may say nothing
 * @param measure unit of all outcome values
 * @param axis words at the upright axis; {@code lower} and {@code higher} tell directions
 * @param points the series
 * @param curve points of the fitted line, lengths rising; empty where there is none
 * @param patients single patients, where they are described; the curve knows nothing of them
 * @param cautions what must be known beside it
 * @param provenance where the numbers come from
 */
public record Bubble(
    String title,
    List<String> sentences,
    Quantity measure,
    AxisWords axis,
    List<Point> points,
    List<At> curve,
    List<BubblePatient> patients,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {

  /**
   * One series.
   *
   * @param label name of the series
   * @param lengthCentimetres mean or median missing bone of its patients
   * @param spread stretch of lengths in it, in centimetres; empty where not told
   * @param spreadIs what the stretch is, such as "range"
   * @param value the outcome, in the unit of the measure
   * @param interval its limits; empty where not known
   * @param patients patients or limbs in it; empty where not told
   * @param weightPercent share of the weight behind the curve; empty where it did not enter
   * @param citation where it was published
   */
  public record Point(
      String label,
      MethodMark kind,
      double lengthCentimetres,
      Optional<Limits> spread,
      String spreadIs,
      double value,
      Optional<Limits> interval,
      OptionalDouble patients,
      OptionalDouble weightPercent,
      String citation) {
    public Point {
      Check.words(label, "label");
      Objects.requireNonNull(kind, "kind");
      Check.centimetres(lengthCentimetres, "lengthCentimetres");
      Objects.requireNonNull(spread, "spread");
      Objects.requireNonNull(spreadIs, "spreadIs");
      Check.finite(value, "value");
      Objects.requireNonNull(interval, "interval");
      Objects.requireNonNull(patients, "patients");
      Objects.requireNonNull(weightPercent, "weightPercent");
      Objects.requireNonNull(citation, "citation");
    }
  }

  /**
   * The fitted value at one length.
   *
   * @param interval limits of the average of series of this mean length
   * @param prediction limits of the true value of a new series; empty where not told
   * @param beyondData whether no series has a mean length so short or so long
   */
  public record At(
      double lengthCentimetres,
      double value,
      Limits interval,
      Optional<Limits> prediction,
      boolean beyondData) {
    public At {
      Check.centimetres(lengthCentimetres, "lengthCentimetres");
      Check.finite(value, "value");
      Objects.requireNonNull(interval, "interval");
      Objects.requireNonNull(prediction, "prediction");
    }
  }

  public Bubble {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    Objects.requireNonNull(measure, "measure");
    Objects.requireNonNull(axis, "axis");
    points = List.copyOf(points);
    curve = curve.stream().sorted(Comparator.comparingDouble(At::lengthCentimetres)).toList();
    patients = List.copyOf(patients);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
  }

  /** A figure without single patients. */
  public Bubble(
      String title,
      List<String> sentences,
      Quantity measure,
      AxisWords axis,
      List<Point> points,
      List<At> curve,
      List<String> cautions,
      FigureProvenance provenance) {
    this(title, sentences, measure, axis, points, curve, List.of(), cautions, provenance);
  }

  /** Whether the outcome is told of 100 patients, so that of one it is yes or no. */
  boolean isOf100() {
    return measure.kind() == Quantity.Kind.OF_100;
  }

  /** Methods that occur, in order of the first series of each. */
  List<MethodMark> kinds() {
    return points.stream().map(Point::kind).distinct().toList();
  }

  /** Whether the curve leaves the data on some side. */
  boolean leavesData() {
    return curve.stream().anyMatch(At::beyondData);
  }

  /** The stretch of lengths to show in centimetres: all means and the curve, spreads within it. */
  Limits lengths() {
    double most =
        Stream.of(
                points.stream().map(Point::lengthCentimetres),
                points.stream().flatMap(p -> p.spread().stream()).map(Limits::upper),
                curve.stream().map(At::lengthCentimetres),
                patients.stream().map(BubblePatient::lengthCentimetres))
            .flatMap(each -> each)
            .max(Comparator.naturalOrder())
            .orElse(10.0);
    return new Limits(0, most);
  }

  /** The stretch of outcome values to show; bands that widen beyond the data do not stretch it. */
  Limits values() {
    List<Double> seen = new ArrayList<>();
    for (Point point : points) {
      seen.add(point.value());
    }
    if (!isOf100()) {
      patients.forEach(patient -> seen.add(patient.value()));
    }
    for (At at : curve) {
      if (!at.beyondData()) {
        seen.add(at.interval().lower());
        seen.add(at.interval().upper());
        at.prediction().ifPresent(limits -> seen.addAll(List.of(limits.lower(), limits.upper())));
      }
    }
    double least = seen.stream().min(Comparator.naturalOrder()).orElse(0.0);
    double most = seen.stream().max(Comparator.naturalOrder()).orElse(1.0);
    double room = Math.max(0.06 * (most - least), 1e-6);
    return new Limits(least - room, most + room);
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.bubble"));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.add(
        points.isEmpty()
            ? say("figure.no-bubble")
            : say(
                "figure.bubbles",
                Map.of("series", Integer.toString(points.size()), "methods", methods())));
    if (!patients.isEmpty()) {
      words.add(say("figure.marked-patients", Map.of("patients", patients.size())));
    }
    words.addAll(sentences);
    words.addAll(cautions);
    return String.join(" ", words);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(BubbleDrawing.draw(this, setting));
  }

  @Override
  public String csv() {
    return new BubbleTable(this).csv();
  }

  private String methods() {
    return kinds().stream()
        .map(
            kind ->
                say(
                    "figure.of-method",
                    Map.of("series", Long.toString(count(kind)), "method", kind.label())))
        .collect(Collectors.joining(", "));
  }

  private long count(MethodMark kind) {
    return points.stream().filter(point -> point.kind().equals(kind)).count();
  }
}
