package gapwise.figure;

/** Empty room between parts. */
record Gap(double height) implements Part {
  @Override
  public void draw(Svg svg, double top) {
    // Nothing stands here.
  }
}
