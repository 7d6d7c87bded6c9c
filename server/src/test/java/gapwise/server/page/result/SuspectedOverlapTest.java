package gapwise.server.page.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Studies of the invented demonstration base of which one suspects that they share patients. */
class SuspectedOverlapTest {
  private static final String ASKED = "?outcome=primary-union&method=internal-bone-transport";
  private static final String LESS = "&suspected-overlap=leave-out";

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String get(String path) throws Exception {
    var answer = running.get(path);
    assertEquals(200, answer.statusCode(), path);
    return answer.body().replace("&amp;", "&");
  }

  @Test
  void theyArePooledWithACautionAndOneClickLeavesAllButOneOut() throws Exception {
    String page = get("/pooled" + ASKED);
    assertTrue(page.contains("may share patients with another study here"), page);
    assertTrue(page.contains("href=\"/pooled" + ASKED + LESS + "\""), page);
    String less = get("/pooled" + ASKED + LESS);
    assertFalse(less.contains("may share patients with another study here"), less);
    assertTrue(less.contains("A record suspects that its patients are among those of"), less);
    assertTrue(less.contains("one of each group of studies that may share patients"), less);
    assertTrue(less.contains("href=\"/pooled" + ASKED + "\""), less);
  }

  @Test
  void thePlanOfTheAddressSaysSo() throws Exception {
    assertTrue(
        get("/api/v1/plan.json" + ASKED + LESS).contains("\"suspectedOverlap\" : \"leave-out\""));
    assertFalse(get("/api/v1/plan.json" + ASKED).contains("suspectedOverlap"));
  }
}
