package gapwise.analysis.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.budget.Limit;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** docs/plan.md says of every limit what holds. */
class LimitsTableTest {
  private static final Pattern LINE = Pattern.compile("(?m)^\\| `([a-z]+)` \\| (\\d+) \\| .+ \\|$");

  @Test
  void theTableOfLimitsHoldsEveryLimitWithItsNumber() throws Exception {
    String page = Files.readString(Path.of("..", "docs", "plan.md"));
    String section = page.substring(page.indexOf("## Limits"), page.indexOf("## Problems"));
    Map<String, Long> told = new LinkedHashMap<>();
    Matcher lines = LINE.matcher(section);
    while (lines.find()) {
      told.put(lines.group(1), Long.valueOf(lines.group(2)));
    }
    Map<String, Long> hold = new LinkedHashMap<>();
    for (Limit limit : Limit.values()) {
      hold.put(limit.code(), limit.standard());
    }
    assertEquals(hold, told);
  }
}
