package gapwise.figure.drawing;

/** Contrast of two colours by WCAG 2.1 (W3C Recommendation, "contrast ratio"). */
public final class Contrast {
  private Contrast() {}

  public static double between(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(String hex) {
    int rgb = Integer.parseInt(hex.substring(1), 16);
    return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8) + 0.0722 * linear(rgb);
  }

  private static double linear(int channel) {
    double share = (channel & 0xFF) / 255.0;
    return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
