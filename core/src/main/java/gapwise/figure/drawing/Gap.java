package gapwise.figure.drawing;

/** Empty room between parts. */
public record Gap(double height) implements Part {
  @Override
  public void draw(Svg svg, double top) {
    // Nothing stands here.
  }
}
