package gapwise.figure;

import static gapwise.figure.Svg.at;

import java.util.List;

/**
 * Draws spans in one column at one scale.
 *
 * @param width room across
 * @param boneHeight height of a bone end at its joint
 * @param unitsPerCentimetre scale of the missing length
 * @param lettering size of the number in the gap
 */
record SpanMark(double width, double boneHeight, double unitsPerCentimetre, Lettering lettering) {
  /** Below this the scale grows no further, so that short gaps look short in every figure. */
  private static final double LEAST_REACH_CENTIMETRES = 8;

  /** A bone end is this much longer than high. */
  private static final double BONE_LENGTH = 1.35;

  private static final double LABEL_GAP = 3;

  /** Marks whose scale lets the longest of the spans fit. */
  static SpanMark fitting(List<Span> spans, double width, double boneHeight, Lettering lettering) {
    double reach =
        spans.stream()
            .flatMapToDouble(span -> span.reachCentimetres().stream())
            .reduce(LEAST_REACH_CENTIMETRES, Math::max);
    return reaching(reach, width, boneHeight, lettering);
  }

  static SpanMark reaching(double reach, double width, double boneHeight, Lettering lettering) {
    double room = width - 2 * BONE_LENGTH * boneHeight;
    return new SpanMark(width, boneHeight, room / reach, lettering);
  }

  private double boneLength() {
    return BONE_LENGTH * boneHeight;
  }

  /** Room below the middle of the shaft that a rule takes. */
  double reachBelow() {
    return boneHeight / 2 + 6;
  }

  void draw(Svg svg, Span span, double x, double middle) {
    if (span.gapCentimetres().isEmpty()) {
      unknown(svg, span, x, middle);
      return;
    }
    double cut = x + boneLength();
    double gap = span.gapCentimetres().getAsDouble() * unitsPerCentimetre;
    bone(svg, x, middle, 1, "");
    boolean uncertainEnd = span instanceof Span.Threshold || span instanceof Span.RangeOnly;
    bone(svg, cut + gap + boneLength(), middle, -1, uncertainEnd ? "2 1.6" : "");
    if (span instanceof Span.RangeOnly range) {
      double shortest = cut + range.shortestCentimetres() * unitsPerCentimetre;
      double half = boneHeight * 0.3;
      svg.dashed(shortest, middle - half, shortest, middle + half, Ink.BONE_EDGE, 1, "1.6 1.6");
    }
    label(svg, span, cut, gap, middle);
    rule(svg, span, cut, middle + boneHeight / 2 + 2.6);
  }

  private void label(Svg svg, Span span, double cut, double gap, double middle) {
    double baseline = middle + lettering.middleToBaseline();
    double textWidth = lettering.width(span.label());
    if (textWidth + LABEL_GAP <= gap) {
      svg.text(cut + gap / 2, baseline, Svg.Anchor.MIDDLE, lettering, span.label());
    } else {
      double beside = cut + gap + boneLength() + LABEL_GAP;
      svg.text(beside, baseline, Svg.Anchor.START, lettering, span.label());
    }
  }

  private void unknown(Svg svg, Span span, double x, double middle) {
    double textWidth = lettering.width(span.label());
    Lettering soft = lettering.in(Ink.SOFT);
    double baseline = middle + lettering.middleToBaseline();
    double whole = textWidth + 2 * LABEL_GAP + 2 * boneLength();
    if (whole > width) {
      svg.text(x, baseline, Svg.Anchor.START, soft, span.label());
      return;
    }
    bone(svg, x, middle, 1, "2 1.6");
    bone(svg, x + whole, middle, -1, "2 1.6");
    svg.text(x + whole / 2, baseline, Svg.Anchor.MIDDLE, soft, span.label());
  }

  /** One bone end: flared at the joint, cut straight at the gap. Direction 1 opens to the right. */
  private void bone(Svg svg, double joint, double middle, int direction, String dashes) {
    double half = boneHeight / 2;
    double shaft = half * 0.58;
    double length = boneLength() * direction;
    double neck = joint + length * 0.5;
    String path =
        "M"
            + at(joint, middle - half)
            + "Q"
            + at(joint + length * 0.22, middle - shaft)
            + " "
            + at(neck, middle - shaft)
            + "L"
            + at(joint + length, middle - shaft)
            + "L"
            + at(joint + length, middle + shaft)
            + "L"
            + at(neck, middle + shaft)
            + "Q"
            + at(joint + length * 0.22, middle + shaft)
            + " "
            + at(joint, middle + half)
            + "Z";
    svg.shape(path, dashes.isEmpty() ? Ink.BONE : "none", Ink.BONE_EDGE, 0.9, dashes);
  }

  private void rule(Svg svg, Span span, double cut, double y) {
    if (span.rule().isEmpty()) {
      return;
    }
    Span.Rule rule = span.rule().get();
    double from = cut + rule.fromCentimetres() * unitsPerCentimetre;
    double to = cut + rule.toCentimetres() * unitsPerCentimetre;
    if (span instanceof Span.PerPatient patients) {
      svg.line(from, y, to, y, Ink.BONE_EDGE, 0.7);
      patients.lengthsCentimetres().stream()
          .distinct()
          .mapToDouble(length -> cut + length * unitsPerCentimetre)
          .sorted()
          .forEach(x -> svg.line(x, y - 1.8, x, y + 1.8, Ink.INK, 0.9));
      return;
    }
    switch (rule.kind()) {
      case SHORTEST_TO_LONGEST ->
          svg.stroke(
              "M"
                  + at(from, y - 1.8)
                  + "V"
                  + Svg.n(y + 1.8)
                  + "M"
                  + at(from, y)
                  + "H"
                  + Svg.n(to)
                  + "M"
                  + at(to, y - 1.8)
                  + "V"
                  + Svg.n(y + 1.8),
              Ink.SOFT,
              0.9);
      case STANDARD_DEVIATION -> svg.dashed(from, y, to, y, Ink.SOFT, 1.2, "2.4 1.6");
      case QUARTILES -> svg.line(from, y, to, y, Ink.SOFT, 2.4);
    }
  }

  /** A scale bar of whole centimetres with its words, at most {@code room} long. */
  double scaleBarCentimetres(double room) {
    double[] lengths = {10, 5, 2, 1};
    for (double length : lengths) {
      if (length * unitsPerCentimetre <= room) {
        return length;
      }
    }
    return 1;
  }
}
