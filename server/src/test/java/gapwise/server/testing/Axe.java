package gapwise.server.testing;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;

/** What keeps people out of a page, as axe-core finds it (WCAG 2.2 A and AA). */
public final class Axe {
  private Axe() {}

  /**
   * What axe-core finds, by rule, with the first element that breaks it; sizes of targets too (WCAG
   * 2.2, 2.5.8), which axe-core leaves out unless asked.
   */
  public static List<String> barriers(ChromeDriver driver) throws Exception {
    try (InputStream stream = Axe.class.getResourceAsStream("/axe.min.js")) {
      driver.executeScript(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
    }
    List<?> found =
        (List<?>)
            driver.executeAsyncScript(
                "const done = arguments[arguments.length - 1];axe.run({rules: {'target-size':"
                    + " {enabled: true}}}).then(r => done(r.violations.map(v => ({rule: v.id,"
                    + " where: v.nodes[0].html}))));");
    return found.stream()
        .map(one -> (Map<?, ?>) one)
        .map(one -> one.get("rule") + " at " + one.get("where"))
        .toList();
  }
}
