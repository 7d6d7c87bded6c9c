package gapwise.numeric;

/**
 * A sum of products carried in twice the digits of a double: each product is split into its rounded
 * value and its rounding error by a fused multiply-add, each addition by Knuth's two-sum (Ogita,
 * Rump and Oishi, SIAM J Sci Comput 2005;26:1955, algorithm 5.3). Residuals of nearly collinear
 * regressions are sums whose terms all but cancel; in plain doubles nothing of them would be left.
 * The library's sum has no product of three and needs two to three times as long for products of
 * two (SumBenchmark), since it splits factors instead of multiplying and adding at once.
 */
final class ExactProducts {
  private double high;
  private double low;

  /** Starts anew from a value. */
  void set(double value) {
    high = value;
    low = 0;
  }

  /** Adds a product. */
  void add(double a, double b) {
    double product = a * b;
    add(product);
    low += Math.fma(a, b, -product);
  }

  /** Adds a product of three. */
  void add(double a, double b, double c) {
    double product = a * b;
    add(product, c);
    low += Math.fma(a, b, -product) * c;
  }

  private void add(double term) {
    double sum = high + term;
    double shadow = sum - high;
    low += (high - (sum - shadow)) + (term - shadow);
    high = sum;
  }

  /** The sum so far, rounded once. */
  double value() {
    return high + low;
  }
}
