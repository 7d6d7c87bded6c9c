package gapwise.figure.span;

import static gapwise.figure.drawing.Svg.at;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Svg;
import java.util.List;

/**
 * Draws spans in one column at one scale.
 *
 * @param width room across
 * @param boneHeight height of a bone end at its joint
 * @param unitsPerCentimetre scale of the missing length
 * @param lettering size of the number in the gap
 */
public record SpanMark(
    double width, double boneHeight, double unitsPerCentimetre, Lettering lettering) {
  /** Below this the scale grows no further, so that short gaps look short in every figure. */
  private static final double LEAST_REACH_CENTIMETRES = 8;

  /** A bone end is this much longer than high. */
  private static final double BONE_LENGTH = 1.35;

  private static final double LABEL_GAP = 3;

  /** Marks whose scale lets the longest of the spans fit, and every number in or beside a gap. */
  public static SpanMark fitting(
      List<Span> spans, double width, double boneHeight, Lettering lettering) {
    double reach =
        spans.stream()
            .flatMapToDouble(span -> span.reachCentimetres().stream())
            .reduce(LEAST_REACH_CENTIMETRES, Math::max);
    return reaching(reach, width, boneHeight, lettering).withRoomForLabels(spans);
  }

  /** Marks at the scale at which a length takes the room between two bone ends. */
  static SpanMark reaching(double reach, double width, double boneHeight, Lettering lettering) {
    double room = width - 2 * BONE_LENGTH * boneHeight;
    return new SpanMark(width, boneHeight, room / reach, lettering);
  }

  /**
   * The same marks, smaller as long as a number beside its span would leave the column. Each step
   * settles one span for good, as a number beside a gap fits at any smaller scale.
   */
  SpanMark withRoomForLabels(List<Span> spans) {
    double scale = unitsPerCentimetre;
    boolean changed = true;
    while (changed) {
      changed = false;
      for (Span span : spans) {
        double gap = span.gapCentimetres().orElse(0);
        double text = lettering.width(span.label());
        double besides = width - 2 * boneLength() - LABEL_GAP - text;
        boolean always = span instanceof Span.RangeOnly;
        boolean fits = always || text <= gap * scale || gap * scale <= besides + 1e-9;
        if (!fits && besides > 0) {
          scale = besides / gap;
          changed = true;
        }
      }
    }
    return new SpanMark(width, boneHeight, scale, lettering);
  }

  private double boneLength() {
    return BONE_LENGTH * boneHeight;
  }

  public void draw(Svg svg, Span span, double x, double middle) {
    if (span.gapCentimetres().isEmpty()) {
      unknown(svg, span, x, middle);
      return;
    }
    double cut = x + boneLength();
    double gap = span.gapCentimetres().getAsDouble() * unitsPerCentimetre;
    bone(svg, x, middle, 1, "");
    if (span instanceof Span.RangeOnly range) {
      // No average is known, so no far end is drawn where one would stand.
      rangeLabel(svg, range, x, middle);
    } else {
      boolean open = span instanceof Span.Threshold;
      bone(svg, cut + gap + boneLength(), middle, -1, open ? "2 1.6" : "");
      label(svg, span, x, gap, middle);
    }
    rule(svg, span, cut, middle + boneHeight / 2 + 2.6);
  }

  /**
   * The number in the gap, else beside the far bone; where neither has room it is left to words.
   */
  private void label(Svg svg, Span span, double x, double gap, double middle) {
    double baseline = middle + lettering.middleToBaseline();
    double textWidth = lettering.width(span.label());
    double beside = x + 2 * boneLength() + gap + LABEL_GAP;
    boolean besideFits = beside + textWidth <= x + width + 1e-6;
    double around = besideFits ? LABEL_GAP : 0;
    if (textWidth + around <= gap) {
      double centre = x + boneLength() + gap / 2;
      svg.text(centre, baseline, Svg.Anchor.MIDDLE, lettering, span.label());
    } else if (besideFits) {
      svg.text(beside, baseline, Svg.Anchor.START, lettering, span.label());
    }
  }

  /** The two lengths of a range over the middle of its rule, as far as the column allows. */
  private void rangeLabel(Svg svg, Span.RangeOnly range, double x, double middle) {
    double textWidth = lettering.width(range.label());
    double cut = x + boneLength();
    double halfway = (range.shortestCentimetres() + range.longestCentimetres()) / 2;
    double left = cut + halfway * unitsPerCentimetre - textWidth / 2;
    double within = Math.max(cut + LABEL_GAP, Math.min(left, x + width - textWidth));
    double baseline = middle + lettering.middleToBaseline();
    svg.text(within, baseline, Svg.Anchor.START, lettering, range.label());
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
    SpanRule rule = span.rule().get();
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
  public double scaleBarCentimetres(double room) {
    double[] lengths = {10, 5, 2, 1};
    for (double length : lengths) {
      if (length * unitsPerCentimetre <= room) {
        return length;
      }
    }
    return 1;
  }
}
