package gapwise.demonstration;

import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ways in which papers report how much bone was missing. */
enum LengthStyle {
  MEAN_AND_DEVIATION,
  MEAN_AND_RANGE,
  MEAN_ALONE,
  MEDIAN_AND_QUARTILES,
  MEDIAN_AND_RANGE,
  RANGE_FROM_NOTHING,
  RANGE_ONLY,
  MILLIMETRES,
  PLUS_MINUS_UNEXPLAINED,
  BRACKETS_UNEXPLAINED,
  OVER_FOUR_CENTIMETRES,
  BANDS,
  PER_PATIENT,
  WORDS_ONLY,
  FOR_ALL_ARMS,
  NOTHING;

  private static final List<LengthRange> USUAL_BANDS =
      List.of(
          new LengthRange(0, 4), new LengthRange(4, 6), new LengthRange(6, 8), LengthRange.from(8));

  /** The length of an arm as printed; empty where it stands elsewhere or nowhere. */
  Optional<DefectLength> print(List<Double> centimetres) {
    return switch (this) {
      case PER_PATIENT, FOR_ALL_ARMS, NOTHING -> Optional.empty();
      case OVER_FOUR_CENTIMETRES -> Optional.of(overFour());
      case BANDS -> Optional.of(bands(centimetres));
      case WORDS_ONLY ->
          Optional.of(
              new DefectLength(
                  Optional.empty(),
                  OptionalDouble.empty(),
                  List.of(),
                  Optional.of("a critical-size loss of the shaft in all"),
                  Optional.empty(),
                  Optional.empty()));
      case MILLIMETRES -> {
        List<Double> millimetres = centimetres.stream().map(cm -> Math.rint(cm * 10)).toList();
        yield Optional.of(
            DefectLength.of(
                SummaryStyle.MEAN_AND_DEVIATION.print(Unit.MILLIMETRES, 0, millimetres)));
      }
      case RANGE_FROM_NOTHING -> Optional.of(DefectLength.of(fromNothing(centimetres)));
      default -> Optional.of(DefectLength.of(centimetres(centimetres)));
    };
  }

  /** The paper counts its shortest gap as no missing bone at all. */
  private static QuantitySummary fromNothing(List<Double> centimetres) {
    List<Double> printed = new ArrayList<>(centimetres);
    printed.set(printed.indexOf(Collections.min(printed)), 0.0);
    return SummaryStyle.MEAN_AND_RANGE.print(Unit.CENTIMETRES, 1, printed);
  }

  private QuantitySummary centimetres(List<Double> centimetres) {
    SummaryStyle style =
        switch (this) {
          case MEAN_AND_RANGE -> SummaryStyle.MEAN_AND_RANGE;
          case MEAN_ALONE -> SummaryStyle.MEAN_ALONE;
          case MEDIAN_AND_QUARTILES -> SummaryStyle.MEDIAN_AND_QUARTILES;
          case MEDIAN_AND_RANGE -> SummaryStyle.MEDIAN_AND_RANGE;
          case RANGE_ONLY -> SummaryStyle.RANGE_ALONE;
          case PLUS_MINUS_UNEXPLAINED -> SummaryStyle.PLUS_MINUS_UNEXPLAINED;
          case BRACKETS_UNEXPLAINED -> SummaryStyle.BRACKETS_UNEXPLAINED;
          default -> SummaryStyle.MEAN_AND_DEVIATION;
        };
    return style.print(Unit.CENTIMETRES, 1, centimetres);
  }

  private static DefectLength overFour() {
    return new DefectLength(
        Optional.empty(),
        OptionalDouble.of(4),
        List.of(),
        Optional.of("defects over 4 cm were included"),
        Optional.empty(),
        Optional.empty());
  }

  private static DefectLength bands(List<Double> centimetres) {
    List<DefectLength.Band> counted =
        USUAL_BANDS.stream()
            .map(
                band ->
                    new DefectLength.Band(
                        band,
                        (int)
                            centimetres.stream()
                                .filter(
                                    cm -> cm >= band.fromCentimetres() && cm < band.toCentimetres())
                                .count()))
            .toList();
    return new DefectLength(
        Optional.empty(),
        OptionalDouble.empty(),
        counted,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
