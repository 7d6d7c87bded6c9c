package gapwise.benchmark;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The whole way from a plan to a result: 9,882 analyses (61 x 2 x 3 x 27) of 60 studies. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class MultiverseBenchmark {
  private final Runner runner = Runner.withoutEvidence();
  private ObjectNode plan;

  @Setup
  public void write() {
    InventedSeries series = InventedSeries.of(60);
    plan = JsonNodeFactory.instance.objectNode();
    plan.put("task", "multiverse");
    ArrayNode rows = plan.putObject("source").putArray("rows");
    for (int i = 0; i < 60; i++) {
      rows.addObject()
          .put("study", "S" + i)
          .put("months", 6 + i % 12)
          .put("events", series.events()[i])
          .put("total", series.totals()[i]);
    }
    ObjectNode vary = plan.putObject("vary");
    words(vary, "scale", "logit", "arcsine");
    ArrayNode emptyCells = vary.putArray("emptyCells");
    emptyCells.addObject();
    emptyCells.addObject().putObject("continuityCorrection").put("tables", "every");
    words(
        vary,
        "betweenStudyVariance",
        "restricted-maximum-likelihood",
        "maximum-likelihood",
        "dersimonian-laird",
        "two-step-dersimonian-laird",
        "paule-mandel",
        "empirical-bayes",
        "hunter-schmidt",
        "sidik-jonkman",
        "hedges");
    words(vary, "interval", "hartung-knapp", "hartung-knapp-never-narrower", "normal");
    vary.putArray("subsets").addObject().put("column", "months").putArray("atLeast").add(9);
    vary.put("leaveOneOut", true);
  }

  private static void words(ObjectNode vary, String field, String... words) {
    ArrayNode list = vary.putArray(field);
    List.of(words).forEach(list::add);
  }

  @Benchmark
  public PlanOutcome tenThousandAnalysesOfSixtyStudies() {
    return runner.run(plan, Optional.empty());
  }
}
