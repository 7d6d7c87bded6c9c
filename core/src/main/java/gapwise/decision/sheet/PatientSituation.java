package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.situation.Situation;
import gapwise.decision.situation.SoftTissue;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanMark;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A situation in the words of the patient. */
record PatientSituation(Situation situation) {
  private static final double WIDTH = 260;
  private static final double HEIGHT = 62;
  private static final double BONE = 34;
  private static final double MIDDLE = 20;
  private static final double SCALE = 52;

  String question() {
    return situation
        .defect()
        .map(range -> say("sheet.question-length", Map.of("length", length(range), "bone", bone())))
        .orElseGet(() -> say("sheet.question", Map.of("bone", bone())));
  }

  private String bone() {
    if (situation.bones().size() != 1) {
      return say("sheet.a-bone");
    }
    return switch (situation.bones().iterator().next()) {
      case TIBIA -> say("sheet.tibia");
      case FEMUR -> say("sheet.femur");
      default -> say("sheet.a-bone");
    };
  }

  private static String length(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return say("sheet.length-from", Map.of("from", from));
    }
    String to = Shown.centimetres(range.toCentimetres());
    return from.equals(to)
        ? say("sheet.length", Map.of("length", from))
        : say("sheet.lengths", Map.of("from", from, "to", to));
  }

  /** Short labels; what is not known says so. */
  List<String> labels() {
    List<String> labels = new ArrayList<>();
    labels.add(
        say(
            "sheet.label-gap",
            Map.of(
                "gap",
                situation.defect().map(PatientSituation::length).orElse(say("sheet.not-said")))));
    labels.add(say("sheet.label-infection", Map.of("answer", infection())));
    labels.add(
        say(
            "sheet.label-skin",
            Map.of(
                "answer",
                situation.softTissue().map(SoftTissue::label).orElse(say("sheet.not-said")))));
    return labels;
  }

  private String infection() {
    return situation
        .infected()
        .filter(one -> one == YesOrNo.YES || one == YesOrNo.NO)
        .map(YesOrNo::label)
        .orElse(say("sheet.not-said"));
  }

  /** The bone with its gap and a bar of centimetres, at one scale; empty for an open length. */
  Optional<Picture> drawing() {
    return situation.defect().flatMap(PatientSituation::span).map(this::draw);
  }

  private static Optional<Span> span(LengthRange range) {
    if (Double.isInfinite(range.toCentimetres())) {
      return range.fromCentimetres() > 0
          ? Optional.of(new Span.Threshold(range.fromCentimetres()))
          : Optional.empty();
    }
    return Optional.of(
        range.fromCentimetres() == range.toCentimetres()
            ? new Span.Mean(range.toCentimetres(), Optional.empty())
            : new Span.RangeOnly(range.fromCentimetres(), range.toCentimetres()));
  }

  private Picture draw(Span span) {
    Lettering lettering = Lettering.bold(14);
    SpanMark mark = SpanMark.fitting(List.of(span), WIDTH - 2, BONE, lettering);
    Svg svg =
        new Svg()
            .begin(
                WIDTH,
                HEIGHT,
                "px",
                "img",
                say("sheet.drawing", Map.of("bone", bone(), "gap", span.label())));
    mark.draw(svg, span, 1, MIDDLE);
    double bar = mark.scaleBarCentimetres(WIDTH / 2);
    double end = 1 + bar * mark.unitsPerCentimetre();
    svg.stroke(
        "M"
            + Svg.at(1, SCALE - 4)
            + "V"
            + Svg.n(SCALE + 4)
            + "M"
            + Svg.at(1, SCALE)
            + "H"
            + Svg.n(end)
            + "M"
            + Svg.at(end, SCALE - 4)
            + "V"
            + Svg.n(SCALE + 4),
        Ink.INK,
        1.2);
    Lettering small = Lettering.plain(12);
    svg.text(
        end + 6,
        SCALE + small.middleToBaseline(),
        Svg.Anchor.START,
        small,
        say("sheet.scale", Map.of("length", Shown.centimetres(bar))));
    return new Picture(svg.end(), WIDTH, HEIGHT);
  }
}
