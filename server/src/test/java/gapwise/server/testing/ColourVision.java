package gapwise.server.testing;

/**
 * How colours look to people who lack a kind of cone, and on grey printers.
 *
 * <p>The matrices are those of full protanopia and deuteranopia of Machado, Oliveira &amp;
 * Fernandes (IEEE Transactions on Visualization and Computer Graphics 2009;15:1291), applied to
 * linear light.
 */
public enum ColourVision {
  USUAL(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}),
  NO_RED_CONES(
      new double[][] {
        {0.152286, 1.052583, -0.204868},
        {0.114503, 0.786281, 0.099216},
        {-0.003882, -0.048116, 1.051998}
      }),
  NO_GREEN_CONES(
      new double[][] {
        {0.367322, 0.860646, -0.227968},
        {0.280085, 0.672501, 0.047413},
        {-0.011820, 0.042940, 0.968881}
      }),
  GREY_PRINTER(
      new double[][] {
        {0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}
      });

  private static final double[] WEIGHTS = {0.2126, 0.7152, 0.0722};

  private final double[][] matrix;

  ColourVision(double[][] matrix) {
    this.matrix = matrix;
  }

  /**
   * Contrast of two colours as they are seen so: (L1 + 0.05) / (L2 + 0.05), WCAG 2.2, definition of
   * contrast ratio.
   *
   * @param one such as "#1b2430"
   */
  public double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  /** WCAG 2.2, definition of relative luminance, of the colour that is seen. */
  private double luminance(String colour) {
    double sum = 0;
    for (int i = 0; i < WEIGHTS.length; i++) {
      double seen = 0;
      for (int j = 0; j < WEIGHTS.length; j++) {
        seen += matrix[i][j] * light(colour, j);
      }
      sum += WEIGHTS[i] * Math.max(0, Math.min(1, seen));
    }
    return sum;
  }

  private static double light(String colour, int channel) {
    double share = Integer.parseInt(colour.substring(1 + 2 * channel, 3 + 2 * channel), 16) / 255.0;
    return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
