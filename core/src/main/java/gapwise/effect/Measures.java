package gapwise.effect;

import gapwise.effect.MeasureOptions.Pooling;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Every measure, by its name in a plan, with its scales. A new measure is one line here. */
public final class Measures {
  private static final Map<String, Entry> ALL = new LinkedHashMap<>();

  /** Names for people of the scales of all measures. */
  private static final Map<String, String> SCALES =
      Map.of(
          "logit", "logit",
          "double-arcsine", "double arcsine",
          "arcsine", "arcsine",
          "log", "log",
          "raw", "raw",
          "square-root", "square root");

  static {
    add(
        "proportion",
        "proportion",
        Stream.of(ProportionScale.values()).map(ProportionScale::word).toList(),
        o ->
            new Proportion(
                ProportionScale.valueOf(o.scale().toUpperCase(Locale.ROOT).replace('-', '_')),
                o.emptyCells(),
                o.backTransformN(),
                o.backTransformAlsoWith(),
                o.pooling() == Pooling.COUNTS));
    add(
        "odds-ratio",
        "odds ratio",
        List.of("log"),
        o ->
            o.pooling() == Pooling.PETO
                ? new PetoOddsRatio()
                : new OddsRatio(o.emptyCells(), o.pooling() == Pooling.COUNTS));
    add(
        "risk-ratio",
        "risk ratio",
        List.of("log"),
        o -> new RiskRatio(o.emptyCells(), o.pooling() == Pooling.COUNTS));
    add("risk-difference", "risk difference", List.of("raw"), o -> new RiskDifference());
    add(
        "mean",
        "mean",
        List.of("raw", "log"),
        o -> new Mean(o.scale().equals("log"), false, o.correlation()));
    add(
        "mean-difference",
        "mean difference",
        List.of("raw"),
        o -> new MeanDifference(o.correlation()));
    add(
        "standardised-mean-difference",
        "standardised mean difference",
        List.of("raw"),
        o -> new StandardisedMeanDifference(o.exactFactor(), o.factorSquaredVariance()));
    add("ratio-of-means", "ratio of means", List.of("log"), o -> new RatioOfMeans());
    add(
        "incidence-rate",
        "incidence rate",
        List.of("log", "square-root"),
        o ->
            new IncidenceRate(
                o.scale().equals("square-root"), o.emptyCells(), o.pooling() == Pooling.COUNTS));
    add(
        "incidence-rate-ratio",
        "incidence rate ratio",
        List.of("log"),
        o -> new IncidenceRateRatio(o.emptyCells(), o.pooling() == Pooling.COUNTS));
    add("correlation", "correlation", List.of("raw"), o -> new Correlation());
    add(
        "reported-effect",
        "reported effect",
        List.of("raw"),
        o -> new ReportedEffect(o.reportedAsRatio(), o.limitsLevel()));
  }

  /** Why a test that is reported gives no weight. */
  static final String SILENT_TEST =
      "no spread is reported, and a difference or statistic of 0, a p value of 1, or a bound such as"
          + " <0.05 does not tell it, so the study has no weight";

  private record Entry(
      String label, List<String> scales, Function<MeasureOptions, Measure<?>> maker) {}

  private Measures() {}

  private static void add(
      String name, String label, List<String> scales, Function<MeasureOptions, Measure<?>> maker) {
    ALL.put(name, new Entry(label, List.copyOf(scales), maker));
  }

  /** The names of all measures this version knows. */
  public static List<String> names() {
    return List.copyOf(ALL.keySet());
  }

  /** What people call a measure: "odds ratio"; empty for a measure that is not known. */
  public static Optional<String> label(String measure) {
    return Optional.ofNullable(ALL.get(measure)).map(Entry::label);
  }

  /** What people call a scale: "double arcsine"; empty for a scale that no measure has. */
  public static Optional<String> scaleLabel(String scale) {
    return Optional.ofNullable(SCALES.get(scale));
  }

  /** The scales of a measure, the usual one first; empty for a measure that is not known. */
  public static List<String> scales(String measure) {
    Entry entry = ALL.get(measure);
    return entry == null ? List.of() : entry.scales();
  }

  /** The measure of a name; empty if it is not known or has no such scale. */
  public static Optional<Measure<?>> named(String measure, MeasureOptions options) {
    return Optional.ofNullable(ALL.get(measure))
        .filter(entry -> entry.scales().contains(options.scale()))
        .map(entry -> entry.maker().apply(options));
  }

  /** Effects as studies report them. */
  public static Measure<GivenEffect> reported(MeasureOptions options) {
    return new ReportedEffect(options.reportedAsRatio(), options.limitsLevel());
  }

  /** Roles of two groups, all required. */
  static List<Measure.Role> twoGroups(String first, String second) {
    return Stream.of("intervention", "comparator")
        .flatMap(group -> Stream.of(first, second).map(name -> Reported.role(group, name)))
        .map(name -> new Measure.Role(name, true))
        .toList();
  }

  /** Roles of a mean in one group. */
  public static List<Measure.Role> meanRoles(String group) {
    return Stream.of("n", "mean", "sd", "median", "q1", "q3", "min", "max")
        .map(name -> new Measure.Role(Reported.role(group, name), name.equals("n")))
        .toList();
  }

  /**
   * Roles of a mean in one group, or of its change from values before to values after in the same
   * patients.
   */
  static List<Measure.Role> meanOrChangeRoles(String group) {
    Stream<Measure.Role> change =
        Stream.of("before.mean", "before.sd", "after.mean", "after.sd", "correlation")
            .map(name -> new Measure.Role(Reported.role(group, name), false));
    return Stream.concat(meanRoles(group).stream(), change).toList();
  }

  /** Roles of a mean in two groups. */
  static List<Measure.Role> twoMeanRoles() {
    return withTest(
        Stream.of("intervention", "comparator").flatMap(group -> meanRoles(group).stream()));
  }

  /** Roles of two groups with those of a test of their difference, which no row must have. */
  static List<Measure.Role> withTest(Stream<Measure.Role> groups) {
    return Stream.concat(
            groups, Stream.of("tStatistic", "pValue").map(name -> new Measure.Role(name, false)))
        .toList();
  }

  /** An effect of means whose variance is not known because a group has no usable spread. */
  static StudyEffect withoutSpread(double estimate, ArmMean group) {
    return group.sd().isPresent()
        ? StudyEffect.withoutVariance(
            estimate,
            "too-few-patients",
            "a group of one patient has no standard deviation, so the study has no weight")
        : StudyEffect.withoutVariance(
            estimate,
            "missing-standard-deviation",
            "no standard deviation is reported or can be worked out, so the study has no weight");
  }
}
