package gapwise.figure.drawing;

/** Empty room between parts. */
public record Gap(double height) implements PagePart {
  @Override
  public void draw(Svg svg, double top) {
    // Nothing stands here.
  }
}
