package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.Estimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What leaving series out for their risk of bias moved: both numbers, one method a sentence. */
public final class MovedByRisk {
  private MovedByRisk() {}

  /**
   * Both numbers of each method of which series were left out.
   *
   * @param every the answer of all series
   * @param without the answer of those that stay
   */
  public static List<String> told(Answer every, Answer without) {
    Map<GroupName, Blocks.Block> left = byMethod(without);
    List<String> told = new ArrayList<>();
    byMethod(every)
        .forEach(
            (method, before) ->
                moved(every, before, Optional.ofNullable(left.get(method))).ifPresent(told::add));
    return told;
  }

  private static Map<GroupName, Blocks.Block> byMethod(Answer answer) {
    Map<GroupName, Blocks.Block> blocks = new LinkedHashMap<>();
    answer
        .result()
        .map(result -> Blocks.of(answer, result))
        .orElse(List.of())
        .forEach(block -> blocks.put(block.of(), block));
    return blocks;
  }

  private static Optional<String> moved(
      Answer answer, Blocks.Block before, Optional<Blocks.Block> after) {
    int all = before.lines().size();
    int stay = after.map(block -> block.lines().size()).orElse(0);
    if (stay >= all) {
      return Optional.empty();
    }
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("method", before.of().label());
    values.put("before", value(answer, before));
    values.put("all", all);
    if (after.isEmpty()) {
      return Optional.of(say("answer.risk-moved-to-nothing", values));
    }
    values.put("after", value(answer, after.get()));
    values.put("left", all - stay);
    return Optional.of(say("answer.risk-moved", values));
  }

  private static String value(Answer answer, Blocks.Block block) {
    Optional<Estimate> value =
        block
            .alone()
            .flatMap(Blocks.Line::estimate)
            .or(() -> block.summary().map(one -> PooledValue.average(one.shown())));
    return value
        .map(one -> Told.withLimits(Told.measure(answer.question().outcome(), block.rows()), one))
        .orElseGet(() -> say("answer.risk-no-average"));
  }
}
