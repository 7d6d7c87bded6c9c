package gapwise.numeric;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.numbers.core.Sum;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Sums that carry their rounding along, of terms and of products, that of Apache Commons Numbers
 * beside its rivals. For terms it gives the same bits as Neumaier's and takes up to twice the time,
 * which in a whole analysis drowns in the noise; for products it takes two to three times that of
 * {@link ExactProducts}, which therefore stays. Run by:
 *
 * <pre>mvn -B -ntp -q -pl core -Pbenchmark -DskipTests verify \
 *   -Dbenchmark.main=org.openjdk.jmh.Main -Dbenchmark.arguments=SumBenchmark</pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class SumBenchmark {
  @Param({"10", "60", "1000"})
  int studies;

  private double[] a;
  private double[] b;
  private double[] c;

  @Setup
  public void draw() {
    Random random = new Random(1);
    a = random.doubles(studies, -1, 1).toArray();
    b = random.doubles(studies, -1, 1).toArray();
    c = random.doubles(studies, -1, 1).toArray();
  }

  /** Neumaier, Z Angew Math Mech 1974;54:39. */
  @Benchmark
  public double termsByNeumaier() {
    double sum = 0;
    double correction = 0;
    for (int i = 0; i < studies; i++) {
      double next = sum + a[i];
      correction += Math.abs(sum) >= Math.abs(a[i]) ? (sum - next) + a[i] : (a[i] - next) + sum;
      sum = next;
    }
    return sum + correction;
  }

  @Benchmark
  public double termsByCommonsNumbers() {
    return TermSum.of(studies, i -> a[i]);
  }

  @Benchmark
  public double productsByFusedMultiplyAdd() {
    ExactProducts sum = new ExactProducts();
    for (int i = 0; i < studies; i++) {
      sum.add(a[i], b[i]);
    }
    return sum.value();
  }

  @Benchmark
  public double productsByCommonsNumbers() {
    Sum sum = Sum.create();
    for (int i = 0; i < studies; i++) {
      sum.addProduct(a[i], b[i]);
    }
    return sum.getAsDouble();
  }

  @Benchmark
  public double threeFactorsByFusedMultiplyAdd() {
    ExactProducts sum = new ExactProducts();
    for (int i = 0; i < studies; i++) {
      sum.add(a[i], b[i], c[i]);
    }
    return sum.value();
  }

  /** It has no product of three: the first is split into its two parts, each times the third. */
  @Benchmark
  public double threeFactorsByCommonsNumbers() {
    Sum sum = Sum.create();
    for (int i = 0; i < studies; i++) {
      double product = a[i] * b[i];
      sum.addProduct(product, c[i]);
      sum.add(Math.fma(a[i], b[i], -product) * c[i]);
    }
    return sum.getAsDouble();
  }
}
